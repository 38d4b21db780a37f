import { useCallback } from "react";
import type { AnswerBlock } from "../../../../core/answer/types/answer.ts";
import { blockPicture } from "../../../../core/picture/block.ts";
import type { Picture } from "../../../../core/picture/marks.ts";
import type { Answered } from "../../answers.ts";
import { PictureView } from "../../PictureView.tsx";
import { looksFor, useSwatches } from "../../useSwatches.ts";

interface BlockLookProps {
  readonly block: AnswerBlock;
  /** The design as it is looked at: its colors may be those another eye sees. */
  readonly shown: Answered;
  /** Most pixels to the inch. */
  readonly most?: number;
  readonly label?: string;
}

/** One kind of block with the real fabric in each patch. */
export function BlockLook({ block, shown, most = 26, label }: BlockLookProps) {
  const swatches = useSwatches(shown.brief);
  const { unit } = shown.answer;
  const make = useCallback(
    (): Picture =>
      blockPicture(block, {
        unit,
        looks: looksFor(shown)[block.id] ?? [],
        title: label ?? block.name,
      }),
    [block, unit, shown, label],
  );
  return <PictureView make={make} swatches={swatches} most={unit === "in" ? most : most / 25.4} />;
}
