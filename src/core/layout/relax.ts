import type { Length } from "../measure/index.ts";
import type { CoverColumn, Offer } from "./covering.ts";
import { leastCover } from "./covering.ts";
import { priceStrips } from "./knapsack.ts";
import { copiesIn } from "./lay.ts";
import type { Pattern, StripProblem } from "./problem.ts";
import { patternOf, raiseToUnit } from "./problem.ts";

/** The least length when a pattern may be cut a fraction of a time. */
export interface Relaxed {
  /** No plan is shorter, raised to what strips of these heights can sum to. */
  readonly bound: Length;
  /** The same, not raised. */
  readonly value: Length;
  /** What one more cut of each item would cost. */
  readonly prices: readonly number[];
  readonly batches: readonly { readonly pattern: Pattern; readonly times: number }[];
}

/**
 * Column generation over all strip patterns (Gilmore and Gomory, 1961, priced by a knapsack for
 * each height), from the handbook's strips.
 */
export function relax(p: StripProblem, cuts: readonly number[]): Relaxed {
  const cover = leastCover<Pattern>({
    needs: cuts,
    start: cuts.map((n, item) => (n > 0 ? handbookColumn(p, cuts, item) : NOTHING)),
    price: (prices) => bestStrip(p, prices, cuts),
  });
  return {
    value: cover.bound,
    bound: raiseToUnit(p, cover.bound),
    prices: cover.prices,
    batches: cover.taken.map(({ column, times }) => ({ pattern: column.what!, times })),
  };
}

const NOTHING: CoverColumn<Pattern> = { cost: 0, makes: [] };

const columnOf = (pattern: Pattern): CoverColumn<Pattern> => ({
  cost: pattern.height,
  makes: pattern.makes,
  what: pattern,
});

/** The handbook's strip of one item: its cheapest lay, as many as fit. */
function handbookColumn(
  p: StripProblem,
  cuts: readonly number[],
  item: number,
): CoverColumn<Pattern> {
  const strips = p.options.flatMap(({ item: i, lay }, option) => {
    if (i !== item) return [];
    const columns = Math.min(copiesIn(lay, p.room), cuts[item]);
    return [patternOf(p, [{ option, columns, rows: 1 }])];
  });
  const each = (s: Pattern) => s.height / s.makes[item];
  return columnOf(strips.reduce((a, b) => (each(b) < each(a) ? b : a)));
}

function bestStrip(
  p: StripProblem,
  prices: readonly number[],
  cuts: readonly number[],
): Offer<Pattern> | undefined {
  const priced = priceStrips(p, prices, cuts, "down");
  if (priced.length === 0) return undefined;
  const best = priced.reduce((a, b) => (b.height - b.value < a.height - a.value ? b : a));
  return {
    column: columnOf(best.pattern()),
    reduced: best.height - best.value,
    ratio: Math.max(...priced.map((s) => s.value / s.height)),
  };
}
