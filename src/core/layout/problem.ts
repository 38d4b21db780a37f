import type { Length } from "../measure/index.ts";
import type { Lay } from "./lay.ts";
import { copiesIn, fits, layerWidth, NOISE, runLength } from "./lay.ts";
import type { Stock } from "./types.ts";
import type { Job } from "./work.ts";

/** One lay of one item: what a strip may hold runs of. */
export interface Option {
  readonly item: number;
  readonly lay: Lay;
}

/**
 * The planning problem of strips of one width: so many cuts of each item, each in one of its lays,
 * in strips whose height is what is paid for (docs/geometry/strip-nesting.md).
 */
export interface StripProblem {
  readonly jobs: readonly Job[];
  readonly cuts: readonly number[];
  readonly room: Length;
  /** Low first, so that the options of a strip of one height are the first so many. */
  readonly options: readonly Option[];
  /** Heights a strip may have, low first. */
  readonly heights: readonly Length[];
  /** May equal pieces stand on one another in a taller strip? */
  readonly stacks: boolean;
  /** Every height is a multiple of this; 0 when they have no common step. */
  readonly unit: Length;
  /** Cells the room is divided into, and whether every run ends on one of them. */
  readonly cells: number;
}

/** A run of one option in a strip: `columns` side by side, `rows` of them over one another. */
export interface PatternRun {
  readonly option: number;
  readonly columns: number;
  readonly rows: number;
}

/** What one strip holds. */
export interface Pattern {
  readonly height: Length;
  readonly runs: readonly PatternRun[];
  /** Cuts of each item. */
  readonly makes: readonly number[];
}

/** A pattern cut so many times. */
export interface Batch {
  readonly pattern: Pattern;
  readonly times: number;
}

export function stripProblem(
  jobs: readonly Job[],
  stock: Stock,
  layers: 1 | 2,
  stacks: boolean,
): StripProblem {
  const room = layerWidth(stock, layers);
  const options = jobs
    .flatMap((job, item) => job.lays.map((lay) => ({ item, lay })))
    .sort((a, b) => a.lay.height - b.lay.height || a.item - b.item || a.lay.first - b.lay.first);
  const heights = stripHeights(options, stacks);
  return {
    jobs,
    cuts: jobs.map((job) => job.cuts),
    room,
    options,
    heights,
    stacks,
    unit: commonStep(heights),
    cells: cellsIn(room, options),
  };
}

/** Piece heights, and with stacks their multiples up to the tallest piece. */
function stripHeights(options: readonly Option[], stacks: boolean): Length[] {
  const tallest = Math.max(...options.map((o) => o.lay.height));
  const all: Length[] = [];
  for (const { lay } of options) {
    const most = stacks && mayStack(lay) ? Math.floor(tallest / lay.height + NOISE) : 1;
    for (let rows = 1; rows <= most; rows++) all.push(rows * lay.height);
  }
  all.sort((a, b) => a - b);
  return all.filter((h, i) => i === 0 || h - all[i - 1] > NOISE * h);
}

/** Only pieces cut square across stand on one another in a column; nested runs do not. */
const mayStack = (lay: Lay): boolean => lay.pitch === lay.first;

/** Rows of an option that stand in a strip of this height. */
export const rowsIn = (p: StripProblem, option: Option, height: Length): number => {
  if (!fits(option.lay.height, height)) return 0;
  return p.stacks && mayStack(option.lay)
    ? Math.floor((height / option.lay.height) * (1 + NOISE))
    : 1;
};

/** Most columns of an option worth having: what fits, and no more than there are cuts to make. */
export const mostColumns = (p: StripProblem, option: Option, rows: number, cuts: number): number =>
  Math.min(copiesIn(option.lay, p.room), Math.ceil(cuts / rows));

/** Length of a run in whole cells: down for a bound that no plan beats, up for a plan that fits. */
export function runCells(p: StripProblem, lay: Lay, copies: number, way: "down" | "up"): number {
  const exact = (runLength(lay, copies) / p.room) * p.cells;
  const near = Math.round(exact);
  if (Math.abs(exact - near) < 1e-6) return near;
  return way === "down" ? Math.floor(exact) : Math.ceil(exact);
}

const STEPS = [10, 5, 1, 1 / 2, 1 / 4, 1 / 8, 0.1, 1 / 16, 0.05, 1 / 32, 1 / 40, 1 / 64, 0.01];
const FINE_CELLS = 8192;

/** The largest step every number is a multiple of; 0 when none of the rulers' steps will do. */
export const commonStep = (numbers: readonly number[]): number =>
  STEPS.find((step) =>
    numbers.every((x) => Math.abs(x / step - Math.round(x / step)) < 1e-7 * Math.max(1, x / step)),
  ) ?? 0;

function cellsIn(room: Length, options: readonly Option[]): number {
  const step = commonStep([room, ...options.flatMap((o) => [o.lay.first, o.lay.pitch])]);
  const exact = step > 0 ? Math.round(room / step) : FINE_CELLS;
  return Math.min(exact, FINE_CELLS);
}

/** A pattern from its runs: what it makes, and no taller than its runs need. */
export function patternOf(p: StripProblem, runs: readonly PatternRun[]): Pattern {
  const makes = p.cuts.map(() => 0);
  let height = 0;
  for (const run of runs) {
    const { item, lay } = p.options[run.option];
    makes[item] += run.columns * run.rows;
    height = Math.max(height, run.rows * lay.height);
  }
  return { height, runs, makes };
}

export const lengthOf = (plan: readonly Batch[]): Length =>
  plan.reduce((total, { pattern, times }) => total + pattern.height * times, 0);

/** A bound, raised to the next length that strips of these heights can have. */
export const raiseToUnit = (p: StripProblem, bound: Length): Length =>
  p.unit > 0 ? Math.ceil(bound / p.unit - 1e-6) * p.unit : bound;
