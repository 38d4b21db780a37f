import type { Hand, Seam } from "../block/types.ts";
import type { Point, Polygon } from "../geometry/index.ts";
import type { Degree, Length } from "../measure/index.ts";

/**
 * Toward which part the allowance lies, or open. A seam that runs through the center, fanned there,
 * may lie the same way round on both its arms: anticlockwise or clockwise, seen on the right side.
 */
export type Press = "first" | "second" | "open" | "anticlockwise" | "clockwise";

/**
 * A width a person can measure with a ruler on the raw unit.
 * across: between two parallel edges. corner: from one edge, square to it, to the farthest corner.
 * along: one edge from corner to corner.
 */
export interface Measure {
  readonly name: string;
  readonly kind: "across" | "corner" | "along";
  readonly unfinished: Length;
  readonly finished: Length;
  /** Before anything is trimmed, with the spare of the pieces still on. */
  readonly untrimmed: Length;
  /** In how many places of the unit the same width can be measured. */
  readonly ways: number;
  /** Outline edge the ruler is laid on, and the parallel edge or the corner it is read at. */
  readonly edge: number;
  readonly to: number;
}

/** How the two parts are laid down before the second is turned over on the first. */
export interface Lay {
  /** Right sides up, the end of the seam nearest the block's center toward the maker. */
  readonly left: 0 | 1;
  /** Not its own mirror image: every copy must be laid the same way round. */
  readonly alike: boolean;
}

/** A straight edge laid on the long raw edge of a half: no light may show. */
export interface StraightEdge {
  readonly edge: number;
  readonly length: Length;
  /** Half of it: from the center to the end of the raw edge. */
  readonly arm: Length;
}

/** Squaring up from the center, not from edge to edge. */
export interface SquareUp {
  /** From the center to each raw side: half the finished width and one allowance. */
  readonly toEachSide: readonly Length[];
  /** The ruler line to lay on a seam, and that seam. Absent when no seam lies on a ruler's line. */
  readonly line?: { readonly seamId: string; readonly degrees: Degree };
}

/** One kind of sewn unit and the stop after it; congruent units are made once and counted. */
export interface SewnUnit {
  readonly id: string;
  readonly blockId: string;
  readonly letter: string;
  /** 1 joins two patches; every other one more than the later of its parts. */
  readonly stage: number;
  /** Units or patches it joins. */
  readonly of: readonly [string, string];
  readonly seam: Seam;
  readonly outline: Polygon;
  /** In one block. */
  readonly copies: number;
  /** In all blocks of this kind. */
  readonly inAll: number;
  /** The tree's nodes that are this unit, its own first. */
  readonly seamIds: readonly string[];
  readonly hand: Hand;
  /** The unit that is this one turned over. */
  readonly mirrorId?: string;
  readonly lay: Lay;
  readonly measures: readonly Measure[];
  /** The same widths by name, unfinished and finished. */
  readonly unfinished: Readonly<Record<string, Length>>;
  readonly finished: Readonly<Record<string, Length>>;
  readonly spareBySide: readonly { readonly index: number; readonly spare: Length }[];
  readonly straightEdge?: StraightEdge;
  readonly squareUp?: SquareUp;
  readonly press: Press;
}

/** A point where seams of two units being joined meet. */
export interface Crossing {
  readonly at: Point;
  /** The seam that joins the two units. */
  readonly joinedBy: string;
  /** A seam of the first unit, one of the second. */
  readonly seams: readonly [string, string];
  /** It nests when exactly one of the two is pressed toward its first part (else when both or none). */
  readonly differ: boolean;
  /** How often it comes in what was looked at. */
  readonly count: number;
}
