import type { Length } from "../measure/index.ts";
import { priceStrips } from "./knapsack.ts";
import { copiesIn } from "./lay.ts";
import type { Batch, Pattern, StripProblem } from "./problem.ts";
import { lengthOf, patternOf, runCells } from "./problem.ts";
import type { Relaxed } from "./relax.ts";
import { relax } from "./relax.ts";

/**
 * Whole-number plans without a solver: the relaxed plan's whole strips are kept and the rest is
 * relaxed anew, or filled by the strips worth most for their height; the shortest is returned.
 * Never longer than the handbook's.
 */
export function roundPlan(p: StripProblem, relaxed: Relaxed): Batch[] {
  const again = relaxedOnce(p);
  const tries: (() => Batch[])[] = [
    () => handbookPlan(p),
    // With stacks each relaxing is far dearer, so one try must do.
    ...(p.stacks ? [0] : [0, 1, 2]).flatMap((skip) => [
      () => dive(p, relaxed, "largest", skip, again),
      () => dive(p, relaxed, "tallest", skip, again),
    ]),
    () => [
      ...wholes(p, relaxed),
      ...greedy(p, relaxed.prices, remaining(p.cuts, wholes(p, relaxed))),
    ],
    () => greedy(p, relaxed.prices, p.cuts),
  ];
  let best: Batch[] | undefined;
  for (const plan of tries) {
    const made = shed(p, plan());
    if (!best || lengthOf(made) < lengthOf(best) - 1e-9) best = made;
    // No plan is under the bound, so none that follows would be taken.
    if (lengthOf(best) <= relaxed.bound + 1e-9) break;
  }
  return best ?? [];
}

/** Dives often come by the same cuts still to make: each is relaxed once. */
function relaxedOnce(p: StripProblem): (cuts: readonly number[]) => Relaxed {
  const known = new Map<string, Relaxed>();
  return (cuts) => {
    const key = cuts.join();
    const there = known.get(key) ?? relax(p, cuts);
    known.set(key, there);
    return there;
  };
}

/** Cuts still to make after these batches. */
export function remaining(cuts: readonly number[], plan: readonly Batch[]): number[] {
  const left = [...cuts];
  for (const { pattern, times } of plan)
    pattern.makes.forEach((n, i) => {
      left[i] -= n * times;
    });
  return left.map((n) => Math.max(0, n));
}

export function handbookPlan(p: StripProblem): Batch[] {
  return p.cuts.flatMap((cuts, item): Batch[] => {
    if (cuts === 0) return [];
    const { pattern } = best(
      p.options.flatMap((option, i) => {
        if (option.item !== item) return [];
        const columns = Math.min(copiesIn(option.lay, p.room), cuts);
        const one = patternOf(p, [{ option: i, columns, rows: 1 }]);
        return [{ pattern: one, cost: Math.ceil(cuts / columns) * one.height }];
      }),
    );
    return [{ pattern, times: Math.ceil(cuts / pattern.makes[item]) }];
  });
}

const best = <T extends { cost: number }>(all: readonly T[]): T =>
  all.reduce((a, b) => (b.cost < a.cost ? b : a));

/** Does the pattern truly fit? The bound's patterns may be over by the rounding of their runs. */
const trulyFits = (p: StripProblem, pattern: Pattern): boolean =>
  pattern.runs.reduce((x, r) => x + runCells(p, p.options[r.option].lay, r.columns, "up"), 0) <=
  p.cells;

const wholes = (p: StripProblem, relaxed: Relaxed): Batch[] =>
  relaxed.batches.flatMap(({ pattern, times }) => {
    const whole = Math.floor(times + 1e-6);
    return whole > 0 && trulyFits(p, pattern) ? [{ pattern, times: whole }] : [];
  });

/**
 * Keeps whole strips; when there are none, one strip of the pattern with the largest part, or the
 * largest area in part (the first time passing over `skip` of them); relaxes what remains; until
 * nothing does.
 */
