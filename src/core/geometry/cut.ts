import type { Length } from "../measure/index.ts";
import { depth, type HalfPlane } from "./halfplane.ts";
import { between, type Point } from "./point.ts";
import type { Polygon } from "./polygon.ts";

/** Both sides of one straight cut. `chord` runs so that `inside` lies to its left. */
export interface CutInTwo {
  readonly inside: Polygon;
  readonly outside: Polygon;
  readonly chord: readonly [Point, Point];
}

/**
 * Cuts a convex polygon in two along the boundary of `h`. Both parts get the very same two points on
 * the cut, so edges that are sewn together are equal to the last bit. A vertex within `snap` of the
 * line lies on it. Undefined when the line leaves the whole polygon on one side.
 */
export function cut(p: Polygon, h: HalfPlane, snap: Length): CutInTwo | undefined {
  const d = p.map((q) => {
    const x = depth(h, q);
    return Math.abs(x) <= snap ? 0 : x;
  });
  if (d.every((x) => x <= 0) || d.every((x) => x >= 0)) return undefined;
  const inside: Point[] = [];
  const outside: Point[] = [];
  let leaves: Point | undefined;
  let enters: Point | undefined;
  p.forEach((q, i) => {
    const j = (i + 1) % p.length;
    const before = d[(i + p.length - 1) % p.length];
    if (d[i] >= 0) inside.push(q);
    if (d[i] <= 0) outside.push(q);
    if (d[i] === 0) {
      if (before > 0) leaves = q;
      else enters = q;
    } else if (d[i] * d[j] < 0) {
      const at = between(q, p[j], d[i] / (d[i] - d[j]));
      inside.push(at);
      outside.push(at);
      if (d[i] > 0) leaves = at;
      else enters = at;
    }
  });
  if (!leaves || !enters) return undefined;
  return { inside, outside, chord: [leaves, enters] };
}
