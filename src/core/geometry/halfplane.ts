import type { Length } from "../measure/index.ts";
import { cross, dot, leftOf, normalized, type Point, point, scale, subtract } from "./point.ts";

/**
 * The half-plane n . p <= c. `n` has length 1 and points out of it, so `c - n . p` is how far p
 * lies inside (negative: outside).
 */
export interface HalfPlane {
  readonly n: Point;
  readonly c: Length;
}

/** Half-plane to the left of the directed line a -> b. */
export function leftHalfPlane(a: Point, b: Point): HalfPlane {
  const n = scale(leftOf(normalized(subtract(b, a))), -1);
  return { n, c: dot(n, a) };
}

/** How far p lies inside: c - n . p. */
export const depth = (h: HalfPlane, p: Point): Length => h.c - dot(h.n, p);

/** The same boundary, the other side. */
export const complement = (h: HalfPlane): HalfPlane => ({ n: scale(h.n, -1), c: -h.c });

/** Boundary moved outward by `by` (inward when negative). */
export const moved = (h: HalfPlane, by: Length): HalfPlane => ({ n: h.n, c: h.c + by });

/** Where two boundaries meet, or undefined when they are parallel to within 1e-12. */
export function crossing(a: HalfPlane, b: HalfPlane): Point | undefined {
  const d = cross(a.n, b.n);
  if (Math.abs(d) < 1e-12) return undefined;
  // Adding 0 turns a -0 into 0, so that equal points print and compare alike.
  return point((a.c * b.n.y - b.c * a.n.y) / d + 0, (a.n.x * b.c - b.n.x * a.c) / d + 0);
}
