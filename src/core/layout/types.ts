import type { Finding } from "../findings/index.ts";
import type { Length } from "../measure/index.ts";

export type { Demand, DemandShape, Turns } from "../recipe/demand-types.ts";

/** One fabric to plan on. Lengths in the document's unit; width is usable width. */
export interface Stock {
  readonly fabricId: string;
  readonly width: Length;
  /** 0 single, 1 folded once (strips are cut double, so every strip has a fold in its middle). */
  readonly folds: 0 | 1;
}

/** Pieces of fabric of one size: a quarter, a leftover, a bolt end. Strips are cut across its width. */
export interface Sheet {
  readonly id: string;
  readonly fabricId: string;
  readonly width: Length;
  readonly length: Length;
  /** How many there are; Infinity when they can be had as often as needed. */
  readonly count: number;
  /** What using one counts (its area when not said). Must be more than nothing. */
  readonly cost?: number;
  /** May strips also be cut along its length? */
  readonly eitherWay?: boolean;
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
  /** Cut from what the long cuts of this strip leave: listed with that leftover. */
  readonly leftover?: true;
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

/** How sheets of one kind are cut. */
export interface SheetLayout {
  readonly sheetId: string;
  /** Strips run along the sheet's length, not across its width. */
  readonly turned: boolean;
  /** Sheets cut alike. */
  readonly times: number;
  /** Length of its strips. */
  readonly width: Length;
  /** Room for strips one after another. */
  readonly length: Length;
  readonly strips: readonly Strip[];
  readonly leftovers: readonly Leftover[];
}

export interface SheetPlan {
  readonly fabricId: string;
  readonly sheets: readonly SheetLayout[];
  /** Sum of what each sheet used counts. */
  readonly cost: number;
  /** No plan that cuts as much costs less. */
  readonly lowerBound: number;
  readonly proven: boolean;
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
  /** Room to reach the start of the first repeat, for registered fabric. */
  readonly toRepeat?: Length;
  readonly total: Length;
  /** What to ask for: eighths of a yard, or steps of 5 cm. */
  readonly buy: Length;
  readonly buyText: string;
}
