import { type Degree, type Length, toRadians } from "../measure/index.ts";
import type { Follow } from "./shift.ts";

/**
 * What small errors do to n wedges sewn round, to first order (exact where they only move edges).
 * `e` is by how much every seam is wider than told, turn of the fabric counted. Derivations and the
 * figures they were checked with: docs/geometry/error-laws.md.
 */

/** Half the angle of a wedge, in radians. */
const halfAngle = (n: number): number => Math.PI / n;

/** Across flats: what the raw circle of wedges (or a kite block) is smaller by; 5.226 e for eight. */
export const circleLoss = (n: number, e: Length): Length => (2 * e) / Math.sin(halfAngle(n));

/**
 * What one side of the block moves toward the center, where the piece on it belongs to a sector
 * whose center line lies `delta` from square to that side. A whole sector, or one whose long seams
 * follow the outer piece's raw edge, moves with its own legs; one that follows the wedge moves by
 * the cross seam as well.
 */
export function sideLoss(n: number, e: Length, delta: Degree, follow: Follow): Length {
  const alongAxis = e / Math.sin(halfAngle(n)) + (follow === "inner" ? 2 * e : 0);
  return alongAxis * Math.cos(toRadians(delta));
}

/** Deep block of eight: 4.828 e if the long seams follow the background, 8.524 e if the wedge. */
export const deepLoss = (e: Length, follow: Follow): Length => 2 * sideLoss(8, e, 22.5, follow);

/** How far apart the raw edges of wedge and background lie after their seam; 0.765 e for eight. */
export const stepBetweenEdges = (n: number, e: Length): Length => 2 * e * Math.sin(halfAngle(n));

/** What any sewn unit loses on each way across when it is set into the quilt. */
export const lossInQuilt = (e: Length): Length => 2 * e;

/** Bars on both sides of a block: two seams, each taking e from both of its sides. */
export const frameLoss = (e: Length): Length => 4 * e;

/**
 * Outer edge too much (positive) when every allowance is d wider at the center than at the outer
 * edge, along the leg; too little when it is wider at the outer edge. 16 d for eight, at any size.
 */
export const driftMisfit = (n: number, d: Length): Length => 2 * n * d;

/** Degrees too much round the center when every wedge is x degrees too wide. */
export const angleMisfit = (n: number, x: Degree): Degree => n * x;

/** The same as a length along the outer edge of a leg that long. */
export const angleMisfitAlong = (n: number, x: Degree, leg: Length): Length =>
  toRadians(angleMisfit(n, x)) * leg;

/** Sewing k seams again, x deeper at the outer edge and tapering to nothing, takes up this much. */
export const takenUpBy = (seams: number, x: Length): Length => 2 * seams * x;

/** Height of the dome that a shortage along the outer edge makes, if fabric did not give at all. */
export function domeHeight(radius: Length, shortage: Length): Length {
  const share = 1 - shortage / (2 * Math.PI * radius);
  return share >= 1 ? 0 : radius * Math.sqrt(1 - share * share);
}
