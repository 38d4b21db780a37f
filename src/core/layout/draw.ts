import type { Lay } from "./lay.ts";
import { runLength } from "./lay.ts";
import { runOf } from "./own-strips.ts";
import type { Batch, Pattern, PatternRun, StripProblem } from "./problem.ts";
import type { Placement, Strip } from "./types.ts";
import type { Job } from "./work.ts";

/** A run with its exact number of copies, spare ones left out. */
export interface Cutting {
  readonly run: PatternRun;
  readonly copies: number;
}

/**
 * Strips to scale from batches of patterns. What the patterns make too much of is left out where it
 * leaves the largest piece of fabric whole (the third pass), so every demand is met exactly.
 */
export function drawStrips(p: StripProblem, plan: readonly Batch[], layers: 1 | 2): Strip[] {
  const spare = p.cuts.map((n, i) => plan.reduce((t, b) => t + b.times * b.pattern.makes[i], -n));
  const singles: Cutting[][] = [];
  let left = plan;
  while (spare.some((n) => n > 0)) {
    const best = left
      .map((batch) => ({ batch, cuttings: without(p, batch.pattern, spare) }))
      .map((c) => ({ ...c, room: endRoom(p, c.batch, c.cuttings) }))
      .reduce((a, b) => (b.room > a.room ? b : a));
    const { batch, cuttings } = best;
    for (const { run, copies } of cuttings)
      spare[p.options[run.option].item] -= run.columns * run.rows - copies;
    singles.push(cuttings.filter((c) => c.copies > 0));
    left = left.flatMap((b) =>
      b !== batch ? [b] : b.times > 1 ? [{ pattern: b.pattern, times: b.times - 1 }] : [],
    );
  }
  return [
    ...left.map(({ pattern, times }) => stripOf(p, pattern.runs.map(whole), times, layers)),
    ...singles.filter((c) => c.length > 0).map((c) => stripOf(p, c, 1, layers)),
  ];
}

export const whole = (run: PatternRun): Cutting => ({ run, copies: run.columns * run.rows });

/** The strip with as many spare copies left out as there are. */
export function without(p: StripProblem, pattern: Pattern, spare: readonly number[]): Cutting[] {
  const left = [...spare];
  return pattern.runs.map((run) => {
    const { item } = p.options[run.option];
    const out = Math.min(left[item], run.columns * run.rows);
    left[item] -= out;
    return { run, copies: run.columns * run.rows - out };
  });
}

/** Area of the one piece left at the strip's end; a strip that loses nothing is no choice. */
function endRoom(p: StripProblem, batch: Batch, cuttings: readonly Cutting[]): number {
  const loses = cuttings.some(({ run, copies }) => copies < run.columns * run.rows);
  if (!loses) return Number.NEGATIVE_INFINITY;
  const used = cuttings.reduce((x, c) => x + lengthOfCutting(p, c), 0);
  return (p.room - used) * batch.pattern.height;
}

const columnsFor = ({ run, copies }: Cutting): number => Math.ceil(copies / run.rows);

const lengthOfCutting = (p: StripProblem, c: Cutting): number =>
  runLength(p.options[c.run.option].lay, columnsFor(c));

/** Tallest runs first, from the left; the rows of a stacked run over one another. */
export function stripOf(
  p: StripProblem,
  cuttings: readonly Cutting[],
  times: number,
  layers: 1 | 2,
): Strip {
  const tall = ({ run }: Cutting) => run.rows * p.options[run.option].lay.height;
  const ordered = [...cuttings].sort((a, b) => tall(b) - tall(a) || a.run.option - b.run.option);
  const runs: Placement[] = [];
  let x = 0;
  for (const cutting of ordered) {
    const { item, lay } = p.options[cutting.run.option];
    runs.push(...rowsOf(p.jobs[item], lay, cutting, x));
    x += lengthOfCutting(p, cutting);
  }
  return { from: 0, height: Math.max(...runs.map((r) => r.y + r.height)), times, layers, runs };
}

function rowsOf(job: Job, lay: Lay, cutting: Cutting, x: number): Placement[] {
  const columns = columnsFor(cutting);
  const rows: Placement[] = [];
  for (let left = cutting.copies, row = 0; left > 0; row++) {
    const copies = Math.min(columns, left);
    rows.push(runOf(job, lay, copies, x, row * lay.height));
    left -= copies;
  }
  return rows;
}
