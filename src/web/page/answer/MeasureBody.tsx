import { useMemo } from "react";
import { stops } from "../../../core/answer/tables.ts";
import type { BodyProps } from "../Questions.tsx";
import { Said } from "../said.tsx";
import { Scroll } from "./Scroll.tsx";

/** At every stop: what the unit should measure, with its allowances and without. */
export function MeasureBody({ shown }: BodyProps) {
  const kinds = useMemo(() => stops(shown.brief, shown.answer), [shown]);
  return kinds.map((k) => (
    <div key={k.block} className="kind">
      <h3>{k.block}</h3>
      <Scroll what={`Measures of ${k.block} at each stop, as a table`}>
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">at this stop</th>
              <th scope="col" className="number">
                should measure
              </th>
              <th scope="col" className="number">
                finished
              </th>
            </tr>
          </thead>
          <tbody>
            {k.rows.map((r) => (
              <tr key={r.id}>
                <th scope="row">{r.name}</th>
                <td className="number">
                  <b>
                    <Said text={r.unfinished} />
                  </b>
                </td>
                <td className="number">
                  <Said text={r.finished} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </div>
  ));
}
