import type { Role } from "../block/types.ts";
import type { Polygon, Rigid } from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";

/** A block where it lies in the quilt: quilt frame, origin at the quilt's center, y up. */
export interface PlacedBlock {
  /** `r2c3`: row 2 from the top, column 3 from the left, both from 1. */
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
}

export interface QuiltGeometry {
  readonly rows: number;
  readonly columns: number;
  /** Finished top, without binding. */
  readonly width: Length;
  readonly height: Length;
  /** Blocks and sashing only, without borders. */
  readonly centerWidth: Length;
  readonly centerHeight: Length;
  /** How many of each kind of block: never by walking all of them (cost follows kinds). */
  readonly counts: Readonly<Record<string, number>>;
  /** Patches outside blocks, each listed once with its count in the quilt. */
  readonly extras: readonly (QuiltPatch & { readonly count: number })[];
}
