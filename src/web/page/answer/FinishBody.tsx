import { useMemo } from "react";
import { borderSteps } from "../../../core/answer/say/border-steps.ts";
import { finishRows } from "../../../core/answer/say/finish-rows.ts";
import { Said } from "../said.tsx";
import type { BodyProps } from "./body.ts";
import { Lights } from "./Lights.tsx";
import { Scroll } from "./Scroll.tsx";
import "../../style/quilt.css";

/** What follows the blocks: borders step by step, then binding, backing and batting. */
export function FinishBody({ shown }: BodyProps) {
  const { brief, answer } = shown;
  const borders = useMemo(() => borderSteps(brief, answer), [brief, answer]);
  const rows = useMemo(() => finishRows(brief, answer), [brief, answer]);
  return (
    <>
      {borders.map((b) => (
        <section key={b.border} className="kind" aria-label={`Border ${b.border}`}>
          <h3>{borders.length === 1 ? "the border" : `border ${b.border}, counted from inside`}</h3>
          <p className="soft small">
            {b.seams} seams{b.marks > 0 && `, ${b.marks} points to mark`}, about{" "}
            {Math.round(b.minutes.total)} minutes
          </p>
          <ol className="numbered">
            {b.lines.map((line) => (
              <li key={line}>
                <Said text={line} />
              </li>
            ))}
          </ol>
        </section>
      ))}
      {rows.length > 0 && (
        <Scroll what="Binding, backing and batting, as a table">
          <table className="figures stacked finish">
            <caption className="said">Binding, backing and batting</caption>
            <thead>
              <tr>
                <th scope="col">part</th>
                <th scope="col">size</th>
                <th scope="col">how</th>
              </tr>
            </thead>
            <tbody>
              {rows.map((r) => (
                <Lights key={r.what} ids={[r.id]}>
                  <th scope="row">{r.what}</th>
                  <td>
                    <Said text={r.size} />
                  </td>
                  <td>
                    <Said text={r.how} />
                  </td>
                </Lights>
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
      {borders.length === 0 && rows.length === 0 && (
        <p className="soft">
          No border, binding, backing or batting is planned yet: touch their words in the sentences
          above.
        </p>
      )}
    </>
  );
}
