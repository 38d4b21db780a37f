import { direction, type Point, type Polygon, point, scale } from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";

export type OutlineKind = "square" | "hexagon";

/** Width 2 x halfWidth, height 2 x halfHeight, center at the origin, lower left corner first. */
export const rectangle = (halfWidth: Length, halfHeight: Length): Polygon => [
  point(-halfWidth, -halfHeight),
  point(halfWidth, -halfHeight),
  point(halfWidth, halfHeight),
  point(-halfWidth, halfHeight),
];

/** Regular, a flat side to the right and to the left, `half` from center to each side. */
export const hexagon = (half: Length): Polygon =>
  [7, 9, 11, 1, 3, 5].map((k) => scale(direction(k, 12), half / Math.cos(Math.PI / 6)));

export const outlineOfKind = (kind: OutlineKind, half: Length): Polygon =>
  kind === "square" ? rectangle(half, half) : hexagon(half);

/** Directions square to the sides. */
export const sideNormals = (kind: OutlineKind): Point[] => {
  const sides = kind === "square" ? 4 : 6;
  return Array.from({ length: sides }, (_, i) => direction(i, sides));
};
