import { useId } from "react";
import { Boundary } from "../../crash/index.ts";
import type { Answered } from "../answers.ts";
import { later } from "../later.tsx";
import { useView, view } from "../view.ts";

const Body = later(() => import("./SheetsBody.tsx").then((m) => m.SheetsBody));

/** The last question of the page: the pattern and its sheets, as they will be printed. */
export function Sheets({ shown }: { shown: Answered }) {
  const id = useId();
  const open = useView((v) => v.questions.print) ?? false;
  const draft = shown.answer.findings.some((f) => f.severity !== "advice");
  if (!shown.answer.quilt || shown.answer.pieces.length === 0) return null;
  return (
    <section
      className={`question sheets ${open ? "open" : ""}`}
      data-question="print"
      aria-labelledby={`${id}-h`}
    >
      <h2 id={`${id}-h`}>
        <button
          type="button"
          className="heading"
          aria-expanded={open}
          aria-controls={`${id}-b`}
          onClick={() => view.setState((v) => ({ questions: { ...v.questions, print: !open } }))}
        >
          What do I print?
        </button>
      </h2>
      <p className="line">
        <b>The pattern, ready for paper.</b> Templates at true size, wedge chart, cutting and sewing
        cards beside it.
        {draft && <span className="because"> It prints as a draft while a point is open.</span>}
      </p>
      <div className="margin" />
      <div className="body" id={`${id}-b`} hidden={!open}>
        {open && (
          <Boundary what="the printed sheets" retryWhen={shown.answer}>
            <Body shown={shown} />
          </Boundary>
        )}
      </div>
    </section>
  );
}
