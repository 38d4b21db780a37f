import type { Patch } from "immer";
import type { Run, Shelf } from "../../core/shop/index.ts";

/** What the shop keeps beside its designs: the shelf of bolts, and the runs that were begun. */
export interface ShopBook {
  readonly shelf: Shelf;
  readonly runs: readonly Run[];
}

/** One change, both ways. */
interface ShopStep {
  readonly words: string;
  readonly patches: readonly Patch[];
  readonly inverse: readonly Patch[];
}

/** The book as it lies in the storage, with the way back. */
export interface ShopRow {
  readonly id: "book";
  /** Of the row's own shape; a row of a later one is left alone. */
  readonly version: number;
  readonly mark: string;
  readonly book: ShopBook;
  readonly at: number;
  readonly steps: readonly ShopStep[];
}
