import type { Polygon } from "../geometry/index.ts";
import type { Degree, Length } from "../measure/index.ts";

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

/** A mark on a side of the blank, measured along it from the corner all its marks start at. */
export interface Mark {
  readonly side: "bottom" | "right" | "top" | "left";
  readonly at: Length;
}

/** strip [height]; crosscut [length]; wedge, slant [along the base, along the top]; once, twice
 *  [diagonal]; slice [marks, or height from the point]; square, rectangle, template [width, height]. */
export type CutOp =
  | "strip"
  | "crosscut"
  | "square"
  | "rectangle"
  | "once"
  | "twice"
  | "wedge"
  | "slant"
  | "slice"
  | "template";

export interface Cut {
  readonly op: CutOp;
  readonly lengths: readonly Length[];
  /** Edges of the piece this cut makes, lined up at exactly the allowance. */
  readonly setEdges: readonly number[];
  readonly marks?: readonly Mark[];
}

/** A strip on the maker's ruler beside one that is not, with the octagon it would make. */
export interface Neighbor {
  readonly strip: Length;
  readonly across: Length;
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
  /** w less the allowance wanted where it is least: 0 when all edges are set. */
  readonly spare: Length;
  /** Angle of each edge of the patch to the nearest thread, as this recipe lays it. */
  readonly grain: readonly Degree[];
  /** A cut that sets the patch and does not lie on the maker's ruler: the strips either side. */
  readonly neighbors?: readonly Neighbor[];
  /** Where the allowance is thin: seam index and over how many units of seam. */
  readonly thin?: readonly { readonly edge: number; readonly over: Length }[];
}
