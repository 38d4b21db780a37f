import { type Point, type Polygon, point } from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";

/** A rectangle about its own middle, moved to (x, y). */
export const rectangleAt = (x: Length, y: Length, width: Length, height: Length): Polygon => [
  point(x - width / 2, y - height / 2),
  point(x + width / 2, y - height / 2),
  point(x + width / 2, y + height / 2),
  point(x - width / 2, y + height / 2),
];

/** The polygon turned by quarters anticlockwise about the origin, without rounding. */
export function quartersTurned(p: Polygon, quarters: number): Polygon {
  const turn = (v: Point): Point => point(-v.y, v.x);
  let q = p;
  for (let i = 0; i < ((quarters % 4) + 4) % 4; i++) q = q.map(turn);
  return q;
}

/** The polygon moved. */
export const movedBy = (p: Polygon, x: Length, y: Length): Polygon =>
  p.map((v) => point(v.x + x, v.y + y));
