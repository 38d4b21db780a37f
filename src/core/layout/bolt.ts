import type { Solver } from "./integer.ts";
import { planBest, planFirst } from "./plan.ts";
import { replay } from "./replay.ts";
import type { Demand, FabricLayout, Stock } from "./types.ts";

/** Plans one fabric from the bolt: the demands are of that fabric only. */
export type BoltPlanner = (demands: readonly Demand[], stock: Stock) => FabricLayout;

export interface BoltOptions {
  readonly stacks?: boolean;
  /** Without a solver the plan is the first one. */
  readonly solver?: Solver;
  readonly nodes?: number;
  readonly signal?: { readonly aborted: boolean };
  /** Every better plan of a fabric, already recounted. */
  readonly onProgress?: (layout: FabricLayout) => void;
  /** A planner of the caller's own, in place of both. */
  readonly bolt?: BoltPlanner;
}

/** The best plan where a solver is given, the first plan where none is, or the caller's own. */
export function planBolt(
  demands: readonly Demand[],
  stock: Stock,
  { solver, nodes, stacks, signal, onProgress, bolt }: BoltOptions,
): FabricLayout {
  if (bolt) return bolt(demands, stock);
  return solver
    ? planBest(demands, stock, { solver, nodes, stacks, signal, onProgress })
    : planFirst(demands, stock, { stacks });
}

/**
 * The first plan, or a known one that cuts the same from the same fabric and is no longer. A known
 * plan is recounted before it is taken, so one that was made for other demands is never used.
 */
export function planKnown(
  known: readonly FabricLayout[],
  { stacks }: Pick<BoltOptions, "stacks"> = {},
): BoltPlanner {
  return (demands, stock) => {
    const first = planFirst(demands, stock, { stacks });
    const better = known
      .filter((l) => l.fabricId === stock.fabricId && l.width === stock.width)
      .filter((l) => l.length <= first.length + 1e-9 && replay(l, demands, stock).length === 0);
    return better.reduce(
      (a, b) =>
        b.length < a.length - 1e-9 || (b.length <= a.length + 1e-9 && b.lowerBound >= a.lowerBound)
          ? b
          : a,
      first,
    );
  };
}
