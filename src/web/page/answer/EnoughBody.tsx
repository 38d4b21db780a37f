import { useCallback, useMemo, useState } from "react";
import { turnedLayout } from "../../../core/answer/left-handed.ts";
import { supplies } from "../../../core/answer/say/tables.ts";
import { printLength, stepOf } from "../../../core/measure/index.ts";
import { layoutPicture } from "../../../core/picture/layout.ts";
import type { Picture } from "../../../core/picture/marks.ts";
import { PictureView } from "../PictureView.tsx";
import { Swatch } from "../Swatch.tsx";
import { Said } from "../said.tsx";
import { useSwatches } from "../useSwatches.ts";
import { useMedia } from "../useTheme.ts";
import { sayAloud, useView, view } from "../view.ts";
import type { BodyProps } from "./body.ts";
import { Cuts } from "./Cuts.tsx";
import { InHand } from "./InHand.tsx";
import { Least } from "./Least.tsx";
import { Lights } from "./Lights.tsx";
import { Scroll } from "./Scroll.tsx";

/** What to buy, and the cutting layout of one fabric at a time, to scale. */
export function EnoughBody({ shown }: BodyProps) {
  const { brief, answer } = shown;
  const table = useMemo(() => supplies(brief, answer), [brief, answer]);
  const [picked, pick] = useState<string | null>(null);
  const first = table.rows.find((r) => r.id === picked) ?? table.rows[0];
  const swatches = useSwatches(brief);
  if (!first) return null;
  return (
    <>
      <InHand shown={shown} fabricId={first.id} />
      <Layout shown={shown} fabricId={first.id} />
      <Least shown={shown} fabricId={first.id} />
      <Scroll what="What to buy, as a table">
        <table className="figures">
          <caption className="said">What to buy of each fabric</caption>
          <thead>
            <tr>
              <th scope="col">fabric</th>
              <th scope="col" className="number roomy">
                in the strips
              </th>
              <th scope="col" className="number">
                least possible
              </th>
              <th scope="col" className="number roomy">
                with margins
              </th>
              <th scope="col" className="number">
                buy{table.stated && ` at ${table.stated}`}
              </th>
              {table.narrower && (
                <th scope="col" className="number">
                  at {table.narrower}
                </th>
              )}
            </tr>
          </thead>
          <tbody>
            {table.rows.map((r) => (
              <Lights key={r.id} ids={[r.id]} className={r.id === first.id ? "picked" : ""}>
                <th scope="row">
                  <Swatch swatch={swatches[r.id]} swatches={swatches} />
                  <button
                    type="button"
                    className="touch tall"
                    aria-pressed={r.id === first.id}
                    onClick={() => {
                      pick(r.id);
                      sayAloud(`Layout of ${r.name}`);
                    }}
                  >
                    <b>{swatches[r.id]?.letter}</b> {r.name}
                  </button>
                </th>
                <td className="number roomy">
                  <Said text={r.strips} />
                </td>
                <td className="number">
                  <Said text={r.least} />
                </td>
                <td className="number roomy">
                  <Said text={r.withMargins} />
                </td>
                <td className="number">
                  <b>
                    <Said text={r.buy} />
                  </b>
                </td>
                {table.narrower && (
                  <td className="number">
                    <Said text={r.narrower} />
                  </td>
                )}
              </Lights>
            ))}
          </tbody>
        </table>
      </Scroll>
      <Cuts shown={shown} fabricId={first.id} />
    </>
  );
}

function Layout({ shown, fabricId }: { shown: BodyProps["shown"]; fabricId: string }) {
  const { brief, answer } = shown;
  const swatches = useSwatches(brief);
  const leftHanded = useView((v) => v.leftHanded);
  const narrow = useMedia("(max-width: 719px)");
  const layout = answer.layouts.find((l) => l.fabricId === fabricId);
  const folds = brief.fabrics.find((f) => f.id === fabricId)?.folds ?? 0;
  const name = swatches[fabricId]?.name ?? fabricId;
  const make = useCallback(
    (small: number): Picture => {
      const step = stepOf(brief.step, brief.unit);
      return layoutPicture(layout!, {
        unit: answer.unit,
        demands: answer.demands,
        pieces: answer.pieces,
        recipes: answer.recipes,
        yardage: answer.yardages.find((y) => y.fabricId === fabricId && y.width === layout!.width),
        say: (x) => printLength(x, step),
        small,
        folds,
        ...(leftHanded ? turnedLayout(answer, fabricId) : {}),
      });
    },
    [brief, answer, layout, fabricId, folds, leftHanded],
  );
  if (!layout || layout.strips.length === 0) return null;
  const light = (id: string | null): void => {
    const demand = answer.demands.find((d) => d.id === id);
    view.setState({ lines: demand ? demand.pieceIds : id ? [id] : [] });
  };
  return (
    <PictureView
      make={make}
      swatches={swatches}
      small={narrow ? 14 : 17}
      most={answer.unit === "in" ? 22 : 22 / 25.4}
      label={`Cutting layout of ${name}, to scale`}
      onPoint={light}
    />
  );
}
