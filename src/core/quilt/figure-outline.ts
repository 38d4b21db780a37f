import {
  cross,
  distance,
  dot,
  edges,
  type Point,
  type Polygon,
  subtract,
} from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";

/** A stretch of an edge. */
export type Stretch = readonly [Point, Point];

/**
 * The outline of a figure made of patches: every edge less what it shares with a neighbor, as
 * stretches. Patches lie side by side and never one on another; `near` is how far two edges of one
 * seam may be apart.
 */
export function figureOutline(parts: readonly Polygon[], near: Length): Stretch[] {
  const all = parts.flatMap((polygon, part) => edges(polygon).map((e) => ({ ...e, part })));
  return all.flatMap((e): Stretch[] => {
    const length = distance(e.from, e.to);
    if (length <= near) return [];
    const along = subtract(e.to, e.from);
    const off = (v: Point): Length => Math.abs(cross(along, subtract(v, e.from))) / length;
    const at = (v: Point): Length => dot(along, subtract(v, e.from)) / length;
    const shared = all
      .filter((f) => f.part !== e.part && off(f.from) <= near && off(f.to) <= near)
      .map((f) => [at(f.from), at(f.to)].sort((x, y) => x - y))
      .filter(([low, high]) => high > near && low < length - near)
      .sort((x, y) => x[0] - y[0]);
    const point = (d: Length): Point => ({
      x: e.from.x + (along.x * d) / length,
      y: e.from.y + (along.y * d) / length,
    });
    const open: Stretch[] = [];
    let done = 0;
    for (const [low, high] of shared) {
      if (low > done + near) open.push([point(done), point(low)]);
      done = Math.max(done, high);
    }
    if (done < length - near) open.push([point(done), e.to]);
    return open;
  });
}
