import type { Finding } from "../findings/index.ts";
import type { BoltOptions } from "./bolt.ts";
import { planBolt } from "./bolt.ts";
import type { Cutting } from "./draw.ts";
import { stripOf, whole, without } from "./draw.ts";
import { placeStrips } from "./finish.ts";
import { leftoversOf } from "./leftover.ts";
import { replaySheets } from "./replay.ts";
import type { SheetPattern, SheetProblem } from "./sheet-problem.ts";
import { sheetProblem } from "./sheet-problem.ts";
import type { SheetBatch, SheetRelaxed } from "./sheets.ts";
import { afterSheets, chooseSheets, costOfSheets, diveSheets, relaxSheets } from "./sheets.ts";
import type { Demand, FabricLayout, Sheet, SheetLayout, SheetPlan, Stock, Strip } from "./types.ts";

/** Without a solver the plan is the rounded one. */
export interface InHandOptions extends BoltOptions {
  /** What one copy of each demand costs elsewhere; when not said, nothing may be left uncut. */
  readonly elsewhere?: readonly number[];
}

const NODES = 100;
const SLOW = 0.7;

/**
 * Cuts one fabric's demands from pieces of it: quarters, leftovers, bolt ends, whole bolts, each
 * kind as many as there are, at the least total cost of the pieces used. What they cannot give is
 * listed as unplaced, with a finding.
 */
export function planPieces(
  demands: readonly Demand[],
  sheets: readonly Sheet[],
  options: InHandOptions = {},
): SheetPlan {
  const fabricId = sheets[0]?.fabricId ?? demands[0]?.fabricId ?? "";
  const own = demands.filter((d) => d.fabricId === fabricId && d.count > 0);
  const mine = sheets.filter((s) => s.fabricId === fabricId && s.count >= 1);
  const p = sheetProblem(own, mine, options.stacks ?? false, options.elsewhere);
  const relaxed = relaxSheets(p, p.cuts, p.limits, "down");
  const plan = bestBatches(p, options);
  const layout = describe(p, plan, relaxed, fabricId, options.elsewhere === undefined);
  const faults = replaySheets(layout, own, mine);
  if (faults.length > 0)
    throw new RangeError(`a plan on pieces must recount, got ${JSON.stringify(faults[0])}`);
  return layout;
}

function bestBatches(p: SheetProblem, options: InHandOptions): SheetBatch[] {
  if (p.kinds.length === 0) return [];
  const pool = new Map<string, SheetPattern>();
  const start = relaxSheets(p, p.cuts, p.limits, "up", pool);
  const whole = diveSheets(p, start, pool);
  if (!options.solver || options.signal?.aborted) return whole;
  // Keeping fewer whole sheets at a time meets other patterns for the choice to draw on.
  const slow = diveSheets(p, start, pool, SLOW);
  const first = withMissing(p, slow) < withMissing(p, whole) ? slow : whole;
  const stop = () => options.signal?.aborted === true;
  const nodes = options.nodes ?? NODES;
  return chooseSheets(p, first, pool, { solver: options.solver, nodes, stop });
}

/** What the sheets count, and what is left uncut. */
const withMissing = (p: SheetProblem, plan: readonly SheetBatch[]): number =>
  afterSheets(p, plan).cuts.reduce((t, n, i) => t + n * p.missing[i], costOfSheets(plan));

function describe(
  p: SheetProblem,
  plan: readonly SheetBatch[],
  relaxed: SheetRelaxed,
  fabricId: string,
  must: boolean,
): SheetPlan {
  const { cuts: short } = afterSheets(p, plan);
  const unplaced = p.demands.flatMap((d, i) =>
    short[i] > 0 ? [{ demandId: d.id, count: short[i] }] : [],
  );
  const cost = costOfSheets(plan);
  const going = withMissing(p, plan) - cost;
  const lowerBound = Math.max(0, Math.min(cost, relaxed.bound - going));
  return {
    fabricId,
    sheets: drawSheets(p, plan),
    cost,
    lowerBound,
    proven: cost + going - relaxed.bound < 1e-6 * Math.max(1, cost),
    unplaced,
    findings: must && unplaced.length > 0 ? [notEnough(p, short, fabricId)] : [],
  };
}

