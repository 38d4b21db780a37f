import type { Brief } from "../brief/index.ts";
import { type Sight, seenAs } from "../fabric/index.ts";

/** The ways a design may be looked at, as words. */
export const SIGHTS: Readonly<Record<Sight, string>> = {
  full: "as it is",
  gray: "in a gray print",
  protan: "without red",
  deutan: "without green",
  tritan: "without blue",
};

/**
 * The brief with every color as it is seen; pictures of prints stay as they are, only the color that
 * stands for them changes.
 */
export function seenBrief(b: Brief, sight: Sight): Brief {
  if (sight === "full") return b;
  return {
    ...b,
    fabrics: b.fabrics.map((f) => {
      const color = seenAs(f.color, sight);
      return f.kind === "stripe"
        ? { ...f, color, bands: f.bands.map((x) => ({ ...x, color: seenAs(x.color, sight) })) }
        : { ...f, color };
    }),
  };
}
