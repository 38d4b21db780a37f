import type { Length } from "../../measure/index.ts";
import type { Recipe } from "../../recipe/index.ts";
import { spareLeft } from "../../sewing/makeSize.ts";
import { noSpare, spareFrom } from "../../sewing/spare.ts";
import type { AnswerBlock } from "../types/answer.ts";

export const nearFor = (block: AnswerBlock): Length => 1e-7 * Math.max(1, block.width);

/** Least that is left at a side when every raw edge is cut `off` too small; negative: short. */
export function leftWhenOff(
  recipes: readonly Recipe[],
  block: AnswerBlock,
  seam: Length,
  off: Length,
): Length {
  const spareOf = recipes.length > 0 ? spareFrom(recipes, block.pieceOf, nearFor(block)) : noSpare;
  return Math.min(...spareLeft(block, seam, spareOf, off));
}
