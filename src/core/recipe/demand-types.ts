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
    /**
     * In layers: only one place of the repeat will do, and it comes again so far on across the
     * fabric. Nothing: anywhere in the layers will do, each cut being alike in itself.
     */
    readonly everyAcross?: Length;
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
