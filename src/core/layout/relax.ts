import type { Length } from "../measure/index.ts";
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

interface Column {
  readonly cost: Length;
  readonly makes: readonly number[];
  readonly pattern?: Pattern;
}

interface Entering {
  readonly column: Column;
  readonly reduced: number;
  /** Most any pattern is worth for its cost; not known when a surplus enters. */
  readonly ratio?: number;
}

const TINY = 1e-9;
const ROUNDS = 3000;

/**
 * Column generation: the covering program over all strip patterns, grown by the pattern of most
 * negative reduced cost (Gilmore and Gomory, 1961, for the one-dimensional case), solved by the
 * revised simplex method from the handbook's patterns. Rows are few, so the inverse is kept dense.
 * The bound is made safe by scaling the prices until no pattern is worth more than it costs
 * (Farley, 1990), so an early stop or a rounding error only weakens it.
 */
export function relax(p: StripProblem, cuts: readonly number[]): Relaxed {
  const items = cuts.flatMap((n, i) => (n > 0 ? [i] : []));
  const m = items.length;
  if (m === 0) return { value: 0, bound: 0, prices: cuts.map(() => 0), batches: [] };
  const basis: Column[] = items.map((i) => handbookColumn(p, cuts, i));
  const inverse = items.map((i, r) => items.map((_, c) => (r === c ? 1 / basis[r].makes[i] : 0)));
  const amounts = items.map((i, r) => cuts[i] / basis[r].makes[i]);
  let prices = cuts.map(() => 0);
  let value = 0;

  for (let round = 0; round < ROUNDS; round++) {
    prices = cuts.map(() => 0);
    items.forEach((i, c) => {
      for (let r = 0; r < m; r++) prices[i] += basis[r].cost * inverse[r][c];
    });
    const entering: Entering = surplus(items, prices, cuts) ?? bestColumn(p, prices, cuts);
    if (entering.ratio !== undefined) {
      value = Math.max(value, dot(prices, cuts) / Math.max(1, entering.ratio));
      if (entering.reduced > -TINY * Math.max(1, entering.column.cost)) break;
    }
    if (!pivot(basis, inverse, amounts, entering.column, items)) break;
  }
  return {
    value,
    bound: raiseToUnit(p, value),
    prices,
    batches: basis.flatMap((column, r) =>
      column.pattern && amounts[r] > TINY ? [{ pattern: column.pattern, times: amounts[r] }] : [],
    ),
  };
}

/** The handbook's strip of one item: its cheapest lay, as many as fit. */
function handbookColumn(p: StripProblem, cuts: readonly number[], item: number): Column {
  const strips = p.options.flatMap(({ item: i, lay }, option) => {
    if (i !== item) return [];
    const columns = Math.min(copiesIn(lay, p.room), cuts[item]);
    return [patternOf(p, [{ option, columns, rows: 1 }])];
  });
  const each = (s: Pattern) => s.height / s.makes[item];
  const pattern = strips.reduce((a, b) => (each(b) < each(a) ? b : a));
  return { cost: pattern.height, makes: pattern.makes, pattern };
}

/** Too many of an item when more of it is worth less than nothing. */
function surplus(
  items: readonly number[],
  prices: readonly number[],
  cuts: readonly number[],
): Entering | undefined {
  const worst = items.reduce((a, b) => (prices[b] < prices[a] ? b : a), items[0]);
  if (worst === undefined || prices[worst] > -TINY) return undefined;
  const makes = cuts.map((_, i) => (i === worst ? -1 : 0));
  return { column: { cost: 0, makes }, reduced: prices[worst] };
}

function bestColumn(p: StripProblem, prices: readonly number[], cuts: readonly number[]): Entering {
  const priced = priceStrips(p, prices, cuts, "down");
  let best = priced[0];
  let ratio = 0;
  for (const strip of priced) {
    if (strip.height - strip.value < best.height - best.value) best = strip;
    ratio = Math.max(ratio, strip.value / strip.height);
  }
  const pattern = best.pattern();
  const column: Column = { cost: pattern.height, makes: pattern.makes, pattern };
  return { column, ratio, reduced: best.height - best.value };
}

/** Brings a column into the basis; false when it cannot leave room (no progress possible). */
function pivot(
  basis: Column[],
  inverse: number[][],
  amounts: number[],
  column: Column,
  items: readonly number[],
): boolean {
  const direction = inverse.map((row) =>
    items.reduce((t, i, c) => t + row[c] * column.makes[i], 0),
  );
  let leaving = -1;
  let step = Number.POSITIVE_INFINITY;
  direction.forEach((d, r) => {
    if (d <= TINY) return;
    const ratio = amounts[r] / d;
    if (ratio < step - TINY || (ratio < step + TINY && d > direction[leaving])) {
      step = Math.min(step, ratio);
      leaving = r;
    }
  });
  if (leaving < 0) return false;
  const by = direction[leaving];
  inverse[leaving] = inverse[leaving].map((x) => x / by);
  direction.forEach((d, r) => {
    if (r === leaving) return;
    inverse[r] = inverse[r].map((x, c) => x - d * inverse[leaving][c]);
    amounts[r] = Math.max(0, amounts[r] - d * step);
  });
  amounts[leaving] = step;
  basis[leaving] = column;
  return true;
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((t, x, i) => t + x * b[i], 0);
