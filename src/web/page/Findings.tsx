import { useMemo } from "react";
import { type Told as Sentence, toldFindings } from "../../core/answer/tables.ts";
import type { Answered } from "./answers.ts";
import { Said } from "./said.tsx";
import { view } from "./view.ts";

function Told({ told }: { told: Sentence }) {
  const light = (on: boolean): void => view.setState({ lines: on ? [told.place] : [] });
  return (
    <li
      onPointerEnter={(e) => e.pointerType === "mouse" && light(true)}
      onPointerLeave={() => light(false)}
    >
      <Said text={told.sentence} />
    </li>
  );
}

/** What stops the work, where the answer has no question that says it. */
export function Blocks({ shown }: { shown: Answered }) {
  const told = useMemo(() => toldFindings(shown.brief, shown.answer), [shown]);
  const blocks = told.filter((t) => t.severity !== "advice");
  if (blocks.length === 0) return null;
  return (
    <section className="told" aria-label="Not proved">
      <ul>
        {blocks.map((t) => (
          <Told key={t.key} told={t} />
        ))}
      </ul>
    </section>
  );
}

/** What is good to know and stops nothing. */
export function Advice({ shown }: { shown: Answered }) {
  const told = useMemo(() => toldFindings(shown.brief, shown.answer), [shown]);
  const advice = told.filter((t) => t.severity === "advice");
  if (advice.length === 0) return null;
  return (
    <section className="question advice" aria-labelledby="advice-h">
      <h2 id="advice-h">Good to know</h2>
      <ul className="line">
        {advice.map((t) => (
          <Told key={t.key} told={t} />
        ))}
      </ul>
    </section>
  );
}
