import { type Brief, seamOf } from "../../brief/index.ts";
import { knownLength, type Length } from "../../measure/index.ts";
import { halfAcross, rulerOf } from "../../recipe/index.ts";

/**
 * Finished width across flats of the circle of wedges a strip makes with this brief's ruler and
 * seam, to propose sides for settings that leave them free.
 */
export function acrossFlats(b: Brief, strip: string, n: number): Length {
  const ruler = rulerOf(b.ruler, n, b.unit);
  return 2 * halfAcross(ruler, knownLength(strip, b.unit), seamOf(b));
}
