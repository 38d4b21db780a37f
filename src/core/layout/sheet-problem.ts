import type { Length } from "../measure/index.ts";
import type { CoverColumn } from "./covering.ts";
import { priceStrips } from "./knapsack.ts";
import type { Lay } from "./lay.ts";
import { fits, laysOf } from "./lay.ts";
import type { Pattern, StripProblem } from "./problem.ts";
import { commonStep, patternOf, runCells, stripProblem } from "./problem.ts";
import type { Demand, Sheet } from "./types.ts";

/** One way of cutting one kind of sheet: strips across its width, or (turned) along its length. */
export interface SheetKind {
  readonly sheet: Sheet;
  readonly turned: boolean;
  /** What strips of it may hold. */
  readonly strips: StripProblem;
  /** Room for strips one after another. */
  readonly length: Length;
  readonly cells: number;
  /** Its place among the limited sheets. */
  readonly limit?: number;
  readonly cost: number;
}

/** Strips that together fit one sheet. */
export interface SheetPattern {
  readonly kind: SheetKind;
  readonly strips: readonly Pattern[];
  readonly makes: readonly number[];
}

export interface SheetProblem {
  readonly demands: readonly Demand[];
  readonly cuts: readonly number[];
  readonly kinds: readonly SheetKind[];
  readonly limits: readonly number[];
  /** What going without one cut of an item counts. */
  readonly missing: readonly number[];
}

const FINE_CELLS = 4096;

export function sheetProblem(
  demands: readonly Demand[],
  sheets: readonly Sheet[],
  stacks: boolean,
  elsewhere?: readonly number[],
): SheetProblem {
  const limited = sheets.filter((s) => Number.isFinite(s.count));
  const kinds = sheets.flatMap((sheet) => {
    const at = limited.indexOf(sheet);
    const limit = at < 0 ? undefined : at;
    const kind = (turned: boolean) => kindOf(demands, sheet, turned, limit, stacks);
    return sheet.eitherWay && sheet.width !== sheet.length
      ? [kind(false), kind(true)]
      : [kind(false)];
  });
  // Without another place to cut it, going without must count more than any sheet.
  const dearest = Math.max(1, ...kinds.map((k) => k.cost));
  const largest = Math.max(...demands.map(areaEach));
  return {
    demands,
    cuts: demands.map((d) => Math.max(0, d.count)),
    kinds: kinds.filter((k) => k.strips.options.length > 0),
    limits: limited.map((s) => s.count),
    missing: elsewhere ?? demands.map((d) => dearest * (2 + (20 * areaEach(d)) / largest)),
  };
}

const areaEach = ({ shape }: Demand): number => shape.pitch * shape.height;

export const costOf = (sheet: Sheet): number => sheet.cost ?? sheet.width * sheet.length;

function kindOf(
  demands: readonly Demand[],
  sheet: Sheet,
  turned: boolean,
  limit: number | undefined,
  stacks: boolean,
): SheetKind {
  const [width, length] = turned ? [sheet.length, sheet.width] : [sheet.width, sheet.length];
  const jobs = demands.map((demand) => ({
    demandId: demand.id,
    cuts: demand.count,
    layers: 1 as const,
    lays: laysOn(demand, turned).filter((l) => fits(l.first, width) && fits(l.height, length)),
    segment: false,
  }));
  const stock = { fabricId: sheet.fabricId, width, folds: 0 as const };
  const strips = stripProblem(jobs, stock, 1, stacks);
  const step = commonStep([length, ...strips.heights]);
  const cells = step > 0 ? Math.min(FINE_CELLS, Math.round(length / step)) : FINE_CELLS;
  return { sheet, turned, strips, length, cells, limit, cost: costOf(sheet) };
}

/**
 * On a sheet cut the other way every lay lies a quarter turned: a piece that must keep its way on
 * the fabric lies across its strip, one that may turn lies as it likes, a nested run only when it
 * may turn.
 */
function laysOn(demand: Demand, turned: boolean): readonly Lay[] {
  const lays = laysOf(demand);
  if (!turned) return lays;
  const free = demand.turns === "quarter" && !demand.up;
  if (demand.shape.kind === "nested") return free ? lays : [];
  return lays.map((l) => ({
    first: l.height,
    pitch: l.height,
    height: l.first,
    turned: !l.turned,
  }));
}

