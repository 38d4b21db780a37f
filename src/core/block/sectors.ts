import {
  clip,
  complement,
  depth,
  direction,
  distance,
  dot,
  type Edge,
  edges,
  type HalfPlane,
  halfPlanes,
  leftHalfPlane,
  leftOf,
  middle,
  ORIGIN,
  type Point,
  type Polygon,
  scale,
  subtract,
} from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import type { Hand, Role } from "./types.ts";

export type Turned = "flat" | "corner";

/** Directions of `n` equal sectors, numbered anticlockwise from sector 0. */
export interface Circle {
  readonly n: number;
  /** The seam at which sector i starts, going anticlockwise. */
  readonly seam: (i: number) => Point;
  /** The center line of sector i. */
  readonly axis: (i: number) => Point;
}

/**
 * Flat: the center line of sector 0 points at the middle of the right side ("flat side to the
 * edge"). Corner: its first seam does ("corner to the edge").
 */
export function circleOf(n: number, turned: Turned): Circle {
  const seamAt = turned === "flat" ? -1 : 0;
  const at = Array.from({ length: 2 * n }, (_, k) => direction(k, 2 * n));
  return {
    n,
    seam: (i) => at[(2 * i + seamAt + 2 * n) % (2 * n)],
    axis: (i) => at[(2 * i + seamAt + 1) % (2 * n)],
  };
}

/** Everything clockwise of the seam at which sector i starts: the side of the sector before it. */
export const beforeSeam = (c: Circle, i: number): HalfPlane => leftHalfPlane(c.seam(i), ORIGIN);

/** What lies on the center's side of the outer edge of wedge i, at `a` from the center. */
export const withinChord = (c: Circle, i: number, a: Length): HalfPlane => ({ n: c.axis(i), c: a });

/** The part of `within` between the seams of `count` sectors from `start`, at most half a circle. */
export function span(
  within: Polygon,
  c: Circle,
  start: number,
  count: number,
  join: Length,
): Polygon {
  const after = clip(within, complement(beforeSeam(c, start)), join);
  return clip(after, beforeSeam(c, start + count), join);
}

/** Is the polygon its own mirror image in the line through the center along `axis`? */
function isSymmetric(p: Polygon, axis: Point, join: Length): boolean {
  return p.every((v) => {
    const mirrored = subtract(scale(axis, 2 * dot(axis, v)), v);
    return p.some((w) => distance(w, mirrored) <= 2 * join);
  });
}

/** What the sectors fill: a square or hexagon about the center, with its sides as half-planes. */
export interface Field {
  readonly polygon: Polygon;
  readonly sides: readonly HalfPlane[];
}

export const fieldOf = (polygon: Polygon): Field => ({ polygon, sides: halfPlanes(polygon) });

/** The longest edge of a patch that lies on the outline, with the side it lies on. */
export function longestOutside(p: Polygon, field: Field, join: Length) {
  let longest: { edge: Edge; side: HalfPlane; length: Length } | undefined;
  for (const side of field.sides) {
    for (const edge of edges(p)) {
      if (depth(side, edge.from) > join || depth(side, edge.to) > join) continue;
      const length = distance(edge.from, edge.to);
      if (!longest || length > longest.length + join) longest = { edge, side, length };
    }
  }
  return longest;
}

/**
 * Left or right, as seen on the right side with the outside edge at the bottom: in which half of
 * its side of the block the piece lies. A piece that reaches round a corner has its longer outside
 * edge at the bottom. A mirrored piece has the other hand; a turned one keeps its hand.
 */
function handBySide(p: Polygon, field: Field, join: Length): "left" | "right" {
  const bottom = longestOutside(p, field, join);
  if (!bottom) throw new RangeError("a sector's outer patch has no edge on the outline");
  const { edge, side } = bottom;
  return dot(middle(edge.from, edge.to), leftOf(side.n)) > 0 ? "right" : "left";
}

export interface Named {
  readonly role: Role;
  readonly hand: Hand;
}

/** What lies outside a trimmed sector: a corner, a trapezoid, or a left or right background. */
export function nameOuter(p: Polygon, axis: Point, field: Field, join: Length): Named {
  if (!isSymmetric(p, axis, join)) return handed(p, field, join);
  const hasCorner = p.some((v) => field.polygon.some((w) => distance(v, w) <= join));
  return { role: hasCorner ? "corner" : "trapezoid", hand: "none" };
}

/** A whole sector: a kite where a corner of the block lies on its center line, else background. */
export function nameWhole(p: Polygon, axis: Point, field: Field, join: Length): Named {
  if (!isSymmetric(p, axis, join)) return handed(p, field, join);
  return { role: p.length === 4 ? "kite" : "background", hand: "none" };
}

function handed(p: Polygon, field: Field, join: Length): Named {
  const hand = handBySide(p, field, join);
  return { role: `background-${hand}`, hand };
}
