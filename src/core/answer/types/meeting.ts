import type { Value } from "../../fabric/index.ts";
import type { NamedShape } from "../../quilt/index.ts";

/** A figure that no block has by itself: it appears where blocks meet. */
export interface MeetingShape extends NamedShape {
  readonly fabricIds: readonly string[];
  readonly value: Value;
  /** Blocks it reaches into. */
  readonly blocks: number;
  /** Where it lies, patch by patch, each time it is found in the upper left of the quilt. */
  readonly at: readonly (readonly PatchPlace[])[];
}

/** A patch of a block where it lies: `r1c2`, `star/s1/wedge`. */
export interface PatchPlace {
  readonly placed: string;
  readonly patch: string;
}
