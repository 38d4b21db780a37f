import { angleOf, edges, type Polygon, subtract } from "../geometry/index.ts";
import { BIAS_DEGREES, type Degree, STRAIGHT_GRAIN_DEGREES, toDegrees } from "../measure/index.ts";
import type { PieceEdge } from "./types.ts";

/**
 * Angle of every edge to the nearest thread (the two directions of the weave are x and y of the
 * frame the polygon stands in), 0 to 45.
 */
export const grainOf = (p: Polygon): Degree[] =>
  edges(p).map(({ from, to }) => {
    const turn = (((toDegrees(angleOf(subtract(to, from))) % 90) + 90) % 90) as Degree;
    return Math.min(turn, 90 - turn);
  });

/** Straight up to 2 degrees, off-grain up to 30, bias above: limits in measure/tolerance.ts. */
export function grainWord(angle: Degree): PieceEdge["grainWord"] {
  if (angle <= STRAIGHT_GRAIN_DEGREES) return "straight";
  return angle <= BIAS_DEGREES ? "off-grain" : "bias";
}
