import { add, halfPlanes, type Polygon, scale } from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import type { Trim } from "./types.ts";

/**
 * Points trimmed to help aligning: at every corner sharper than a right angle, the cut through the
 * two places that lie square out from the finished corner, one allowance away. After it each raw edge
 * ends level with its seam, so two pieces trimmed like this match end to end; and no allowance that a
 * needle can meet is lost. Derivation: docs/geometry/allowance.md.
 */
export function trimsOf(finished: Polygon, allowances: readonly Length[]): Trim[] {
  const out = halfPlanes(finished).map((h) => h.n);
  return finished.flatMap((v, corner) => {
    const before = (corner + finished.length - 1) % finished.length;
    // Outward normals more than a right angle apart: the corner between them is a sharp one.
    const cosine = out[before].x * out[corner].x + out[before].y * out[corner].y;
    if (cosine > -1e-9) return [];
    return [
      {
        corner,
        from: add(v, scale(out[before], allowances[before])),
        to: add(v, scale(out[corner], allowances[corner])),
      },
    ];
  });
}
