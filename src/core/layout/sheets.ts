import { leastCover } from "./covering.ts";
import type { Solver } from "./integer.ts";
import { solveProgram } from "./integer.ts";
import type { SheetPattern, SheetProblem } from "./sheet-problem.ts";
import { bestSheet, refill, sheetColumn, sheetFits } from "./sheet-problem.ts";

export interface SheetBatch {
  readonly pattern: SheetPattern;
  readonly times: number;
}

export interface SheetRelaxed {
  readonly bound: number;
  readonly prices: readonly number[];
  readonly taken: readonly SheetBatch[];
}

/** Least cost when a sheet may be cut a broken number of times; every pattern met goes to `pool`. */
export function relaxSheets(
  p: SheetProblem,
  cuts: readonly number[],
  limits: readonly number[],
  way: "down" | "up",
  pool?: Map<string, SheetPattern>,
): SheetRelaxed {
  const cover = leastCover<SheetPattern>({
    needs: cuts,
    limits,
    start: cuts.map((_, i) => ({ cost: p.missing[i], makes: cuts.map((_, j) => +(i === j)) })),
    price: (prices, supply) => {
      let ratio = 0;
      let best: { pattern: SheetPattern; reduced: number } | undefined;
      for (const kind of p.kinds) {
        const { pattern, value } = bestSheet(kind, prices, cuts, way);
        const cost = kind.cost - (kind.limit === undefined ? 0 : supply[kind.limit]);
        ratio = Math.max(ratio, value / cost);
        if (!best || cost - value < best.reduced) best = { pattern, reduced: cost - value };
      }
      if (!best) return undefined;
      if (pool) pool.set(keyOf(best.pattern), best.pattern);
      return { column: sheetColumn(best.pattern), reduced: best.reduced, ratio };
    },
  });
  return {
    bound: cover.bound,
    prices: cover.prices,
    taken: cover.taken.map(({ column, times }) => ({ pattern: column.what!, times })),
  };
}

export const keyOf = ({ kind, makes }: SheetPattern): string =>
  `${kind.sheet.id} ${kind.turned ? "t" : ""} ${makes.join(" ")}`;

export const costOfSheets = (plan: readonly SheetBatch[]): number =>
  plan.reduce((t, b) => t + b.pattern.kind.cost * b.times, 0);

/** What a plan leaves uncut of each item, and of each limited sheet. */
export function afterSheets(p: SheetProblem, plan: readonly SheetBatch[]) {
  const cuts = [...p.cuts];
  const limits = [...p.limits];
  for (const { pattern, times } of plan) {
    pattern.makes.forEach((n, i) => {
      cuts[i] -= n * times;
    });
    if (pattern.kind.limit !== undefined) limits[pattern.kind.limit] -= times;
  }
  return { cuts: cuts.map((n) => Math.max(0, n)), limits };
}

/** Sheets kept whole, then one rounded up (its spare room filled again), then relaxed anew. */
export function diveSheets(
  p: SheetProblem,
  start: SheetRelaxed,
  pool: Map<string, SheetPattern>,
  share = 1,
): SheetBatch[] {
  const plan: SheetBatch[] = [];
  let relaxed = start;
  let { cuts: left, limits } = afterSheets(p, plan);
  while (left.some((n) => n > 0)) {
    const usable = relaxed.taken.filter((b) => sheetFits(b.pattern));
    if (usable.length === 0) break;
    let taken = usable
      .map((b) => ({ ...b, times: Math.floor(b.times * share + 1e-6) }))
      .filter((b) => b.times > 0);
    if (taken.length === 0) {
      const fullest = usable.reduce((a, b) => (b.times > a.times + 1e-9 ? b : a));
      const pattern = refill(fullest.pattern, relaxed.prices, left);
      if (pattern.strips.length === 0) break;
      pool.set(keyOf(pattern), pattern);
      taken = [{ pattern, times: 1 }];
    }
    plan.push(...taken);
    ({ cuts: left, limits } = afterSheets(p, plan));
    relaxed = relaxSheets(p, left, limits, "up", pool);
  }
  return shedSheets(p, plan);
}

/** Leaves out sheets that are not needed, dearest first. */
export function shedSheets(p: SheetProblem, plan: readonly SheetBatch[]): SheetBatch[] {
  const spare = p.cuts.map((n, i) => plan.reduce((t, b) => t + b.pattern.makes[i] * b.times, -n));
  const order = [...plan].sort((a, b) => b.pattern.kind.cost - a.pattern.kind.cost);
  return order.flatMap(({ pattern, times }) => {
    let kept = times;
    while (kept > 0 && pattern.makes.every((n, i) => n <= spare[i])) {
      pattern.makes.forEach((n, i) => {
        spare[i] -= n;
      });
      kept--;
    }
    return kept > 0 ? [{ pattern, times: kept }] : [];
  });
}

/** The best choice among all patterns met, starting from a plan. */
export function chooseSheets(
  p: SheetProblem,
  plan: readonly SheetBatch[],
  pool: ReadonlyMap<string, SheetPattern>,
  search: { readonly solver: Solver; readonly nodes: number; readonly stop: () => boolean },
): SheetBatch[] {
  const all = new Map(plan.map((b) => [keyOf(b.pattern), b.pattern]));
  for (const [key, pattern] of pool) if (!all.has(key) && sheetFits(pattern)) all.set(key, pattern);
  const patterns = [...all.values()];
  const n = p.cuts.length;
  const { cuts: short } = afterSheets(p, plan);
  const times = new Map<string, number>();
  for (const b of plan) times.set(keyOf(b.pattern), (times.get(keyOf(b.pattern)) ?? 0) + b.times);
  const solved = solveProgram(
    search.solver,
    {
      costs: [...patterns.map((x) => x.kind.cost), ...p.missing],
      columns: [
        ...patterns.map((x) => [
          ...x.makes.flatMap((k, i) => (k > 0 ? [[i, k] as const] : [])),
          ...(x.kind.limit === undefined ? [] : [[n + x.kind.limit, 1] as const]),
        ]),
        ...p.cuts.map((_, i) => [[i, 1] as const]),
      ],
      lower: [...p.cuts, ...p.limits.map(() => 0)],
      upper: [...p.cuts.map(() => Number.POSITIVE_INFINITY), ...p.limits],
    },
    {
      nodes: search.nodes,
      gap: 1e-6,
      start: [...patterns.map((x) => times.get(keyOf(x)) ?? 0), ...short],
      stop: search.stop,
    },
  );
  if (!solved.amounts) return [...plan];
  const { amounts } = solved;
  return shedSheets(
    p,
    patterns.flatMap((pattern, i) => (amounts[i] > 0 ? [{ pattern, times: amounts[i] }] : [])),
  );
}
