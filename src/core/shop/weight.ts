import { lengthToMillimetre } from "../measure/index.ts";
import type { KitRules } from "./rules.ts";
import { lengthOfTicks } from "./ticks.ts";
import type { KitPlan } from "./types.ts";

/** What a bag's fabric should weigh: an estimate from area, because cloth of one kind varies. */
export interface BagWeight {
  /** Grams. */
  readonly total: number;
  readonly pieces: readonly {
    readonly fabricId: string;
    readonly name: string;
    readonly grams: number;
  }[];
  /** A bag this much lighter than the first may lack its lightest piece. */
  readonly alarm: number;
  /** The scale can tell that the lightest piece is missing. */
  readonly tells: boolean;
}

/** Area of the usable width times the stated weight; selvages are not counted. */
export function bagWeight(plan: KitPlan, rules: KitRules): BagWeight {
  const metres = (ticks: number): number =>
    lengthToMillimetre(lengthOfTicks(ticks, plan.unit), plan.unit) / 1000;
  const pieces = plan.fabrics.flatMap((f) => {
    const cut = f.bolts[0]?.cut ?? f.cut;
    if (!cut) return [];
    const grams = metres(cut.length) * metres(cut.width) * rules.weight;
    return [{ fabricId: f.fabricId, name: f.name, grams }];
  });
  const total = pieces.reduce((t, p) => t + p.grams, 0);
  const least = Math.min(...pieces.map((p) => p.grams));
  const alarm = pieces.length === 0 ? 0 : least / 2;
  return { total, pieces, alarm, tells: alarm > rules.scale };
}

export type BagVerdict =
  | { readonly kind: "alike" }
  | { readonly kind: "light" | "heavy"; readonly by: number; readonly piece?: string };

/**
 * Weighs a bag against the first one, which was laid out and counted: alike within half of its
 * lightest piece, else light or heavy by about one piece (named when its weight fits) or by neither.
 */
export function weighBag(weight: BagWeight, first: number, bag: number): BagVerdict {
  const by = bag - first;
  if (Math.abs(by) <= weight.alarm) return { kind: "alike" };
  // Pieces as heavy as the first bag says they are, not as the estimate does.
  const share = weight.total > 0 ? first / weight.total : 1;
  const near = [...weight.pieces].sort(
    (a, b) => Math.abs(a.grams * share - Math.abs(by)) - Math.abs(b.grams * share - Math.abs(by)),
  )[0];
  const fits = near && Math.abs(near.grams * share - Math.abs(by)) <= weight.alarm;
  const kind = by < 0 ? "light" : "heavy";
  return { kind, by: Math.abs(by), ...(fits && { piece: near.name }) };
}
