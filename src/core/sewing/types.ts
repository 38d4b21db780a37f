import type { Seam } from "../block/types.ts";
import type { Polygon } from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";

/** One sewn unit and the stop after it. */
export interface Unit {
  readonly id: string;
  readonly letter: string;
  /** Units or patches it joins. */
  readonly of: readonly [string, string];
  readonly seam: Seam;
  readonly outline: Polygon;
  readonly copies: number;
  /** Named widths the maker can measure, unfinished and finished. */
  readonly unfinished: Readonly<Record<string, Length>>;
  readonly finished: Readonly<Record<string, Length>>;
  readonly spareBySide: readonly { readonly index: number; readonly spare: Length }[];
  /** Toward which part the allowance lies, or open. */
  readonly press: "first" | "second" | "open";
}
