import type { Length } from "../measure/index.ts";
import { unrolled } from "./repeat.ts";
import type { BandLook, Look, Ring, Way, WedgeCut } from "./types.ts";

/**
 * The rings of a sewn wedge along its axis, from the center outward. A band edge y above the strip's
 * lower edge shows at radius a + SA - y (up) and y - p (down), kept where 0 < r < a. Widths sum to
 * `a` when the fabric is wide enough. `start`: the lower edge's height in the repeat.
 */
export function ringsOf(look: Look, cut: WedgeCut, way: Way, start: Length): Ring[] {
  if (look.kind !== "bands")
    return [{ inner: 0, outer: cut.a, color: look.color, fabricId: look.fabricId }];
  return ringsBetween(look, cut, way, start, 0, cut.a);
}

/** The same over any stretch of radius: past the seams a stripe goes on under the allowance. */
export function ringsBetween(
  look: BandLook,
  cut: WedgeCut,
  way: Way,
  start: Length,
  from: Length,
  to: Length,
): Ring[] {
  const outerEdge = cut.a + cut.seam;
  const ring = (inner: Length, outer: Length, b: { color: string; fabricId: string }): Ring => ({
    inner,
    outer,
    color: b.color,
    fabricId: b.fabricId,
  });
  if (way === "up")
    return unrolled(look, start + outerEdge - to, start + outerEdge - from)
      .map((b) => ring(outerEdge - (b.to - start), outerEdge - (b.from - start), b))
      .reverse();
  return unrolled(look, start + cut.past + from, start + cut.past + to).map((b) =>
    ring(b.from - start - cut.past, b.to - start - cut.past, b),
  );
}

export const ringWidth = (r: Ring): Length => r.outer - r.inner;

/** How far apart on the fabric the stretches shown up and down lie: p - SA (0: mirror images). */
export const upDownShift = (cut: WedgeCut): Length => cut.past - cut.seam;
