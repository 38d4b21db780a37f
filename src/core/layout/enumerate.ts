import type { Length } from "../measure/index.ts";
import { NOISE, runLength } from "./lay.ts";
import type { Pattern, PatternRun, StripProblem } from "./problem.ts";
import { patternOf, rowsIn, runCells } from "./problem.ts";

export interface Enumerated {
  readonly patterns: readonly Pattern[];
  /** Are these all? If not, any other costs more than `within` over its worth. */
  readonly within: Length;
}

/** Most patterns an integer program is given, and most strips looked at to find them. */
export const MOST_PATTERNS = 25_000;
const MOST_LOOKS = 3_000_000;

/**
 * Every maximal pattern whose reduced cost (height less what it makes at these prices) is at most
 * `within`. Any plan that uses another is longer than the relaxed length by more than that. When
 * there are too many the limit is lowered until there are not, and returned.
 */
export function enumeratePatterns(
  p: StripProblem,
  prices: readonly number[],
  within: Length,
  most = MOST_PATTERNS,
): Enumerated {
  let limit = within;
  for (let tries = 0; tries < 12; tries++) {
    const patterns = tryWithin(p, prices, limit, most);
    if (patterns) return { patterns, within: limit };
    limit *= 0.6;
  }
  return { patterns: [], within: 0 };
}

function tryWithin(
  p: StripProblem,
  prices: readonly number[],
  within: Length,
  most: number,
): Pattern[] | undefined {
  const found = new Map<string, Pattern>();
  const looks = { left: MOST_LOOKS };
  for (const height of p.heights) {
    const full = new HeightSearch(p, prices, height, within, looks).run((pattern) => {
      const key = pattern.makes.join(" ");
      const had = found.get(key);
      if (!had || pattern.height < had.height) found.set(key, pattern);
      return found.size <= most;
    });
    if (!full) return undefined;
  }
  return [...found.values()];
}

interface Choice {
  readonly option: number;
  readonly item: number;
  readonly rows: number;
  readonly worth: number;
  readonly first: Length;
  readonly pitch: Length;
  readonly cells: readonly number[];
  readonly lengths: readonly Length[];
}

/** Depth-first over one height, cut short by the most the room left could still be worth. */
class HeightSearch {
  private readonly p: StripProblem;
  private readonly height: Length;
  private readonly within: Length;
  private readonly looks: { left: number };
  private readonly choices: Choice[];
  /** Most that choices from j on are worth in x cells. */
  private readonly best: Float64Array[];
  private readonly taken: number[];
  private readonly made: number[];
  private take: (pattern: Pattern) => boolean = () => true;

  constructor(
    p: StripProblem,
    prices: readonly number[],
    height: Length,
    within: Length,
    looks: { left: number },
  ) {
    this.p = p;
    this.height = height;
    this.within = within;
    this.looks = looks;
    this.choices = choicesFor(p, prices, height);
    this.best = suffixWorth(p, this.choices);
    this.taken = this.choices.map(() => 0);
    this.made = p.cuts.map(() => 0);
  }

  run(take: (pattern: Pattern) => boolean): boolean {
    this.take = take;
    return this.from(0, this.p.cells, this.p.room, 0);
  }

  private from(j: number, cells: number, room: Length, worth: number): boolean {
    if (this.looks.left-- <= 0) return false;
    if (this.height - worth - this.best[j][cells] > this.within + 1e-9) return true;
    if (j === this.choices.length) return this.leaf(room);
    const c = this.choices[j];
    for (let k = c.lengths.length; k >= 0; k--) {
      if (k > 0 && c.lengths[k - 1] > room + NOISE * this.p.room) continue;
      if (k > 0 && this.made[c.item] + (k - 1) * c.rows >= this.p.cuts[c.item]) continue;
      this.taken[j] = k;
      this.made[c.item] += k * c.rows;
      const used = k > 0 ? c.cells[k - 1] : 0;
      const length = k > 0 ? c.lengths[k - 1] : 0;
      const on = this.from(j + 1, Math.max(0, cells - used), room - length, worth + k * c.worth);
      this.made[c.item] -= k * c.rows;
      this.taken[j] = 0;
      if (!on) return false;
    }
    return true;
  }

  private leaf(room: Length): boolean {
    const extends_ = (c: Choice, j: number) =>
      (this.taken[j] > 0 ? c.pitch : c.first) <= room + NOISE * this.p.room &&
      this.made[c.item] < this.p.cuts[c.item];
    if (this.choices.some(extends_)) return true;
    const runs: PatternRun[] = this.choices.flatMap((c, j) =>
      this.taken[j] > 0 ? [{ option: c.option, columns: this.taken[j], rows: c.rows }] : [],
    );
    return runs.length === 0 || this.take(patternOf(this.p, runs));
  }
}

function choicesFor(p: StripProblem, prices: readonly number[], height: Length): Choice[] {
  const choices = p.options.flatMap(({ item, lay }, option): Choice[] => {
    const rows = rowsIn(p, p.options[option], height);
    if (rows === 0 || p.cuts[item] === 0) return [];
    const cells: number[] = [];
    const lengths: Length[] = [];
    for (let k = 1; k <= Math.ceil(p.cuts[item] / rows); k++) {
      const length = runLength(lay, k);
      if (length > p.room * (1 + NOISE)) break;
      lengths.push(length);
      cells.push(runCells(p, lay, k, "down"));
    }
    const worth = prices[item] * rows;
    return [{ option, item, rows, worth, first: lay.first, pitch: lay.pitch, cells, lengths }];
  });
  return choices.sort((a, b) => b.worth / b.pitch - a.worth / a.pitch || a.option - b.option);
}

function suffixWorth(p: StripProblem, choices: readonly Choice[]): Float64Array[] {
  const tables: Float64Array[] = [new Float64Array(p.cells + 1)];
  for (let j = choices.length - 1; j >= 0; j--) {
    const before = tables[0];
    const after = before.slice();
    choices[j].cells.forEach((size, i) => {
      const gain = (i + 1) * choices[j].worth;
      for (let x = size; x < after.length; x++)
        if (before[x - size] + gain > after[x]) after[x] = before[x - size] + gain;
    });
    tables.unshift(after);
  }
  return tables;
}
