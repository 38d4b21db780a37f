import type { Length, Unit } from "../../measure/index.ts";
import { halfAcross, type Ruler, rulerOf, stripFor } from "../../recipe/index.ts";

/** The same strip, or the same block, by a ruler with another point. */
export interface OtherPoint {
  readonly point: "sharp" | "blunt";
  /** What her strip finishes across flats by it. */
  readonly across: Length;
  /** The strip by it that makes her block. */
  readonly strip: Length;
}

/**
 * Two rulers, one number: what the strip makes by rulers of the two usual points, sharp and blunt 1/4
 * in past the center (common practice), other than her own (docs/geometry/rulers.md).
 */
export function otherPoints(own: Ruler, strip: Length, seam: Length, unit: Unit): OtherPoint[] {
  const a = halfAcross(own, strip, seam);
  return (["sharp", "blunt"] as const).flatMap((kind): OtherPoint[] => {
    const text = kind === "sharp" ? kind : { blunt: "1/4 in" };
    const ruler = rulerOf({ point: text }, own.n, unit);
    if (Math.abs(ruler.missing - own.missing) < 1e-9) return [];
    return [
      { point: kind, across: 2 * halfAcross(ruler, strip, seam), strip: stripFor(ruler, a, seam) },
    ];
  });
}
