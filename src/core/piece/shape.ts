import {
  applyToPolygon,
  boundingBox,
  distance,
  MIRROR,
  type Polygon,
  point,
} from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";

/** A finished shape with the allowance of each edge, and which edges lie on the block's outside. */
export interface Shape {
  readonly finished: Polygon;
  readonly allowances: readonly Length[];
  readonly outside: readonly boolean[];
}

const rolled = <T>(list: readonly T[], start: number): T[] => [
  ...list.slice(start),
  ...list.slice(0, start),
];

/** The same shape listed from edge `start`. */
export const startingAt = (s: Shape, start: number): Shape => ({
  finished: rolled(s.finished, start),
  allowances: rolled(s.allowances, start),
  outside: rolled(s.outside, start),
});

/** The shape turned over (as on the back of the fabric), still anticlockwise, edge 0 still edge 0. */
export function turnedOver(s: Shape): Shape {
  const flipped = applyToPolygon(MIRROR, s.finished);
  const n = flipped.length;
  // applyToPolygon lists v0, v(n-1) .. v1; starting at v1 makes the old edge 0 (v1 -> v0) the first.
  const edge = <T>(list: readonly T[]): T[] => list.map((_, i) => list[(n - i) % n]);
  return {
    finished: rolled(flipped, n - 1),
    allowances: edge(s.allowances),
    outside: edge(s.outside),
  };
}

/**
 * How far b's list must be rolled so that it is a, turned and moved only; undefined when they are not
 * congruent. With `outsideToo` the same edges must lie on the outside. A convex polygon is fixed by its sides and the chords over every second corner, so equal
 * distances are all that needs comparing, and one tolerance does for all of them.
 */
export function rollTo(a: Shape, b: Shape, slack: Length, outsideToo = false): number | undefined {
  const n = a.finished.length;
  if (b.finished.length !== n) return undefined;
  for (let roll = 0; roll < n; roll++) {
    const sameOutside = () => a.outside.every((o, i) => o === b.outside[(i + roll) % n]);
    if (matches(a, b, roll, slack) && (!outsideToo || sameOutside())) return roll;
  }
  return undefined;
}

function matches(a: Shape, b: Shape, roll: number, slack: Length): boolean {
  const n = a.finished.length;
  for (let i = 0; i < n; i++) {
    const j = i + roll;
    for (const span of [1, 2]) {
      const one = distance(a.finished[i], a.finished[(i + span) % n]);
      const two = distance(b.finished[j % n], b.finished[(j + span) % n]);
      if (Math.abs(one - two) > slack) return false;
    }
    if (Math.abs(a.allowances[i] - b.allowances[j % n]) > slack) return false;
  }
  return true;
}

/** Is the shape its own mirror image (allowances too)? Then it has no hand. */
export const isSymmetric = (s: Shape, slack: Length): boolean =>
  rollTo(s, turnedOver(s), slack) !== undefined;

/** The polygon moved so that its box stands at the origin, first quadrant. */
export function atOrigin(p: Polygon): Polygon {
  const { left, bottom } = boundingBox(p);
  return p.map((v) => point(v.x - left, v.y - bottom));
}

/** Corners that are straight (another patch's seam ends there) taken out. */
export function withoutStraightCorners(s: Shape, slack: Length): Shape {
  const n = s.finished.length;
  const keep = s.finished.map((v, i) => {
    const before = s.finished[(i + n - 1) % n];
    const after = s.finished[(i + 1) % n];
    const detour = distance(before, v) + distance(v, after) - distance(before, after);
    return detour > slack * slack && !isStraight(before, v, after, slack);
  });
  const pick = <T>(list: readonly T[]): T[] => list.filter((_, i) => keep[i]);
  return {
    finished: pick(s.finished),
    allowances: pick(s.allowances),
    outside: pick(s.outside),
  };
}

function isStraight(a: Polygon[number], b: Polygon[number], c: Polygon[number], slack: Length) {
  const twiceArea = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
  return Math.abs(twiceArea) <= slack * distance(a, c);
}
