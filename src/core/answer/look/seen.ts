import type { Brief } from "../../brief/index.ts";
import { type Sight, seenAs } from "../../fabric/index.ts";

/** The ways a design may be looked at, as words. */
export const SIGHTS: Readonly<Record<Sight, string>> = {
  full: "as it is",
  gray: "in a gray print",
  protan: "without red",
  deutan: "without green",
  tritan: "without blue",
};

/**
 * The brief with every color as it is seen. `photos`: the pictures of prints as they are seen, by the
 * data address of the original; one that is not there yet stays as it is.
 */
export function seenBrief(
  b: Brief,
  sight: Sight,
  photos: ReadonlyMap<string, string> = new Map(),
): Brief {
  if (sight === "full") return b;
  return {
    ...b,
    fabrics: b.fabrics.map((f) => {
      const color = seenAs(f.color, sight);
      if (f.kind === "stripe")
        return {
          ...f,
          color,
          bands: f.bands.map((x) => ({ ...x, color: seenAs(x.color, sight) })),
        };
      const data = f.kind === "print" && f.photo && photos.get(f.photo.data);
      return f.kind === "print" && f.photo && data
        ? { ...f, color, photo: { ...f.photo, data } }
        : { ...f, color };
    }),
  };
}
