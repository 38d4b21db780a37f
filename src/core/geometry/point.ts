import type { Length, Radian } from "../measure/index.ts";

/** x to the right, y up, in the document's unit. Docs: docs/conventions.md. */
export interface Point {
  readonly x: Length;
  readonly y: Length;
}

export const point = (x: Length, y: Length): Point => ({ x, y });
export const ORIGIN: Point = point(0, 0);

export const add = (a: Point, b: Point): Point => point(a.x + b.x, a.y + b.y);
export const subtract = (a: Point, b: Point): Point => point(a.x - b.x, a.y - b.y);
export const scale = (a: Point, k: number): Point => point(a.x * k, a.y * k);
export const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;
/** z of the cross product: positive when b lies anticlockwise of a. */
export const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;
export const norm = (a: Point): Length => Math.sqrt(a.x * a.x + a.y * a.y);
export function distance(a: Point, b: Point): Length {
  const x = a.x - b.x;
  const y = a.y - b.y;
  return Math.sqrt(x * x + y * y);
}
export const middle = (a: Point, b: Point): Point => point((a.x + b.x) / 2, (a.y + b.y) / 2);
/** The point a fraction `k` of the way from a to b. */
export const between = (a: Point, b: Point, k: number): Point =>
  point(a.x + (b.x - a.x) * k, a.y + (b.y - a.y) * k);
export const unitVector = (angle: Radian): Point => point(Math.cos(angle), Math.sin(angle));
/** A quarter turn anticlockwise. */
export const leftOf = (a: Point): Point => point(-a.y, a.x);
export const angleOf = (a: Point): Radian => Math.atan2(a.y, a.x);
export const normalized = (a: Point): Point => scale(a, 1 / norm(a));
