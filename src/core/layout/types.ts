import type { Finding } from "../findings/index.ts";
import type { Length } from "../measure/index.ts";

export type Turns = "none" | "half" | "quarter";

/**
 * What must be cut. rect: first (= pitch) x height. nested: `first` for one, `pitch` for each
 * further one. along: cut with `first` parallel to the selvage and `height` across the fabric.
 * The pitch already allows for how the piece may be turned: where head to tail needs half turns
 * that the fabric forbids, the recipe says pitch = first.
 */
export interface DemandShape {
  readonly kind: "rect" | "nested" | "along";
  /** Length along the strip taken by the first copy. */
  readonly first: Length;
  /** Length along the strip taken by each further copy nested after it (= first when not nested). */
  readonly pitch: Length;
  /** Height of the strip. */
  readonly height: Length;
}

/** The only thing the planner reads, beside the stocks. */
export interface Demand {
  readonly id: string;
  readonly fabricId: string;
  readonly shape: DemandShape;
  readonly count: number;
  readonly turns: Turns;
  readonly hand: "none" | "left" | "right";
  /** Must all copies keep one way up (directional fabric)? */
  readonly up: boolean;
  readonly register?: {
    readonly axis: "along" | "across";
    readonly period: Length;
    readonly phase: Length;
  };
  /** Cut this many identical layers at once; with `register`, from as many repeats. */
  readonly layers: number;
  readonly joinsAllowed: boolean;
  /** Length lost at each join of a joined strip (0 when not said). */
  readonly joinLoss?: Length;
  /** Pieces one copy of the shape gives (a square cut once gives 2). */
  readonly piecesEach: number;
  readonly pieceIds: readonly string[];
}

/** One fabric to plan on. Lengths in the document's unit; width is usable width. */
export interface Stock {
  readonly fabricId: string;
  readonly width: Length;
  /** 0 single, 1 folded once (strips are cut double, so every strip has a fold in its middle). */
  readonly folds: 0 | 1;
}

export interface Placement {
  readonly demandId: string;
  /** Along the strip, from the left edge (from the raw edges of a strip cut double). */
  readonly x: Length;
  /** Across the strip, from its lower edge. */
  readonly y: Length;
  readonly width: Length;
  readonly height: Length;
  /** Copies of the shape in this run, in each layer. 1 for a segment. */
  readonly copies: number;
  /** Laid with its `first` across the strip. */
  readonly turned: boolean;
  /** A length of a strip that is joined to others: its width counts, not its copies. */
  readonly segment?: boolean;
  /** In a strip cut double: the demand of the other hand, which the second layer serves. */
  readonly mirrorId?: string;
}

export interface Strip {
  /** From the straightened end. */
  readonly from: Length;
  readonly height: Length;
  /** Identical strips one after another. */
  readonly times: number;
  /** 2: cut double, runs lie between the raw edges (0) and the fold (half the width). */
  readonly layers: 1 | 2;
  readonly runs: readonly Placement[];
}

export interface Leftover {
  readonly width: Length;
  readonly height: Length;
  readonly count: number;
}

export interface FabricLayout {
  readonly fabricId: string;
  readonly width: Length;
  readonly strips: readonly Strip[];
  /** Length of fabric in the strips, without margins. */
  readonly length: Length;
  /** No plan of this kind can be shorter. */
  readonly lowerBound: Length;
  /** One-size-per-strip (handbook) length. */
  readonly handbook: Length;
  readonly proven: boolean;
  readonly leftovers: readonly Leftover[];
  /** By how little a strip missed one more copy, per demand, when small. */
  readonly nearMisses: readonly { readonly demandId: string; readonly by: Length }[];
  /** Demands that this fabric cannot give (each has its finding). */
  readonly unplaced: readonly { readonly demandId: string; readonly count: number }[];
  readonly findings: readonly Finding[];
}

export interface Yardage {
  readonly fabricId: string;
  readonly width: Length;
  readonly inPieces: Length;
  readonly straighten: Length;
  readonly wrongStrip: Length;
  readonly extra: Length;
  readonly total: Length;
  /** What to ask for: eighths of a yard, or steps of 5 cm. */
  readonly buy: Length;
  readonly buyText: string;
}
