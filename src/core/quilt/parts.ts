import { direction, type HalfPlane } from "../geometry/index.ts";
import type { HalfKind } from "./types.ts";

/** Names of the eight directions in a block's own frame, anticlockwise from the right. */
const NAMES = [
  "right",
  "upper-right",
  "upper",
  "upper-left",
  "left",
  "lower-left",
  "lower",
  "lower-right",
] as const;

/** The part of a block that lies toward direction k (of eight): half, inside a line through its middle. */
export const halfToward = (of: string, k: number): HalfKind => {
  const eighth = ((k % 8) + 8) % 8;
  return { id: `${of}~${NAMES[eighth]}`, of, keep: [toward(eighth)] };
};

/** The quarter between directions k - 1 and k + 1 (of eight). */
export const quarterToward = (of: string, k: number): HalfKind => {
  const eighth = ((k % 8) + 8) % 8;
  return {
    id: `${of}~${NAMES[eighth]}-quarter`,
    of,
    keep: [toward((eighth + 7) % 8), toward((eighth + 1) % 8)],
  };
};

const toward = (eighth: number): HalfPlane => {
  const d = direction(eighth, 8);
  return { n: { x: -d.x, y: -d.y }, c: 0 };
};
