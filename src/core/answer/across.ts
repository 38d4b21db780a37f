import type { Brief } from "../brief/index.ts";
import { knownLength, type Length, toRadians } from "../measure/index.ts";

/**
 * Finished width across flats of the circle of wedges a strip makes with this brief's ruler and
 * seam: 2 a, a = W + D - SA - SA / sin(A/2). Only proposes sides for settings that leave them free;
 * the answer itself takes its sizes from the block.
 */
export function acrossFlats(b: Brief, strip: string, n: number): Length {
  const halfAngle = toRadians(180 / n);
  const seam = knownLength(b.seam, b.unit);
  const overrun = (sa: Length): Length => sa / Math.sin(halfAngle);
  const point = b.ruler.point;
  const missing =
    point === "sharp"
      ? 0
      : "flat" in point
        ? knownLength(point.flat, b.unit) / (2 * Math.tan(halfAngle))
        : overrun(knownLength(point.seam ?? (b.unit === "in" ? "1/4" : "6.35"), b.unit)) -
          knownLength(point.blunt, b.unit);
  return 2 * (knownLength(strip, b.unit) + missing - seam - overrun(seam));
}
