import { dot } from "./covering.ts";
import { batches } from "./improve.ts";
import type { Program, Solver } from "./integer.ts";
import { solveProgram } from "./integer.ts";
import type { Batch, Pattern, StripProblem } from "./problem.ts";
import { lengthOf } from "./problem.ts";

/** Most patterns the second pass chooses from: enough for choice, few enough to be quick. */
const CHOICE = 40;

/** The proof that nothing is simpler is never worth the wait. */
const NODES = 20;

/** Moves of ruler and knife for one strip: the strip, each crosscut, each trim to a lower height. */
export function cutsOf(p: StripProblem, pattern: Pattern): number {
  return pattern.runs.reduce((total, run) => {
    const full = run.rows * p.options[run.option].lay.height > pattern.height - 1e-9;
    return total + run.columns + (run.rows - 1) + (full ? 0 : 1);
  }, 1);
}

/** What a plan costs the cutter: a new height, a new arrangement, then single cuts. */
const WEIGHT = { height: 60, pattern: 20, cut: 1 };

export function trouble(p: StripProblem, plan: readonly Batch[]): number {
  const heights = new Set(plan.map((b) => b.pattern.height.toFixed(6)));
  const cuts = plan.reduce((t, b) => t + b.times * cutsOf(p, b.pattern), 0);
  return WEIGHT.height * heights.size + WEIGHT.pattern * plan.length + WEIGHT.cut * cuts;
}

/** Among plans as short as this one, one with fewer heights, arrangements and cuts. */
export function simplify(
  p: StripProblem,
  plan: readonly Batch[],
  pool: readonly Pattern[],
  prices: readonly number[],
  effort: { readonly solver: Solver; readonly nodes: number; readonly stop: () => boolean },
): readonly Batch[] {
  const own = plan.map((b) => b.pattern);
  const dear = (x: Pattern) => x.height - dot(x.makes, prices);
  const cheapest = [...pool].sort((a, b) => dear(a) - dear(b));
  const choice = [...new Set([...own, ...cheapest])].slice(0, Math.max(CHOICE, own.length));
  const heights = [...new Set(choice.map((c) => c.height))];
  const { program, start } = simplerProgram(p, plan, choice, heights);
  const solved = solveProgram(effort.solver, program, {
    nodes: Math.min(effort.nodes, NODES),
    gap: 0.999,
    start,
    stop: effort.stop,
  });
  if (!solved.amounts) return plan;
  const next = batches(choice, solved.amounts.slice(0, choice.length));
  const better =
    covers(p, next) &&
    lengthOf(next) <= lengthOf(plan) + 1e-9 &&
    trouble(p, next) < trouble(p, plan);
  return better ? next : plan;
}

const covers = (p: StripProblem, plan: readonly Batch[]): boolean =>
  p.cuts.every((n, i) => plan.reduce((t, b) => t + b.times * b.pattern.makes[i], 0) >= n);

/** Columns: strips of each pattern, whether it is used, whether its height is used. */
function simplerProgram(
  p: StripProblem,
  plan: readonly Batch[],
  choice: readonly Pattern[],
  heights: readonly number[],
): { program: Program; start: number[] } {
  const items = p.cuts.length;
  const n = choice.length;
  const most = choice.map(({ makes }) =>
    Math.max(...makes.map((k, i) => (k > 0 ? Math.ceil(p.cuts[i] / k) : 0))),
  );
  const lengthRow = items;
  const used = (c: number) => items + 1 + c;
  const heightOf = choice.map((c) => heights.indexOf(c.height));
  const byHeight = (c: number) => items + 1 + n + c;
  const scale = p.unit > 0 ? p.unit : 1;
  const strips = choice.map(({ makes, height }, c) => [
    ...makes.flatMap((k, i) => (k > 0 ? [[i, k] as const] : [])),
    [lengthRow, height / scale] as const,
    [used(c), 1] as const,
  ]);
  const uses = choice.map((_, c) => [[used(c), -most[c]] as const, [byHeight(c), 1] as const]);
  const tall = heights.map((_, h) =>
    heightOf.flatMap((own, c) => (own === h ? [[byHeight(c), -1] as const] : [])),
  );
  const none = Number.NEGATIVE_INFINITY;
  const slack = [...choice.map(() => 0), ...choice.map(() => 0)];
  const times = choice.map((c) => plan.find((b) => b.pattern === c)?.times ?? 0);
  const inUse = times.map((t) => (t > 0 ? 1 : 0));
  return {
    program: {
      costs: [
        ...choice.map((c) => WEIGHT.cut * cutsOf(p, c)),
        ...choice.map(() => WEIGHT.pattern),
        ...heights.map(() => WEIGHT.height),
      ],
      columns: [...strips, ...uses, ...tall],
      lower: [...p.cuts, none, ...slack.map(() => none)],
      upper: [
        ...p.cuts.map(() => Number.POSITIVE_INFINITY),
        lengthOf(plan) / scale + 1e-6,
        ...slack,
      ],
      most: [...most, ...choice.map(() => 1), ...heights.map(() => 1)],
    },
    start: [
      ...times,
      ...inUse,
      ...heights.map((_, h) => (inUse.some((u, c) => u === 1 && heightOf[c] === h) ? 1 : 0)),
    ],
  };
}
