import { type LetteredPoint, layOutBlock } from "../../block/index.ts";
import { type Brief, seamOf } from "../../brief/index.ts";

/** The lettered points of a block of one's own, for its picture; none for other blocks. */
export function ownLetters(b: Brief, blockId: string): readonly LetteredPoint[] {
  const block = b.blocks.find((k) => k.id === blockId);
  if (block?.kind !== "own") return [];
  return layOutBlock(block, b.unit, seamOf(b), undefined).points ?? [];
}
