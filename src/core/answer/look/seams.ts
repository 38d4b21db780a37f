import { type Look, type PatchLook, seamMatch, type WedgeCut } from "../../fabric/index.ts";
import type { AnswerBlock } from "../types/answer.ts";
import type { SeamsMeet } from "../types/look.ts";

type Patch = AnswerBlock["patches"][number];

/**
 * Where two wedges of one fabric are sewn side by side: how far the rings of the one miss those of
 * the other, along the seam. Seams whose wedges lie alike are one kind. Bands askew make no rings.
 */
export function seamsOf(
  block: AnswerBlock,
  wedges: readonly Patch[],
  look: Look,
  cut: WedgeCut,
  shown: readonly PatchLook[],
): SeamsMeet[] {
  const n = block.radial?.n;
  if (!n || look.kind !== "bands" || look.tilt !== 0) return [];
  const lay = (p: Patch): PatchLook | undefined => shown.find((s) => s.patchId === p.id);
  const kinds = new Map<string, SeamsMeet>();
  for (const first of wedges) {
    const next = wedges.find((p) => p.sector === ((first.sector ?? Number.NaN) + 1) % n);
    const [a, b] = [lay(first), next && lay(next)];
    if (!a || !b) continue;
    const { edges, most } = seamMatch(look, cut, a, b, Math.PI / n);
    const misses = edges.map(({ radius, alongSeam }) => ({
      radius,
      ...(alongSeam !== undefined && { miss: alongSeam }),
    }));
    const key = JSON.stringify([[a.way, b.way].sort(), misses.map((m) => m.miss?.toFixed(9))]);
    const count = (kinds.get(key)?.count ?? 0) + 1;
    const stretch = 1 / Math.cos(Math.PI / n);
    const known = kinds.get(key) ?? {
      ways: [a.way, b.way],
      misses,
      ...(most !== undefined && { most: most * stretch }),
    };
    kinds.set(key, { ...known, count } as SeamsMeet);
  }
  return [...kinds.values()];
}
