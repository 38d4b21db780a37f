import type { Length } from "../measure/index.ts";
import type { Pattern, PatternRun, StripProblem } from "./problem.ts";
import { mostColumns, patternOf, rowsIn, runCells } from "./problem.ts";

export interface Priced {
  readonly height: Length;
  readonly value: number;
  readonly pattern: () => Pattern;
}

interface Stage {
  readonly option: number;
  readonly rows: number;
  /** Cells of a run of 1, 2, ... columns. */
  readonly cells: readonly number[];
  /** Columns taken at each amount of room. */
  readonly taken: Uint16Array;
}

/** The strip worth most, option by option, in a given number of cells. */
class Knapsack {
  private best: Float64Array;
  private readonly stages: Stage[] = [];
  private readonly problem: StripProblem;

  constructor(problem: StripProblem) {
    this.problem = problem;
    this.best = new Float64Array(problem.cells + 1);
  }

  add(option: number, rows: number, columns: number, worth: number, way: "down" | "up"): void {
    const lay = this.problem.options[option].lay;
    const cells: number[] = [];
    for (let k = 1; k <= columns; k++) cells.push(runCells(this.problem, lay, k, way));
    const before = this.best;
    const after = before.slice();
    const taken = new Uint16Array(before.length);
    for (const from of rises(before))
      for (let k = 1; k <= columns; k++) {
        const x = from + cells[k - 1];
        if (x >= after.length) break;
        const value = before[from] + k * worth;
        if (value < after[x] || (value === after[x] && taken[x] <= k)) continue;
        after[x] = value;
        taken[x] = k;
      }
    carry(after, taken);
    this.best = after;
    this.stages.push({ option, rows, cells, taken });
  }

  get value(): number {
    return this.best[this.best.length - 1];
  }

  /** The runs of the best strip of the first so many stages. */
  runs(stages = this.stages.length): PatternRun[] {
    const runs: PatternRun[] = [];
    let x = this.problem.cells;
    for (let i = stages - 1; i >= 0; i--) {
      const { option, rows, cells, taken } = this.stages[i];
      const columns = taken[x];
      if (columns === 0) continue;
      runs.push({ option, columns, rows });
      x -= cells[columns - 1];
    }
    return runs.reverse();
  }

  get depth(): number {
    return this.stages.length;
  }
}

/** Where more room first is worth more: what is laid there is worth as much anywhere before the next. */
function rises(best: Float64Array): number[] {
  const at = [0];
  for (let x = 1; x < best.length; x++) if (best[x] > best[x - 1]) at.push(x);
  return at;
}

/** More room is worth no less; of equal worth the fewer columns stand. */
function carry(best: Float64Array, taken: Uint16Array): void {
  for (let x = 1; x < best.length; x++) {
    if (best[x] > best[x - 1] || (best[x] === best[x - 1] && taken[x] <= taken[x - 1])) continue;
    best[x] = best[x - 1];
    taken[x] = taken[x - 1];
  }
}

/**
 * For every height, the strip worth most when a cut of item i is worth `values[i]` and no more than
 * `cuts[i]` of it are wanted. `down` rounds runs down to cells, so no true strip is worth more.
 */
export function priceStrips(
  p: StripProblem,
  values: readonly number[],
  cuts: readonly number[],
  way: "down" | "up",
): Priced[] {
  return p.stacks ? priceStacked(p, values, cuts, way) : priceFlat(p, values, cuts, way);
}

/** Without stacks a taller strip only adds options, so one knapsack serves all heights. */
function priceFlat(
  p: StripProblem,
  values: readonly number[],
  cuts: readonly number[],
  way: "down" | "up",
): Priced[] {
  const sack = new Knapsack(p);
  const priced: Priced[] = [];
  let next = 0;
  for (const height of p.heights) {
    const before = sack.depth;
    for (; next < p.options.length && rowsIn(p, p.options[next], height) > 0; next++) {
      const { item } = p.options[next];
      const columns = mostColumns(p, p.options[next], 1, cuts[item]);
      if (columns > 0 && values[item] > 0) sack.add(next, 1, columns, values[item], way);
    }
    if (sack.depth === before) continue;
    const depth = sack.depth;
    priced.push({ height, value: sack.value, pattern: () => patternOf(p, sack.runs(depth)) });
  }
  return priced;
}

function priceStacked(
  p: StripProblem,
  values: readonly number[],
  cuts: readonly number[],
  way: "down" | "up",
): Priced[] {
  return p.heights.map((height) => {
    const sack = new Knapsack(p);
    p.options.forEach((option, i) => {
      const rows = rowsIn(p, option, height);
      if (rows === 0 || values[option.item] <= 0) return;
      const columns = mostColumns(p, option, rows, cuts[option.item]);
      if (columns > 0) sack.add(i, rows, columns, values[option.item] * rows, way);
    });
    return { height, value: sack.value, pattern: () => patternOf(p, sack.runs()) };
  });
}
