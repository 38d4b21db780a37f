import type { Hand, Role } from "../block/types.ts";
import type { Point, Polygon } from "../geometry/index.ts";
import type { Degree, Length } from "../measure/index.ts";

export interface PieceEdge {
  readonly finished: Length;
  readonly cut: Length;
  readonly allowance: Length;
  /** Angle between the edge and the nearest thread, 0 to 45. */
  readonly grain: Degree;
  readonly grainWord: "straight" | "off-grain" | "bias";
  /** On the outside of the block in at least one of its patches. */
  readonly outside: boolean;
}

/** Where a point may be trimmed so that raw edges end square to their seam and can be matched. */
export interface Trim {
  /** Corner (vertex index) of the piece. */
  readonly corner: number;
  readonly from: Point;
  readonly to: Point;
}

/**
 * One kind of cut piece: a class of (shape, fabric, grain rule, hand). `finished` and `cut` stand in
 * the piece's own frame, which is the fabric's: x along the strip, y across it, edge 0 along the
 * bottom, the cut piece's box with its lower left corner at the origin, right side of the fabric up.
 * Edge i runs from vertex i to vertex i + 1.
 */
export interface Piece {
  /** By content, so the same piece has the same id in every brief. */
  readonly id: string;
  readonly letter: string;
  readonly name: string;
  readonly fabricId: string;
  readonly roles: readonly Role[];
  readonly hand: Hand;
  /** Lefts and rights counted as one piece, because the fabric may be turned over. */
  readonly eitherWay: boolean;
  /** The piece that is this one turned over, when both are needed. */
  readonly mirrorId?: string;
  readonly finished: Polygon;
  readonly cut: Polygon;
  readonly edges: readonly PieceEdge[];
  readonly trims: readonly Trim[];
  /** Does the cut size of this piece decide the size of the block (never rounded)? */
  readonly setsSize: boolean;
  readonly count: number;
  /** How many in one block of each kind: block id -> count. */
  readonly perBlock: Readonly<Record<string, number>>;
  /** Patches of one block of each kind that are cut as this piece. */
  readonly patchIds: readonly string[];
}
