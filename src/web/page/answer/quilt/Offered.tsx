import { useMemo } from "react";
import { planChange } from "../../../../core/answer/size/plans.ts";
import { offeredSizes } from "../../../../core/answer/size/table.ts";
import { stepOf } from "../../../../core/measure/index.ts";
import type { Answered } from "../../answers.ts";
import { useKeepStore } from "../../KeepContext.ts";
import { Said } from "../../said.tsx";
import { Scroll } from "../Scroll.tsx";

/** One design in every size it is offered in, each fully planned; a size can be opened. */
export function Offered({ shown }: { shown: Answered }) {
  const keep = useKeepStore();
  const { brief, answer } = shown;
  const rows = useMemo(() => offeredSizes(brief, answer), [brief, answer]);
  if (rows.length === 0) return null;
  const open = (i: number): void => {
    const size = answer.sizes?.[i];
    if (size)
      keep.act.edit(`"${size.name}"`, planChange(brief, size.plan, stepOf(brief.step, brief.unit)));
  };
  return (
    <Scroll what="Sizes the design is offered in, as a table">
      <table className="figures offered">
        <caption className="said">Sizes the design is offered in, each fully planned</caption>
        <thead>
          <tr>
            <th scope="col">size</th>
            <th scope="col">rows by columns</th>
            <th scope="col">finished</th>
            <th scope="col" className="number">
              blocks
            </th>
            <th scope="col">buy in all</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((r, i) => (
            <tr key={r.name}>
              <th scope="row">
                <button
                  type="button"
                  className="touch tall"
                  aria-label={`Open the size ${r.name}`}
                  onClick={() => open(i)}
                >
                  {r.name}
                </button>
              </th>
              <td>
                <Said text={r.how} />
              </td>
              <td>
                <Said text={r.finished || "cannot be laid out"} />
                <span className="soft small over">
                  {" "}
                  <Said text={r.over === "exactly" ? "as asked" : `${r.over} of ${r.wanted}`} />
                </span>
              </td>
              <td className="number">{r.blocks}</td>
              <td>
                <b>
                  <Said text={r.buy} />
                </b>
                <span className="soft small fabrics-of">
                  {" "}
                  <Said text={r.fabrics} />
                </span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}
