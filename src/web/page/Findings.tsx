import { useMemo } from "react";
import { type Told as Sentence, toldFindings } from "../../core/answer/say/tables.ts";
import type { KeepStore } from "../keep/index.ts";
import type { Answered } from "./answers.ts";
import { Said } from "./said.tsx";
import { view } from "./view.ts";

export interface ToldProps {
  readonly shown: Answered;
  readonly keep: KeepStore;
}

/** One finding, its block lit under the mouse. */
export function Told({ told, keep }: { told: Sentence; keep: KeepStore }) {
  const light = (on: boolean): void => view.setState({ lines: on ? [told.place] : [] });
  const accept = (): void =>
    keep.act.edit("what you accepted", (d) => {
      d.accepted = [...(d.accepted ?? []), { place: told.place, code: told.code }];
    });
  return (
    <li
      onPointerEnter={(e) => e.pointerType === "mouse" && light(true)}
      onPointerLeave={() => light(false)}
    >
      <Said text={told.sentence} />
      {told.severity === "draft" && (
        <>
          {" "}
          <button type="button" className="touch tall" onClick={accept}>
            Accept it as it is
          </button>
        </>
      )}
    </li>
  );
}

/** What stops the work, where the answer has no question that says it. */
export function Blocks({ shown, keep }: ToldProps) {
  const told = useMemo(() => toldFindings(shown.brief, shown.answer), [shown]);
  const blocks = told.filter((t) => t.severity !== "advice");
  if (blocks.length === 0) return null;
  return (
    <section className="told" aria-label="Not proved">
      <ul>
        {blocks.map((t) => (
          <Told key={t.key} told={t} keep={keep} />
        ))}
      </ul>
    </section>
  );
}
