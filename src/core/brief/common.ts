import type { Fabric } from "./schema.ts";

/** What every fabric says, whatever its kind. */
export function commonOf(f: Fabric): Omit<Extract<Fabric, { kind: "plain" }>, "kind"> {
  const { id, name, usable, folds, directional, reversible, color } = f;
  const { narrower, shrinkage, inHand } = f;
  return {
    id,
    name,
    usable,
    folds,
    directional,
    reversible,
    color,
    ...(narrower !== undefined && { narrower }),
    ...(shrinkage && { shrinkage }),
    ...(inHand && { inHand }),
  };
}
