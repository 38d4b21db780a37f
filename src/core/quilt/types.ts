import type { Role } from "../block/types.ts";
import type { HalfPlane, Polygon, Rigid } from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";

export type Arrangement = "rows" | "on-point" | "hexagon-rows";

/** A block where it lies in the quilt: quilt frame, origin at the quilt's center, y up. */
export interface PlacedBlock {
  /** `r2c3`: row 2 from the top, column 3 from the left, both from 1. Halves add `~` and a side. */
  readonly id: string;
  readonly blockId: string;
  readonly at: Rigid;
}

/** A patch that belongs to the quilt and to no block: sashing, border, setting triangle ... */
export interface QuiltPatch {
  readonly id: string;
  readonly role: Role;
  readonly fabricId: string;
  readonly polygon: Polygon;
  /** Edges on the outside of the quilt; left out where the role says it. */
  readonly outside?: readonly boolean[];
}

/** One kind of such a patch, and how often the quilt has it. */
export type CountedPatch = QuiltPatch & { readonly count: number };

/** Part of a kind of block, kept inside lines through its middle (its own frame): edges of a quilt. */
export interface HalfKind {
  /** The kind's id, `~` and the part kept: `star~upper`. */
  readonly id: string;
  readonly of: string;
  readonly keep: readonly HalfPlane[];
}

/** One border from the inside out. `across` and `upright` are the cut lengths' finished lengths. */
export interface BorderFacts {
  readonly index: number;
  readonly width: Length;
  readonly join: "butted" | "mitred";
  /** Finished lengths of the two upright and the two level pieces. */
  readonly upright: Length;
  readonly level: Length;
  /** The top with this border on. */
  readonly outerWidth: Length;
  readonly outerHeight: Length;
}

export interface QuiltGeometry {
  readonly arrangement: Arrangement;
  readonly rows: number;
  readonly columns: number;
  /** From one block to the next, along a row and from row to row. */
  readonly pitch: { readonly x: Length; readonly y: Length };
  /** Finished top, without binding. */
  readonly width: Length;
  readonly height: Length;
  /** Blocks, setting and sashing only, without borders. */
  readonly centerWidth: Length;
  readonly centerHeight: Length;
  /** How many of each kind of block: never by walking all of them (cost follows kinds). */
  readonly counts: Readonly<Record<string, number>>;
  readonly halves: readonly HalfKind[];
  /** Patches outside blocks, each kind once with its count in the quilt. */
  readonly extras: readonly CountedPatch[];
  readonly borders: readonly BorderFacts[];
  /** Rows (or diagonal rows) the blocks are joined into, and the seams that join them. */
  readonly assembly: {
    readonly rows: number;
    readonly rowSeams: number;
    readonly joinSeams: number;
  };
}
