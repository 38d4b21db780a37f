import {
  add,
  depth,
  dot,
  type HalfPlane,
  halfPlanes,
  leftOf,
  type Point,
  type Polygon,
  point,
  scale,
  unitVector,
} from "../geometry/index.ts";
import type { Length, Radian } from "../measure/index.ts";
import type { Hatch } from "./swatch.ts";

export type Segment = readonly [Point, Point];

/**
 * Parallel lines over a convex polygon, `gap` apart, at `angle` anticlockwise from x. The family is
 * fixed to the drawing's origin, so that neighboring shapes share it.
 */
export function hatchLines(p: Polygon, angle: Radian, gap: Length): Segment[] {
  const along = unitVector(angle);
  const across = leftOf(along);
  const ds = p.map((v) => dot(v, across));
  const low = Math.min(...ds);
  const high = Math.max(...ds);
  const planes = halfPlanes(p);
  const out: Segment[] = [];
  for (let k = Math.ceil(low / gap + 1e-6); k * gap < high - 1e-6 * gap; k++) {
    const segment = lineInside(planes, scale(across, k * gap), along);
    if (segment) out.push(segment);
  }
  return out;
}

/** The part of the line through q along d that lies in all the half-planes. */
function lineInside(planes: readonly HalfPlane[], q: Point, d: Point): Segment | undefined {
  let from = Number.NEGATIVE_INFINITY;
  let to = Number.POSITIVE_INFINITY;
  for (const h of planes) {
    const speed = dot(h.n, d);
    const room = depth(h, q);
    if (Math.abs(speed) < 1e-12) {
      if (room <= 0) return undefined;
    } else if (speed > 0) to = Math.min(to, room / speed);
    else from = Math.max(from, room / speed);
  }
  return to - from > 1e-9 ? [add(q, scale(d, from)), add(q, scale(d, to))] : undefined;
}

const DEGREE = Math.PI / 180;

/** The line families of a fabric's hatch: angle in degrees and gap relative to the theme's. */
const FAMILIES: Readonly<Record<Hatch, readonly (readonly [number, number])[]>> = {
  rising: [[45, 1]],
  blank: [],
  upright: [[90, 1]],
  crossed: [
    [20, 0.9],
    [110, 0.9],
  ],
  level: [[0, 1]],
  dots: [],
  steep: [[70, 1.4]],
  shallow: [[20, 1.4]],
};

export const fabricHatch = (p: Polygon, hatch: Hatch, gap: Length): Segment[] =>
  FAMILIES[hatch].flatMap(([angle, times]) => hatchLines(p, angle * DEGREE, gap * times));

/** The falling broken hatch: lost fabric, and nothing else. */
export const lostHatch = (p: Polygon, gap: Length): Segment[] => hatchLines(p, -45 * DEGREE, gap);

/** Centers of dots in staggered rows over a convex polygon. */
export function hatchDots(p: Polygon, gap: Length): Point[] {
  const out: Point[] = [];
  hatchLines(p, 0, gap).forEach(([a, b]) => {
    const row = Math.round(a.y / gap);
    const shift = row % 2 === 0 ? 0 : gap;
    for (let k = Math.ceil((a.x - shift) / (2 * gap)); k * 2 * gap + shift < b.x; k++)
      out.push(point(k * 2 * gap + shift, a.y));
  });
  return out;
}
