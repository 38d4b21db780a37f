import type { Length } from "../measure/index.ts";
import type { Demand } from "./types.ts";

/** Wedges that fall off while other pieces are cut: true wedges, sharp, of one angle. */
export interface WasteWedge {
  readonly id: string;
  readonly fabricId: string;
  /** From the point to the wide edge, and the wide edge. */
  readonly height: Length;
  readonly base: Length;
  readonly count: number;
}

export interface WasteOffer {
  readonly wasteId: string;
  readonly demandId: string;
  readonly count: number;
  /** What is trimmed off the wide edge. */
  readonly trim: Length;
}

const SAME_SLOPE = 1e-6;

/** Half the wide edge over the height of the whole point: the tangent of half the angle. */
const slope = ({ shape }: Demand): number => (shape.first - shape.pitch) / shape.height;

/**
 * Offers waste wedges to nested demands of the same fabric and angle that they are tall enough for,
 * the least waste to each need, largest needs first. Returns the offers and what is still to cut.
 */
export function offerWedges(
  waste: readonly WasteWedge[],
  demands: readonly Demand[],
): { offers: WasteOffer[]; remaining: Demand[]; unused: WasteWedge[] } {
  const left = new Map(waste.map((w) => [w.id, w.count]));
  const offers: WasteOffer[] = [];
  const sharp = (d: Demand): Length => d.shape.first / 2 / slope(d);
  const wanted = new Map(demands.map((d) => [d.id, Math.max(0, d.count)]));
  const wedges = demands.filter((d) => d.shape.kind === "nested" && slope(d) > 0 && !d.register);
  for (const demand of [...wedges].sort((a, b) => sharp(b) - sharp(a))) {
    const suited = waste
      .filter(
        (w) =>
          w.fabricId === demand.fabricId &&
          Math.abs(w.base / 2 / w.height - slope(demand)) < SAME_SLOPE &&
          w.height >= sharp(demand) * (1 - 1e-9),
      )
      .sort((a, b) => a.height - b.height);
    for (const w of suited) {
      const count = Math.min(left.get(w.id)!, wanted.get(demand.id)!);
      if (count === 0) continue;
      left.set(w.id, left.get(w.id)! - count);
      wanted.set(demand.id, wanted.get(demand.id)! - count);
      const trim = Math.max(0, w.height - sharp(demand));
      offers.push({ wasteId: w.id, demandId: demand.id, count, trim });
    }
  }
  return {
    offers,
    remaining: demands.map((d) => ({ ...d, count: wanted.get(d.id)! })),
    unused: waste.flatMap((w) => (left.get(w.id)! > 0 ? [{ ...w, count: left.get(w.id)! }] : [])),
  };
}
