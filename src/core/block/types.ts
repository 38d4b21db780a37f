import type { Point, Polygon } from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";

/** What a patch is in the block; fabric is chosen by role (design words: docs/words.md). */
export type Role =
  | "wedge-even"
  | "wedge-odd"
  | "kite"
  | "corner"
  | "trapezoid"
  | "background-left"
  | "background-right"
  | "background"
  | "bar"
  | "patch"
  | "sash"
  | "cornerstone"
  | "border"
  | "setting-triangle"
  | "corner-triangle";

/** Left and right as seen on the right side of the fabric, outside edge at the bottom. */
export type Hand = "none" | "left" | "right";

/** A sewn patch: a convex finished shape in the block's own frame (center at the origin, y up). */
export interface Patch {
  /** `block/s3/wedge`, `block/s3/outer-1`, `block/s0/whole`, or `block/` + path from the root. */
  readonly id: string;
  readonly role: Role;
  readonly hand: Hand;
  /** Anticlockwise, first vertex nearest the block's center. */
  readonly polygon: Polygon;
  readonly sector?: number;
  /** True for each edge (that starts at the same vertex) lying on the block's outline. */
  readonly outside: readonly boolean[];
}

/** A full straight line of stitches that joins two units into one. */
export interface Seam {
  readonly from: Point;
  readonly to: Point;
  readonly length: Length;
}

/**
 * The seam tree: an inner node is a convex unit cut in two by one full line; an end is a patch.
 * The sewing order is the tree read from its ends.
 */
export type SeamTree =
  | { readonly kind: "patch"; readonly patch: Patch }
  | {
      readonly kind: "seam";
      /** `block/` + path from the root: "0" the first part, "1" the second, e.g. `star/u01`. */
      readonly id: string;
      readonly outline: Polygon;
      readonly seam: Seam;
      readonly parts: readonly [SeamTree, SeamTree];
    };

/** Named reason why this tree was taken from those possible. */
export interface TreeChoice {
  readonly name: string;
  readonly others: readonly string[];
  readonly why: string;
}

export interface RadialFacts {
  readonly n: number;
  readonly turned: "flat" | "corner";
  /** Half the finished width across flats. */
  readonly a: Length;
  readonly polygonSide: Length;
  readonly circumradius: Length;
  /** Half the finished block across. */
  readonly half: Length;
  readonly whole: readonly number[];
}

/** Exact finished geometry of one kind of block. */
export interface BlockGeometry {
  readonly id: string;
  readonly outline: Polygon;
  readonly width: Length;
  readonly height: Length;
  readonly patches: readonly Patch[];
  readonly tree: SeamTree;
  readonly choice: TreeChoice;
  readonly radial?: RadialFacts;
}
