import { useMemo } from "react";
import { placeName } from "../../core/answer/say/place-names.ts";
import { toldFindings } from "../../core/answer/say/tables.ts";
import { Told, type ToldProps } from "./Findings.tsx";

/** What is good to know and stops nothing, then the doubts the maker has accepted by name. */
export function Advice({ shown, keep }: ToldProps) {
  const told = useMemo(() => toldFindings(shown.brief, shown.answer), [shown]);
  const advice = told.filter((t) => t.severity === "advice");
  const accepted = shown.brief.accepted ?? [];
  if (advice.length === 0 && accepted.length === 0) return null;
  return (
    <section className="question advice" aria-labelledby="advice-h">
      <h2 id="advice-h">Good to know</h2>
      <ul className="line">
        {advice.map((t) => (
          <Told key={t.key} told={t} keep={keep} />
        ))}
        {accepted.map((a) => (
          <li key={`${a.code} ${a.place}`}>
            Accepted by you: {a.code.replaceAll("-", " ")}, {placeName(shown.answer, a.place)}.{" "}
            <button
              type="button"
              className="touch tall"
              onClick={() =>
                keep.act.edit("what you no longer accept", (d) => {
                  d.accepted = d.accepted?.filter((x) => x.place !== a.place || x.code !== a.code);
                  if (d.accepted?.length === 0) delete d.accepted;
                })
              }
            >
              Accept it no longer
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
