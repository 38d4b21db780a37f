import { useCallback } from "react";
import type { StepRow } from "../../../../core/answer/sewing/steps.ts";
import type { AnswerBlock } from "../../../../core/answer/types/answer.ts";
import type { Patch } from "../../../../core/block/types.ts";
import { seamOf } from "../../../../core/brief/lengths.ts";
import type { Picture } from "../../../../core/picture/marks.ts";
import { stepPicture } from "../../../../core/picture/step.ts";
import type { Answered } from "../../answers.ts";
import { PictureView } from "../../PictureView.tsx";
import { looksFor, useSwatches } from "../../useSwatches.ts";
import { useView } from "../../view.ts";

interface StepPictureProps {
  readonly step: StepRow;
  readonly block: AnswerBlock;
  readonly shown: Answered;
  /** CSS pixels that a block's longer side takes at most. */
  readonly blockWidth: number;
  readonly small?: number;
}

/** One step: laid right sides up, right sides together under the needle, pressed. */
export function StepPicture({ step, block, shown, blockWidth, small = 15 }: StepPictureProps) {
  const { brief, answer } = shown;
  const swatches = useSwatches(brief);
  const leftHanded = useView((v) => v.leftHanded);
  const make = useCallback(
    (height: number): Picture =>
      stepPicture(block, step.units[0], step.unit, {
        unit: answer.unit,
        seam: seamOf(brief),
        pieces: answer.pieces,
        looks: looksFor(shown)[block.id] ?? [],
        faint: true,
        letters: (p: Patch) => answer.pieces.find((x) => x.id === block.pieceOf[p.id])?.letter,
        small: height,
        title: `${step.name}: ${step.joins}, ${step.press}`,
        leftHanded,
      }),
    [block, step, answer, brief, shown, leftHanded],
  );
  const most = blockWidth / Math.max(block.width, block.height);
  return <PictureView make={make} swatches={swatches} small={small} most={most} />;
}