export const sheetColumn = (pattern: SheetPattern): CoverColumn<SheetPattern> => ({
  cost: pattern.kind.cost,
  makes: pattern.makes,
  draws: pattern.kind.limit,
  what: pattern,
});

/** The strips worth most in one sheet, and what they are worth. */
export function bestSheet(
  kind: SheetKind,
  prices: readonly number[],
  wanted: readonly number[],
  way: "down" | "up",
): { pattern: SheetPattern; value: number } {
  const priced = priceStrips(kind.strips, prices, wanted, way).filter((s) => s.value > 0);
  const cellsOf = priced.map((s) => {
    const exact = (s.height / kind.length) * kind.cells;
    const near = Math.round(exact);
    if (Math.abs(exact - near) < 1e-6) return near;
    return way === "down" ? Math.floor(exact) : Math.ceil(exact);
  });
  const best = new Float64Array(kind.cells + 1);
  const taken = new Int16Array(kind.cells + 1).fill(-1);
  for (let x = 1; x <= kind.cells; x++) {
    best[x] = best[x - 1];
    priced.forEach((s, i) => {
      if (cellsOf[i] <= x && cellsOf[i] > 0 && best[x - cellsOf[i]] + s.value > best[x]) {
        best[x] = best[x - cellsOf[i]] + s.value;
        taken[x] = i;
      }
    });
  }
  const strips: Pattern[] = [];
  const made = new Map<number, Pattern>();
  for (let x = kind.cells; x > 0; ) {
    if (taken[x] < 0) {
      x--;
      continue;
    }
    const i = taken[x];
    if (!made.has(i)) made.set(i, priced[i].pattern());
    strips.push(made.get(i)!);
    x -= cellsOf[i];
  }
  return { pattern: sheetPattern(kind, strips), value: best[kind.cells] };
}

export function sheetPattern(kind: SheetKind, strips: readonly Pattern[]): SheetPattern {
  const makes = kind.strips.cuts.map((_, i) => strips.reduce((t, s) => t + s.makes[i], 0));
  return { kind, strips, makes };
}

/** Does it truly fit? A pattern made for the bound may be over by the rounding of its runs. */
export const sheetFits = ({ kind, strips }: SheetPattern): boolean =>
  fits(
    strips.reduce((t, s) => t + s.height, 0),
    kind.length,
  ) &&
  strips.every(
    (s) =>
      s.runs.reduce(
        (x, r) => x + runCells(kind.strips, kind.strips.options[r.option].lay, r.columns, "up"),
        0,
      ) <= kind.strips.cells,
  );

/**
 * A sheet without what is not wanted, its room filled again by the strips worth most for their
 * height: a pattern priced strip by strip may hold more of a piece than remains to be cut.
 */
export function refill(
  pattern: SheetPattern,
  prices: readonly number[],
  wanted: readonly number[],
): SheetPattern {
  const { kind } = pattern;
  const p = kind.strips;
  const left = [...wanted];
  const kept: Pattern[] = [];
  let room = kind.length;
  const keep = (strip: Pattern) => {
    const runs = strip.runs.flatMap((run) => {
      const { item } = p.options[run.option];
      const columns = Math.min(run.columns, Math.ceil(left[item] / run.rows));
      left[item] = Math.max(0, left[item] - columns * run.rows);
      return columns > 0 ? [{ ...run, columns }] : [];
    });
    if (runs.length === 0) return;
    const lean = patternOf(p, runs);
    kept.push(lean);
    room -= lean.height;
  };
  for (const strip of pattern.strips) if (strip.makes.every((n, i) => n <= left[i])) keep(strip);
  for (;;) {
    const priced = priceStrips(p, prices, left, "up").filter(
      (s) => s.value > 0 && fits(s.height, room),
    );
    if (priced.length === 0) return sheetPattern(kind, kept);
    keep(priced.reduce((a, b) => (b.value / b.height > a.value / a.height ? b : a)).pattern());
  }
}