function dive(
  p: StripProblem,
  start: Relaxed,
  rule: "largest" | "tallest",
  skip: number,
  again: (cuts: readonly number[]) => Relaxed,
): Batch[] {
  const plan: Batch[] = [];
  let left = [...p.cuts];
  let relaxed = start;
  let skips = skip;
  while (left.some((n) => n > 0)) {
    let taken = wholes(p, relaxed);
    if (taken.length === 0) {
      const usable = relaxed.batches.filter((b) => trulyFits(p, b.pattern));
      if (usable.length === 0) return [...plan, ...greedy(p, start.prices, left)];
      const score = (b: Batch) => (rule === "largest" ? b.times : b.times * b.pattern.height);
      const ranked = [...usable].sort((a, b) => score(b) - score(a));
      taken = [{ pattern: ranked[Math.min(skips, ranked.length - 1)].pattern, times: 1 }];
      skips = 0;
    }
    plan.push(...taken);
    left = remaining(left, taken);
    relaxed = again(left);
  }
  return plan;
}

/** Again and again the strip worth most for its height, as often as it is wanted whole. */
function greedy(p: StripProblem, prices: readonly number[], cuts: readonly number[]): Batch[] {
  const values = prices.map((v, i) => Math.max(v, FLOOR * areaEach(p, i)));
  const plan: Batch[] = [];
  let left = [...cuts];
  while (left.some((n) => n > 0)) {
    const priced = priceStrips(p, values, left, "up").filter((s) => s.value > 0);
    const choice = priced.reduce((a, b) => (b.value / b.height > a.value / a.height ? b : a));
    const pattern = trim(p, choice.pattern(), left);
    const times = Math.min(
      ...pattern.makes.flatMap((n, i) => (n > 0 ? [Math.floor(left[i] / n)] : [])),
    );
    const batch = { pattern, times: Math.max(1, times) };
    plan.push(batch);
    left = remaining(left, [batch]);
  }
  return plan;
}

/** A cut no price is put on is still worth a tenth of the fabric it covers. */
const FLOOR = 0.1;

const areaEach = (p: StripProblem, item: number): Length => {
  const { lay } = p.options.find((o) => o.item === item)!;
  return (lay.pitch * lay.height) / p.room;
};

/** Drops columns that make more of an item than is wanted (two lays of one item in one strip). */
function trim(p: StripProblem, pattern: Pattern, wanted: readonly number[]): Pattern {
  const left = [...wanted];
  const runs = pattern.runs.flatMap((run) => {
    const { item } = p.options[run.option];
    const columns = Math.min(run.columns, Math.ceil(left[item] / run.rows));
    left[item] -= columns * run.rows;
    return columns > 0 ? [{ ...run, columns }] : [];
  });
  return patternOf(p, runs);
}

/** Leaves out whole strips that are not needed, and lowers strips whose tallest run is not. */
export function shed(p: StripProblem, plan: readonly Batch[]): Batch[] {
  const spare = p.cuts.map((n, i) => plan.reduce((t, b) => t + b.pattern.makes[i] * b.times, -n));
  const out: Batch[] = [];
  const order = [...plan].sort((a, b) => b.pattern.height - a.pattern.height);
  for (const { pattern, times } of order) {
    let kept = times;
    while (kept > 0 && pattern.makes.every((n, i) => n <= spare[i])) {
      pattern.makes.forEach((n, i) => {
        spare[i] -= n;
      });
      kept--;
    }
    if (kept > 0) out.push({ pattern, times: kept });
  }
  return out.flatMap((batch) => lower(p, batch, spare));
}

/** One strip of a batch may lose its tallest runs when their cuts are spare. */
function lower(p: StripProblem, { pattern, times }: Batch, spare: number[]): Batch[] {
  const tall = pattern.runs.filter(
    (r) => r.rows * p.options[r.option].lay.height > pattern.height - 1e-9,
  );
  const loses = p.cuts.map(() => 0);
  for (const r of tall) loses[p.options[r.option].item] += r.columns * r.rows;
  if (tall.length === pattern.runs.length || loses.some((n, i) => n > spare[i]))
    return [{ pattern, times }];
  loses.forEach((n, i) => {
    spare[i] -= n;
  });
  const lowered = patternOf(
    p,
    pattern.runs.filter((r) => !tall.includes(r)),
  );
  const rest = times > 1 ? [{ pattern, times: times - 1 }] : [];
  return [...rest, { pattern: lowered, times: 1 }];
}
