import type { Degree, Length } from "../measure/index.ts";
import type { Cause } from "./causes.ts";
import { takenUpBy } from "./laws.ts";
import type { Readings, SewnCircle } from "./readings.ts";

/** What to do about a cause, on this block and for the next. Amounts are positive; words say which way. */
export interface Remedy {
  readonly next:
    | { readonly do: "sew-narrower" | "sew-wider"; readonly by: Length }
    | { readonly do: "cut-narrower-strips" | "cut-wider-strips"; readonly by: Length }
    | { readonly do: "check-ruler-angle"; readonly by: Degree }
    | { readonly do: "keep-outer-edge-level"; readonly by: Length }
    | { readonly do: "pin-the-center" }
    | { readonly do: "replace-wedge" }
    | { readonly do: "use-other-point" };
  /** Seams to sew again at the outer edge, tapering to nothing at the center. */
  readonly block?: {
    readonly do: "take-in" | "let-out";
    readonly seams: number;
    readonly by: Length;
  };
  /** If the block is kept as it is: what it will finish, across flats. */
  readonly finishes?: Length;
}

/** Remedies follow from the cause's size (positive: too wide, too tall, wider at the outer edge). */
export function remedyFor(cause: Cause, size: number, c: SewnCircle, r: Readings): Remedy {
  const ways = [r.acrossOne, r.acrossTwo].filter((x): x is number => x !== undefined);
  const finishes = ways.length > 0 ? { finishes: Math.min(...ways) - 2 * c.seam } : {};
  const by = Math.abs(size);
  switch (cause) {
    case "seam":
      return { next: { do: size > 0 ? "sew-narrower" : "sew-wider", by }, ...finishes };
    case "strip":
      return {
        next: { do: size > 0 ? "cut-narrower-strips" : "cut-wider-strips", by },
        ...finishes,
      };
    case "angle":
      return { next: { do: "check-ruler-angle", by }, ...level(c, r), ...finishes };
    case "drift":
      return { next: { do: "keep-outer-edge-level", by }, ...level(c, r), ...finishes };
    case "slip":
      return { next: { do: "pin-the-center" } };
    case "odd-piece":
      return { next: { do: "replace-wedge" }, ...level(c, r) };
    case "point":
      return { next: { do: "use-other-point" }, ...finishes };
  }
}

/** All n seams sewn again take the ripple up, or let the gap out, a little each. */
function level(c: SewnCircle, r: Readings): Pick<Remedy, "block"> {
  const excess = r.outerEdge ?? (r.halfGap === undefined ? undefined : 4 * r.halfGap);
  if (!excess) return {};
  const by = Math.abs(excess) / takenUpBy(c.n, 1);
  return { block: { do: excess > 0 ? "take-in" : "let-out", seams: c.n, by } };
}
