import { createRoot } from "react-dom/client";
import sample from "../../examples/tidepool-runner.json";
import { type Brief, readBrief, readDocument } from "../core/brief/index.ts";
import { createKeep } from "./keep/index.ts";
import { App } from "./page/App.tsx";
import { asking } from "./page/answers.ts";
import { worksOffline } from "./sw/register.ts";
import "./style/fonts.css";
import "./style/tokens.css";
import "./style/base.css";
import "./style/sentence.css";
import "./style/page.css";
import "./style/answers.css";
import "./style/print.css";

/** The design that opens at first start; a new one begins from the same. */
function sampleBrief(): Brief {
  const read = readDocument(sample);
  if (!read.ok) throw new Error(`the sample is refused: ${read.refusals[0].message}`);
  return read.brief;
}

// While the design is read the worker reads its code.
asking.worker.ready();

const keep = createKeep({
  reader: { text: readBrief, document: readDocument },
  sample: sampleBrief,
});

createRoot(document.getElementById("page") as HTMLElement).render(
  <App keep={keep} fresh={() => ({ ...sampleBrief(), title: "New design" })} />,
);

void worksOffline((take) => {
  // Taken when the maker next leaves the page: never under her hands.
  addEventListener("pagehide", take, { once: true });
});
