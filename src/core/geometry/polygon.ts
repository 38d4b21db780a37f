import type { Length } from "../measure/index.ts";
import { crossing, depth, type HalfPlane, leftHalfPlane, moved } from "./halfplane.ts";
import { between, cross, distance, type Point, point, subtract } from "./point.ts";

/** Convex, anticlockwise, first vertex nearest the block's center where that means anything. */
export type Polygon = readonly Point[];

export interface Edge {
  readonly from: Point;
  readonly to: Point;
}

export const edges = (p: Polygon): Edge[] =>
  p.map((from, i) => ({ from, to: p[(i + 1) % p.length] }));
export const edgeLength = (e: Edge): Length => distance(e.from, e.to);
/** The half-planes whose intersection is the polygon, one an edge, in the edges' order. */
export const halfPlanes = (p: Polygon): HalfPlane[] =>
  edges(p).map((e) => leftHalfPlane(e.from, e.to));

export function area(p: Polygon): number {
  let sum = 0;
  for (const { from, to } of edges(p)) sum += cross(from, to);
  return sum / 2;
}

export function centroid(p: Polygon): Point {
  let x = 0;
  let y = 0;
  let twice = 0;
  for (const { from, to } of edges(p)) {
    const k = cross(from, to);
    twice += k;
    x += (from.x + to.x) * k;
    y += (from.y + to.y) * k;
  }
  return point(x / (3 * twice), y / (3 * twice));
}

export interface Box {
  readonly left: Length;
  readonly bottom: Length;
  readonly right: Length;
  readonly top: Length;
}

export function boundingBox(p: Polygon): Box {
  const xs = p.map((q) => q.x);
  const ys = p.map((q) => q.y);
  return {
    left: Math.min(...xs),
    bottom: Math.min(...ys),
    right: Math.max(...xs),
    top: Math.max(...ys),
  };
}

/** Anticlockwise and convex, corners within `slack` of straight allowed. */
export function isConvex(p: Polygon, slack: Length = 0): boolean {
  return (
    p.length >= 3 &&
    p.every((a, i) => {
      const b = p[(i + 1) % p.length];
      const c = p[(i + 2) % p.length];
      return cross(subtract(b, a), subtract(c, b)) >= -slack * distance(a, b);
    })
  );
}

/** Is q inside, or outside by no more than `slack`? */
export const contains = (p: Polygon, q: Point, slack: Length = 0): boolean =>
  halfPlanes(p).every((h) => depth(h, q) >= -slack);

/** Does `outer` hold the whole of `inner`, to within `slack`? */
export const covers = (outer: Polygon, inner: Polygon, slack: Length = 0): boolean =>
  inner.every((q) => contains(outer, q, slack));

/**
 * The part of p inside h (Sutherland and Hodgman's step for one edge). A vertex within `snap` of
 * the boundary lies on it, so that cuts through corners make no splinters. Empty when nothing is left.
 */
export function clip(p: Polygon, h: HalfPlane, snap: Length): Polygon {
  const d = p.map((q) => {
    const x = depth(h, q);
    return Math.abs(x) <= snap ? 0 : x;
  });
  if (d.every((x) => x <= 0)) return [];
  const out: Point[] = [];
  p.forEach((q, i) => {
    const j = (i + 1) % p.length;
    if (d[i] >= 0) out.push(q);
    if ((d[i] > 0 && d[j] < 0) || (d[i] < 0 && d[j] > 0)) {
      out.push(between(q, p[j], d[i] / (d[i] - d[j])));
    }
  });
  return out;
}

/**
 * Cut size: every edge moved outward by its own allowance (`allowances[i]` belongs to the edge that
 * starts at vertex i), corners where neighbouring moved edges meet, in the order of p's vertices.
 * Moving outward never loses an edge of a convex polygon. Throws RangeError when two neighbours are
 * parallel. Derivation: docs/geometry/allowance.md.
 */
export function offset(p: Polygon, allowances: readonly Length[]): Polygon {
  const planes = halfPlanes(p).map((h, i) => moved(h, allowances[i]));
  return p.map((_, i) => {
    const before = planes[(i + p.length - 1) % p.length];
    const at = crossing(before, planes[i]);
    if (!at) throw new RangeError("offset: neighbouring edges are parallel");
    return at;
  });
}

/** Intersection of half-planes inside a big square of half-side `reach`. Empty when there is none. */
export function intersect(planes: readonly HalfPlane[], reach: Length, snap: Length): Polygon {
  let p: Polygon = [
    point(-reach, -reach),
    point(reach, -reach),
    point(reach, reach),
    point(-reach, reach),
  ];
  for (const h of planes) {
    p = clip(p, h, snap);
    if (p.length === 0) return p;
  }
  return p;
}

/**
 * Starts the vertex list at the vertex nearest q. Of several equally near, the one that comes after
 * a farther one, going anticlockwise; so two neighbours equally near start the list with their edge.
 */
export function startNearest(p: Polygon, q: Point): Polygon {
  const far = p.map((v) => distance(v, q));
  const slack = 1e-9 * Math.max(...far);
  const near = far.map((d) => d <= Math.min(...far) + slack);
  const first = near.findIndex((is, i) => is && !near[(i + p.length - 1) % p.length]);
  const start = first === -1 ? 0 : first;
  return [...p.slice(start), ...p.slice(0, start)];
}
