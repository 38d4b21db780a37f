import { useCallback, useMemo } from "react";
import { type TopSteps, topSteps } from "../../../../core/answer/sewing/top-steps.ts";
import type { Picture } from "../../../../core/picture/marks.ts";
import { pulledApartPicture } from "../../../../core/picture/pulledApart.ts";
import type { RowPressing } from "../../../../core/sewing/rowPressing.ts";
import type { Answered } from "../../answers.ts";
import { PictureView } from "../../PictureView.tsx";
import { Said } from "../../said.tsx";
import { looksFor, useSwatches } from "../../useSwatches.ts";

/** More rows than a picture can show with room between them. */
const MOST_DRAWN = 40;

/** The top row by row, once its blocks are sewn: what lies in each, how pressed, how joined. */
export function RowsOfTop({ shown }: { shown: Answered }) {
  const made = useMemo(() => topSteps(shown.brief, shown.answer), [shown]);
  const pressing = shown.answer.rows;
  if (!made || !pressing) return null;
  return (
    <section className="kind" aria-label="The top, row by row">
      <h3>the top, row by row</h3>
      <p className="soft small">
        {made.seams} {made.seams === 1 ? "seam" : "seams"}, about {Math.round(made.minutes)} minutes
      </p>
      {made.top.rows.length <= MOST_DRAWN && (
        <Apart made={made} pressing={pressing} shown={shown} />
      )}
      <ul className="step-words rows-of-top">
        {made.steps.map((s) => (
          <li key={s.rows[0]}>
            <Said text={`${s.name}: ${s.holds}${s.press === "" ? "" : `; ${s.press}`}.`} />
          </li>
        ))}
      </ul>
      <ul className="step-words">
        {made.lines.map((line) => (
          <li key={line}>
            <Said text={line} />
          </li>
        ))}
      </ul>
    </section>
  );
}

interface ApartProps {
  readonly made: TopSteps;
  readonly pressing: RowPressing;
  readonly shown: Answered;
}

function Apart({ made, pressing, shown }: ApartProps) {
  const { brief, answer } = shown;
  const swatches = useSwatches(brief);
  const make = useCallback(
    (small: number): Picture =>
      pulledApartPicture(answer, made.top, pressing, { small, looks: looksFor(shown) }),
    [answer, made, pressing, shown],
  );
  const most = 560 / Math.max(answer.quilt?.width ?? 1, answer.quilt?.height ?? 1);
  return <PictureView make={make} swatches={swatches} small={15} most={most} />;
}
