import type {
  AlikePlace,
  Eye,
  Figure,
  FigureContrast,
  RoundWord,
  Way,
} from "../../fabric/index.ts";
import type { Degree, Length } from "../../measure/index.ts";

/** What will be seen in one kind of block. */
export interface BlockSight {
  readonly block: string;
  readonly count: number;
  /** One for each fabric with bands or a picture that its wedges are cut from. */
  readonly rounds: readonly WedgeRound[];
  /** Each two fabrics that lie side by side, once, where they part least. */
  readonly gaps: readonly FabricGap[];
  /** Figures the block has, the strongest first; which of them is seen first, and which compete. */
  readonly figures: readonly FigureContrast[];
  readonly reads?: Figure;
  readonly beside: readonly Figure[];
}

/** How the wedges of one fabric are taken, and what their rounds come to over the whole quilt. */
export interface WedgeRound {
  readonly fabricId: string;
  /** `by-place`: said wedge by wedge in the brief. */
  readonly round: RoundWord | "by-place";
  readonly way: Way;
  readonly start: Length;
  readonly tilt?: Degree;
  /** The one place of a print that all are cut from. */
  readonly at?: AlikePlace;
  /** Cut from repeats laid on one another: what the stacks take of the fabric. */
  readonly stacks?: StacksSeen;
  /** Wedges of this fabric in one block, and how many of them lie each way in the first block. */
  readonly wedges: number;
  readonly up: number;
  readonly down: number;
  /** Blocks whose wedges lie all up, all down, or both. */
  readonly blocksUp: number;
  readonly blocksDown: number;
  readonly blocksMixed: number;
  /** Wedges of the other way that fall out of the gaps, where all must lie one way. */
  readonly spare: number;
  /** What shows along a wedge's axis from the center out, each way that occurs. */
  readonly rings: readonly RingsSeen[];
  readonly narrowest?: Length;
  /** How the rings of wedges sewn side by side meet, each kind of seam once; the first block's. */
  readonly seams: readonly SeamsMeet[];
}

/** Seams of one kind: which wedges lie on either side, and by how much each ring misses there. */
export interface SeamsMeet {
  readonly count: number;
  readonly ways: readonly [Way, Way];
  /** From the center out, along the seam; nothing where the neighbor has no such ring. */
  readonly misses: readonly { readonly radius: Length; readonly miss?: Length }[];
  /** The largest; nothing where a ring has no partner. */
  readonly most?: Length;
}

export interface StacksSeen {
  /** Layers of one stack: as many wedges alike come of each cut. */
  readonly layers: number;
  /** Length of one layer, whole repeats. */
  readonly layer: Length;
  readonly stacks: number;
  readonly length: Length;
}

export interface RingsSeen {
  readonly way: Way;
  readonly start: Length;
  readonly rings: readonly {
    readonly inner: Length;
    readonly outer: Length;
    readonly color: string;
    readonly fabricId: string;
  }[];
}

/** Two fabrics side by side: difference of L*, CIEDE2000, and whether the eye parts them. */
export interface FabricGap {
  readonly a: string;
  readonly b: string;
  readonly lightness: number;
  readonly difference: number;
  readonly eye: Eye;
}