function notEnough(p: SheetProblem, short: readonly number[], fabricId: string): Finding {
  const total = (xs: readonly number[]) => xs.reduce((a, b) => a + b, 0);
  const names = p.demands.filter((_, i) => short[i] > 0).map((d) => d.id);
  return {
    code: "not-enough-in-hand",
    severity: "blocks",
    place: fabricId,
    needed: total(p.cuts),
    found: total(p.cuts) - total(short),
    unit: "count",
    words: {
      fabric: fabricId,
      pieces: names.join(", "),
      works: `Still to cut: ${names.join(", ")}.`,
    },
  };
}

/** Sheets to scale; what is made too much of is left out of the last sheets that hold it. */
function drawSheets(p: SheetProblem, plan: readonly SheetBatch[]): SheetLayout[] {
  const spare = p.cuts.map((n, i) =>
    Math.max(
      0,
      plan.reduce((t, b) => t + b.times * b.pattern.makes[i], -n),
    ),
  );
  return [...plan]
    .reverse()
    .flatMap((batch) => drawBatch(batch, spare))
    .reverse();
}

function drawBatch(batch: SheetBatch, spare: number[]): SheetLayout[] {
  const { pattern } = batch;
  const out: SheetLayout[] = [];
  let times = batch.times;
  while (times > 0 && pattern.makes.some((n, i) => n > 0 && spare[i] > 0)) {
    const cut = pattern.strips.map((strip) => {
      const cuttings = without(pattern.kind.strips, strip, spare);
      for (const { run, copies } of cuttings)
        spare[pattern.kind.strips.options[run.option].item] -= run.columns * run.rows - copies;
      return cuttings.filter((c) => c.copies > 0);
    });
    out.push(drawSheet(pattern, cut, 1));
    times--;
  }
  const full = pattern.strips.map((s) => s.runs.map(whole));
  return times > 0 ? [...out, drawSheet(pattern, full, times)] : out;
}

function drawSheet(
  { kind }: SheetPattern,
  cut: readonly (readonly Cutting[])[],
  times: number,
): SheetLayout {
  const strips = cut.filter((c) => c.length > 0).map((c) => stripOf(kind.strips, c, 1, 1));
  const placed = placeStrips(alike(strips));
  const width = kind.turned ? kind.sheet.length : kind.sheet.width;
  const used = placed.reduce((t, s) => t + s.height * s.times, 0);
  const stock = { fabricId: kind.sheet.fabricId, width, folds: 0 as const };
  const end = { width, height: kind.length - used, count: 1 };
  return {
    sheetId: kind.sheet.id,
    turned: kind.turned,
    times,
    width,
    length: kind.length,
    strips: placed,
    leftovers: [...(end.height > width / 40 ? [end] : []), ...leftoversOf(placed, stock)],
  };
}

/** Equal strips told once, with how often. */
function alike(strips: readonly Strip[]): Strip[] {
  const byRuns = new Map<string, Strip>();
  for (const strip of strips) {
    const key = JSON.stringify(strip.runs);
    const had = byRuns.get(key);
    byRuns.set(key, had ? { ...had, times: had.times + 1 } : strip);
  }
  return [...byRuns.values()];
}

export interface FromHandAndBolt {
  readonly pieces: SheetPlan;
  readonly bolt: FabricLayout;
  /** What remained for the bolt. */
  readonly remaining: readonly Demand[];
}

/** What is joined, registered to a repeat or cut along the selvage needs the run of the bolt. */
const fromPieces = (d: Demand): boolean =>
  !d.joinsAllowed && !d.register && d.shape.kind !== "along";

/** Uses up the pieces in hand where they save most of the bolt, then cuts the rest from it. */
export function planInHandFirst(
  demands: readonly Demand[],
  stock: Stock,
  inHand: readonly Sheet[],
  options: Omit<InHandOptions, "elsewhere"> = {},
): FromHandAndBolt {
  const own = demands.filter((d) => d.fabricId === stock.fabricId && d.count > 0);
  const cuttable = own.filter(fromPieces);
  // On the bolt a copy costs about its area; a piece in hand hardly anything.
  const elsewhere = cuttable.map(({ shape }) => shape.pitch * shape.height);
  const cheap = inHand.map((s) => ({ ...s, cost: (s.width * s.length) / 1000 }));
  const pieces = planPieces(cuttable, cheap, { ...options, elsewhere });
  const left = new Map(pieces.unplaced.map((u) => [u.demandId, u.count]));
  const remaining = own.flatMap((d) => {
    const count = fromPieces(d) ? (left.get(d.id) ?? 0) : d.count;
    return count > 0 ? [{ ...d, count }] : [];
  });
  return { pieces, bolt: planBolt(remaining, stock, options), remaining };
}
