import type { Polygon } from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";

export type RecipeKind =
  | "rectangle"
  | "square-once"
  | "square-twice"
  | "half-rectangle"
  | "wedge"
  | "trapezoid"
  | "diamond"
  | "parallel"
  | "kite"
  | "half-square-sliced"
  | "corner-off"
  | "two-marks"
  | "template";

export interface Cut {
  /** "strip", "square", "rectangle", "once", "twice", "slice", "corner-off", "template" ... */
  readonly op: string;
  readonly lengths: readonly Length[];
  /** Indices of raw edges of the result lined up at exactly the allowance. */
  readonly setEdges: readonly number[];
}

export type Verdict = "proved" | "thin" | "blocked";

export interface SpareAt {
  /** Edge or vertex index of the finished patch. */
  readonly index: number;
  readonly spare: Length;
}

/** How to cut one piece, with its proof of cover (docs/geometry/proof-of-cover.md). */
export interface Recipe {
  readonly pieceId: string;
  readonly kind: RecipeKind;
  readonly cuts: readonly Cut[];
  /** Pieces from one go of the cuts (one strip's worth is the layout's business). */
  readonly yields: number;
  readonly yieldsLeft: number;
  readonly yieldsRight: number;
  /** What the recipe really yields, placed over the finished patch as the proof places it. */
  readonly polygon: Polygon;
  /** The finished patch in the same frame. */
  readonly patch: Polygon;
  readonly setEdges: readonly number[];
  /** Least allowance as the needle meets it, over the free edges. */
  readonly w: Length;
  /** Plain distance from patch to raw edge (negative: the patch runs off the fabric). */
  readonly reach: Length;
  readonly spareBySide: readonly SpareAt[];
  readonly spareByCorner: readonly SpareAt[];
  /** How far the piece may be sewn off its best place before the spare is gone. */
  readonly offCenter: Length;
  /** Smallest size on the maker's step that would be proved, for the enlargeable length. */
  readonly smallest?: Length;
  readonly size?: Length;
  readonly exactSize?: Length;
  readonly verdict: Verdict;
  /** Where the allowance is thin: seam index and over how many units of seam. */
  readonly thin?: readonly { readonly edge: number; readonly over: Length }[];
}
