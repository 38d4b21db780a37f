import type { Length, Radian } from "../measure/index.ts";
import { type Point, point } from "./point.ts";
import type { Polygon } from "./polygon.ts";

/** A rigid motion: mirror in the y axis first if `mirrored`, then turn anticlockwise, then move. */
export interface Rigid {
  readonly turn: Radian;
  readonly x: Length;
  readonly y: Length;
  readonly mirrored: boolean;
}

export const IDENTITY: Rigid = { turn: 0, x: 0, y: 0, mirrored: false };
export const turning = (turn: Radian): Rigid => ({ ...IDENTITY, turn });
export const moving = (x: Length, y: Length): Rigid => ({ ...IDENTITY, x, y });
export const MIRROR: Rigid = { ...IDENTITY, mirrored: true };

export function applyTo(t: Rigid, p: Point): Point {
  const x = t.mirrored ? -p.x : p.x;
  const c = Math.cos(t.turn);
  const s = Math.sin(t.turn);
  return point(c * x - s * p.y + t.x, s * x + c * p.y + t.y);
}

/** The moved polygon, still anticlockwise (a mirrored one is listed the other way round). */
export function applyToPolygon(t: Rigid, p: Polygon): Polygon {
  const q = p.map((v) => applyTo(t, v));
  return t.mirrored ? [q[0], ...q.slice(1).reverse()] : q;
}

/** First `a`, then `b`. */
export function andThen(a: Rigid, b: Rigid): Rigid {
  const moved = applyTo({ ...b, x: 0, y: 0 }, point(a.x, a.y));
  return {
    turn: b.mirrored ? b.turn - a.turn : b.turn + a.turn,
    x: moved.x + b.x,
    y: moved.y + b.y,
    mirrored: a.mirrored !== b.mirrored,
  };
}
