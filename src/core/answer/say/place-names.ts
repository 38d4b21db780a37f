import type { Answer } from "../types/answer.ts";

/** Where a finding lies, as a maker calls it: a seam by its unit, a piece by its letter. */
export function placeName(a: Answer, place: string): string {
  const unit = a.units.find((u) => u.id === place || u.seamIds.includes(place));
  if (unit) {
    const block = a.blocks.find((b) => b.id === unit.blockId);
    return `unit ${unit.letter} of ${block?.name ?? unit.blockId}`;
  }
  const piece = a.pieces.find((p) => p.id === place);
  return piece ? `${piece.name} ${piece.letter}` : place;
}
