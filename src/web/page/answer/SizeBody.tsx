import { type SizeRow, sizeRows } from "../../../core/answer/say/tables.ts";
import { Said } from "../said.tsx";
import type { BodyProps } from "./body.ts";
import { Lights } from "./Lights.tsx";
import { MakeIt } from "./quilt/MakeIt.tsx";
import { Offered } from "./quilt/Offered.tsx";
import { Scroll } from "./Scroll.tsx";

/** Blocks and top, finished and unfinished; the sizes offered; the ways to a size that is asked for. */
export function SizeBody({ shown }: BodyProps) {
  const rows = sizeRows(shown.brief, shown.answer);
  return (
    <>
      <Sizes rows={rows} />
      <Offered shown={shown} />
      <MakeIt shown={shown} />
    </>
  );
}

function Sizes({ rows }: { rows: readonly SizeRow[] }) {
  return (
    <Scroll what="Sizes, as a table">
      <table className="figures">
        <thead>
          <tr>
            <th scope="col">what</th>
            <th scope="col">finished</th>
            <th scope="col">unfinished</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((r) => (
            <Lights key={r.id} ids={r.id === "quilt" ? [] : [r.id]}>
              <th scope="row">{r.what}</th>
              <td>
                <Said text={r.finished} />
              </td>
              <td>
                <Said text={r.unfinished} />
              </td>
            </Lights>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}
