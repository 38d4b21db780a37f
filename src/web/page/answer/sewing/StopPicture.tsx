import { useCallback } from "react";
import { GAP, type StopRow, type StopTable } from "../../../../core/answer/sewing/stops.ts";
import type { Patch } from "../../../../core/block/types.ts";
import { seamOf } from "../../../../core/brief/lengths.ts";
import { halfPicture } from "../../../../core/picture/half.ts";
import type { Picture } from "../../../../core/picture/marks.ts";
import { unitPicture } from "../../../../core/picture/unit.ts";
import type { Answered } from "../../answers.ts";
import { PictureView } from "../../PictureView.tsx";
import { looksFor, useSwatches } from "../../useSwatches.ts";

interface StopPictureProps {
  readonly row: StopRow;
  readonly table: StopTable;
  readonly shown: Answered;
}

/** The unit with the width that is measured, or laid against a straight edge. */
export function StopPicture({ row, table, shown }: StopPictureProps) {
  const { brief, answer } = shown;
  const { block } = table;
  const swatches = useSwatches(brief);
  const unit = answer.units.find((u) => u.id === row.unitId);
  const make = useCallback(
    (small: number): Picture => {
      if (!unit) throw new RangeError(`stop picture: the answer has no unit ${row.unitId}`);
      if (row.width === GAP)
        return halfPicture(block, unit, {
          unit: answer.unit,
          seam: seamOf(brief),
          small,
        });
      return unitPicture(block, unit, {
        unit: answer.unit,
        seam: seamOf(brief),
        pieces: answer.pieces,
        looks: looksFor(shown)[block.id] ?? [],
        faint: true,
        letters: (p: Patch) => answer.pieces.find((x) => x.id === block.pieceOf[p.id])?.letter,
        small,
        title: `${row.name}: ${row.should}`,
        ...(row.measure && { measure: row.measure }),
      });
    },
    [block, unit, row, answer, brief, shown],
  );
  if (!unit) return <span />;
  return (
    <PictureView
      make={make}
      swatches={swatches}
      small={14}
      most={150 / Math.max(block.width, block.height)}
    />
  );
}
