import type { Length } from "../measure/index.ts";
import type { Enumerated } from "./enumerate.ts";
import { enumeratePatterns, MOST_PATTERNS } from "./enumerate.ts";
import type { Program, Solver } from "./integer.ts";
import { solveProgram } from "./integer.ts";
import type { Batch, Pattern, StripProblem } from "./problem.ts";
import { lengthOf, raiseToUnit } from "./problem.ts";
import type { Relaxed } from "./relax.ts";
import { shed } from "./round.ts";

export interface Effort {
  readonly solver: Solver;
  /** Nodes of the search tree for the last, largest integer program. */
  readonly nodes: number;
  readonly stop: () => boolean;
  /** Called with every better plan and every better bound. */
  readonly improved: (plan: readonly Batch[], bound: Length) => void;
}

export interface Improved {
  readonly plan: readonly Batch[];
  readonly bound: Length;
  /** The patterns of small reduced cost that the last program chose from. */
  readonly pool: readonly Pattern[];
}

/** Patterns of the quick rounds, whose only use is a shorter plan to narrow the last one. */
const QUICK = [600, 3000];
/** Patterns of the last round for each node it may search: few nodes could not use many. */
const PATTERNS_PER_NODE = 60;

/**
 * Shortens a plan by integer programs over patterns of small reduced cost: a few first, for a good
 * plan soon; then all that a shorter plan could use, or as many as may be, for the proof.
 */
export function improvePlan(
  p: StripProblem,
  relaxed: Relaxed,
  first: readonly Batch[],
  effort: Effort,
): Improved {
  let plan = first;
  let bound = Math.min(relaxed.bound, lengthOf(plan));
  let pool: readonly Pattern[] = [];
  const last = Math.min(MOST_PATTERNS, effort.nodes * PATTERNS_PER_NODE);
  for (const most of [...QUICK.filter((n) => n < last), last]) {
    const gap = lengthOf(plan) - bound;
    if (gap < 1e-6 || effort.stop()) break;
    const nodes = most === last ? effort.nodes : Math.ceil(effort.nodes / 4);
    const step = oneRound(p, relaxed, plan, most, { ...effort, nodes });
    plan = step.plan;
    pool = step.pool;
    bound = Math.min(lengthOf(plan), Math.max(bound, step.bound));
    effort.improved(plan, bound);
    if (step.complete && step.optimal) break;
  }
  return { plan, bound, pool };
}

interface Round extends Improved {
  readonly complete: boolean;
  readonly optimal: boolean;
}

function oneRound(
  p: StripProblem,
  relaxed: Relaxed,
  plan: readonly Batch[],
  most: number,
  effort: Effort,
): Round {
  const length = lengthOf(plan);
  const wanted = Math.max(0, length - relaxed.value - 0.99 * p.unit);
  const found = enumeratePatterns(p, relaxed.prices, wanted, most);
  const pool = withPlan(found, plan);
  const scale = p.unit > 0 ? p.unit : 1;
  const solved = solveProgram(effort.solver, coverProgram(p, pool, scale), {
    nodes: effort.nodes,
    gap: p.unit > 0 ? 0.999 : 1e-6,
    start: pool.map((pattern) => plan.find((b) => b.pattern === pattern)?.times ?? 0),
    stop: effort.stop,
    improved: (amounts) => effort.improved(shed(p, batches(pool, amounts)), relaxed.bound),
  });
  const next = solved.amounts ? shed(p, batches(pool, solved.amounts)) : plan;
  const complete = found.within >= wanted - 1e-12;
  const outside = raiseToUnit(p, relaxed.value + found.within + 0.005 * p.unit);
  const inside = raiseToUnit(p, solved.bound * scale);
  return {
    plan: lengthOf(next) < length - 1e-9 ? next : plan,
    bound: Math.min(inside, complete ? Math.max(outside, length) : outside),
    pool,
    complete,
    optimal: solved.optimal,
  };
}

/** The patterns found and those of the plan, so that the search can start from it. */
function withPlan(found: Enumerated, plan: readonly Batch[]): Pattern[] {
  const own = plan.map((b) => b.pattern);
  return [...new Set([...own, ...found.patterns])];
}

function coverProgram(p: StripProblem, pool: readonly Pattern[], scale: number): Program {
  return {
    costs: pool.map(({ height }) => (p.unit > 0 ? Math.round(height / scale) : height / scale)),
    columns: pool.map(({ makes }) => makes.flatMap((n, i) => (n > 0 ? [[i, n] as const] : []))),
    lower: p.cuts,
    upper: p.cuts.map(() => Number.POSITIVE_INFINITY),
  };
}

export const batches = (pool: readonly Pattern[], amounts: readonly number[]): Batch[] =>
  pool.flatMap((pattern, i) => (amounts[i] > 0 ? [{ pattern, times: amounts[i] }] : []));
