import type { Length } from "../measure/index.ts";
import { drawStrips } from "./draw.ts";
import { areaBound, finishLayout } from "./finish.ts";
import { planHandbook } from "./handbook.ts";
import { improvePlan } from "./improve.ts";
import type { Solver } from "./integer.ts";
import type { Batch, StripProblem } from "./problem.ts";
import { lengthOf, stripProblem } from "./problem.ts";
import { type Relaxed, relax } from "./relax.ts";
import { replay } from "./replay.ts";
import { roundPlan } from "./round.ts";
import { simplify } from "./tidy.ts";
import type { Demand, FabricLayout, Stock } from "./types.ts";
import type { Work } from "./work.ts";
import { workFor } from "./work.ts";

export interface PlanOptions {
  /** Equal pieces may stand on one another in a taller strip (one more cut each). */
  readonly stacks?: boolean;
}

export interface BestOptions extends PlanOptions {
  readonly solver: Solver;
  /** Nodes of each search: the same number gives the same plan, on any machine. */
  readonly nodes?: number;
  /** Every better plan, already recounted. */
  readonly onProgress?: (layout: FabricLayout) => void;
  /** When it says so the best plan so far is returned. */
  readonly signal?: { readonly aborted: boolean };
}

/** Enough to prove most quilts; docs/cutting-plans.md says what more would buy. */
export const DEFAULT_NODES = 200;

/** One problem for each number of layers; strips cut double and single do not mix. */
interface Part {
  readonly layers: 1 | 2;
  readonly problem: StripProblem;
  readonly relaxed: Relaxed;
  plan: readonly Batch[];
  bound: Length;
}

/**
 * A good plan without a solver, at once: the relaxed plan made whole (within 2.5 % of the bound on
 * every measured quilt). Recounted before it is returned; never longer than the handbook's.
 */
export function planFirst(
  demands: readonly Demand[],
  stock: Stock,
  options: PlanOptions = {},
): FabricLayout {
  const { work, parts } = firstParts(demands, stock, options);
  return checked(parts, { work, demands, stock });
}

/**
 * The least fabric, with a bound that no plan of this kind can be under. Starts from the first plan
 * and only ever improves it; then, as short, takes fewest heights, arrangements and cuts, then the
 * largest leftover in one piece. Blocks its thread while it works: run it in a worker.
 */
export function planBest(
  demands: readonly Demand[],
  stock: Stock,
  options: BestOptions,
): FabricLayout {
  const { work, parts } = firstParts(demands, stock, options);
  const context = { work, demands, stock };
  const stop = () => options.signal?.aborted === true;
  const nodes = options.nodes ?? DEFAULT_NODES;
  for (const part of parts) {
    const report = (plan: readonly Batch[], bound: Length) => {
      const shorter = lengthOf(plan) < lengthOf(part.plan) - 1e-9;
      if (!shorter && bound <= part.bound) return;
      if (shorter) part.plan = plan;
      part.bound = Math.min(Math.max(bound, part.bound), lengthOf(part.plan));
      options.onProgress?.(checked(parts, context));
    };
    const effort = { solver: options.solver, nodes, stop, improved: report };
    const better = improvePlan(part.problem, part.relaxed, part.plan, effort);
    report(better.plan, better.bound);
    const { problem, relaxed } = part;
    if (!stop()) part.plan = simplify(problem, part.plan, better.pool, relaxed.prices, effort);
  }
  return checked(parts, context);
}

interface Context {
  readonly work: Work;
  readonly demands: readonly Demand[];
  readonly stock: Stock;
}

function firstParts(
  demands: readonly Demand[],
  stock: Stock,
  options: PlanOptions,
): { work: Work; parts: Part[] } {
  const work = workFor(demands, stock);
  const parts = ([1, 2] as const).flatMap((layers): Part[] => {
    const jobs = work.jobs.filter((job) => job.layers === layers);
    if (jobs.length === 0) return [];
    const problem = stripProblem(jobs, stock, layers, options.stacks ?? false);
    const relaxed = relax(problem, problem.cuts);
    const plan = firstPlan(problem, relaxed, stock, layers);
    return [{ layers, problem, relaxed, plan, bound: Math.min(relaxed.bound, lengthOf(plan)) }];
  });
  return { work, parts };
}

/** Stacks widen the choice, so the plan without them is a plan too. */
function firstPlan(p: StripProblem, relaxed: Relaxed, stock: Stock, layers: 1 | 2): Batch[] {
  const plan = roundPlan(p, relaxed);
  if (!p.stacks) return plan;
  const flat = stripProblem(p.jobs, stock, layers, false);
  const flatPlan = roundPlan(flat, relax(flat, flat.cuts));
  return lengthOf(flatPlan) < lengthOf(plan) - 1e-9 ? flatPlan : plan;
}

/** The layout drawn and recounted; a plan that fails the recount gives way to the handbook's. */
function checked(parts: readonly Part[], { work, demands, stock }: Context): FabricLayout {
  const strips = parts.flatMap((part) => drawStrips(part.problem, part.plan, part.layers));
  const fixed = work.fixed.reduce((total, s) => total + s.height * s.times, 0);
  const bound = parts.reduce((total, part) => total + part.bound, fixed);
  const lowerBound = Math.max(bound, areaBound(work, stock));
  const layout = finishLayout({ strips, work, demands, stock, lowerBound });
  return replay(layout, demands, stock).length === 0 ? layout : planHandbook(demands, stock);
}
