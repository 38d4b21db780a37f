import {
  area,
  contains,
  cut,
  depth,
  distance,
  dot,
  edges,
  type HalfPlane,
  halfPlanes,
  leftHalfPlane,
  normalized,
  type Point,
  type Polygon,
  subtract,
} from "../../geometry/index.ts";
import type { Length } from "../../measure/index.ts";
import type { Plan } from "../plan.ts";

/** A part of the block while its seams are being said: cut in two by a seam, or still whole. */
export interface Part {
  readonly polygon: Polygon;
  split?: { readonly line: HalfPlane; readonly first: Part; readonly second: Part };
}

export const uncut = (part: Part): Part[] =>
  part.split ? [...uncut(part.split.first), ...uncut(part.split.second)] : [part];

export const planOf = (part: Part): Plan<Polygon> =>
  part.split
    ? {
        line: part.split.line,
        first: planOf(part.split.first),
        second: planOf(part.split.second),
      }
    : { leaf: part.polygon };

/** Where a straight line runs through one part, as distances from the start of the seam. */
export interface Crossing {
  readonly part: Part;
  readonly line: HalfPlane;
  readonly start: Point;
  readonly end: Point;
  readonly from: Length;
  readonly to: Length;
}

/**
 * The parts that the stretch from p to q runs through, from p to q, each with the whole chord it
 * would take: `from` below 0 or `to` beyond the stretch means that the stretch stops inside.
 */
export function crossed(root: Part, p: Point, q: Point, join: Length): Crossing[] {
  const line = leftHalfPlane(p, q);
  const along = normalized(subtract(q, p));
  const length = distance(p, q);
  const at = (v: Point) => dot(subtract(v, p), along);
  const visit = (part: Part): Crossing[] => {
    if (part.split) {
      const { first, second } = part.split;
      const [dp, dq] = [depth(part.split.line, p), depth(part.split.line, q)];
      if (Math.min(dp, dq) >= -join) return visit(first);
      return Math.max(dp, dq) <= join ? visit(second) : [...visit(first), ...visit(second)];
    }
    const two = cut(part.polygon, line, join);
    if (!two) return [];
    const [u, v] = two.chord;
    const [start, end] = at(u) < at(v) ? [u, v] : [v, u];
    const [from, to] = [at(start), at(end)];
    if (Math.min(to, length) - Math.max(from, 0) <= join) return [];
    return [{ part, line, start, end, from, to }];
  };
  return visit(root).sort((a, b) => a.from - b.from);
}

/** Cuts an uncut part. Returns its two new parts. Throws RangeError when the line misses it. */
export function split(part: Part, line: HalfPlane, join: Length): readonly [Part, Part] {
  const two = cut(part.polygon, line, join);
  if (!two) throw new RangeError("split: the line misses the part");
  const first: Part = { polygon: two.inside };
  const second: Part = { polygon: two.outside };
  part.split = { line, first, second };
  return [first, second];
}

/** The uncut part with p strictly inside, if there is one. */
export const partAround = (root: Part, p: Point, join: Length): Part | undefined =>
  uncut(root).find((part) => contains(part.polygon, p, -2 * join));

/** Where the ray from p (inside or on the edge of the polygon) leaves it. */
export function exitOf(polygon: Polygon, p: Point, along: Point): Point {
  let reach = Number.POSITIVE_INFINITY;
  for (const h of halfPlanes(polygon)) {
    const speed = dot(h.n, along);
    if (speed > 1e-12) reach = Math.min(reach, Math.max(0, depth(h, p)) / speed);
  }
  return { x: p.x + along.x * reach, y: p.y + along.y * reach };
}

/** Least width of a convex polygon: the least, over its edges, of how far it reaches from the edge. */
export function leastWidth(polygon: Polygon): Length {
  const widths = halfPlanes(polygon).map((h) => Math.max(...polygon.map((v) => depth(h, v))));
  return edges(polygon).length < 3 || area(polygon) <= 0 ? 0 : Math.min(...widths);
}
