import type { Demand, FabricLayout, Placement, Sheet, SheetPlan, Stock, Strip } from "./types.ts";

/** What is wrong with a layout, found by cutting it again on paper. */
export interface Fault {
  readonly what:
    | "strip-out-of-place"
    | "strip-off-fabric"
    | "run-off-strip"
    | "run-crosses-fold"
    | "run-wrong-size"
    | "run-may-not-turn"
    | "runs-overlap"
    | "not-three-stages"
    | "wrong-count"
    | "joined-too-short"
    | "unknown-demand"
    | "wrong-length"
    | "bound-above-plan"
    | "plan-above-handbook"
    | "off-register"
    | "unknown-sheet"
    | "too-many-sheets";
  readonly place: string;
  readonly needed?: number;
  readonly found?: number;
}

/** Twice the planner's allowance for float noise, on lengths up to a bolt. */
const CLOSE = 1e-6;
const same = (a: number, b: number) => Math.abs(a - b) <= CLOSE;

/**
 * Recounts a layout from its drawing alone. Shares no code with the planner: every strip, run and
 * copy is measured against the demands and the fabric, and everything that is wrong comes back.
 */
export function replay(
  layout: FabricLayout,
  demands: readonly Demand[],
  stock: Stock,
): readonly Fault[] {
  const known = new Map(demands.map((d) => [d.id, d]));
  const faults: Fault[] = [];
  let from = 0;
  layout.strips.forEach((strip, i) => {
    const place = `strip ${i + 1}`;
    if (!same(strip.from, from))
      faults.push({ what: "strip-out-of-place", place, needed: from, found: strip.from });
    from += strip.height * strip.times;
    faults.push(...stripFaults(strip, place, known, stock));
  });
  if (!same(layout.length, from))
    faults.push({
      what: "wrong-length",
      place: layout.fabricId,
      needed: from,
      found: layout.length,
    });
  if (layout.lowerBound > layout.length + CLOSE)
    faults.push({ what: "bound-above-plan", place: layout.fabricId, found: layout.lowerBound });
  if (layout.length > layout.handbook + CLOSE)
    faults.push({ what: "plan-above-handbook", place: layout.fabricId, found: layout.length });
  return [
    ...faults,
    ...registerFaults(layout, known),
    ...countFaults(layout, demands, stock.fabricId),
  ];
}

/** Every registered copy starts at its phase of a repeat; one of several layers at any repeat. */
function registerFaults(layout: FabricLayout, known: ReadonlyMap<string, Demand>): Fault[] {
  const whole = (x: number) => same(x, Math.round(x));
  return layout.strips.flatMap((strip, i) =>
    strip.runs.flatMap((run): Fault[] => {
      const demand = known.get(run.demandId);
      if (!demand?.register) return [];
      const { axis, period, phase } = demand.register;
      const place = `strip ${i + 1} ${run.demandId}`;
      const start = axis === "along" ? strip.from + run.y : run.x;
      const fine =
        axis === "along" && demand.layers > 1
          ? whole(strip.from / period) && whole(strip.height / period)
          : whole((start - phase) / period) &&
            (axis === "across" || strip.times === 1 || whole(strip.height / period));
      return fine ? [] : [{ what: "off-register", place, needed: phase, found: start % period }];
    }),
  );
}

function stripFaults(
  strip: Strip,
  place: string,
  known: ReadonlyMap<string, Demand>,
  stock: Stock,
  sheetTurned = false,
): Fault[] {
  const faults: Fault[] = [];
  if (!(strip.height > 0 && strip.times >= 1 && Number.isInteger(strip.times)))
    faults.push({ what: "strip-out-of-place", place, found: strip.times });
  if (strip.layers === 2 && stock.folds === 0)
    faults.push({ what: "run-crosses-fold", place, needed: 1, found: 2 });
  const edge = strip.layers === 2 ? stock.width / 2 : stock.width;
  for (const run of strip.runs) {
    const demand = known.get(run.demandId);
    if (!demand || demand.fabricId !== stock.fabricId) {
      faults.push({ what: "unknown-demand", place: run.demandId });
      continue;
    }
    if (run.x < -CLOSE || run.x + run.width > edge + CLOSE)
      faults.push({
        what: strip.layers === 2 ? "run-crosses-fold" : "run-off-strip",
        place: `${place} ${run.demandId}`,
        needed: run.x + run.width,
        found: edge,
      });
    if (run.y < -CLOSE || run.y + run.height > strip.height + CLOSE)
      faults.push({
        what: "run-off-strip",
        place: `${place} ${run.demandId}`,
        needed: run.y + run.height,
        found: strip.height,
      });
    faults.push(...sizeFaults(run, demand, place, sheetTurned));
  }
  return [...faults, ...pairFaults(strip, place)];
}

function sizeFaults(run: Placement, demand: Demand, place: string, sheetTurned: boolean): Fault[] {
  const { first, pitch, height } = demand.shape;
  const at = `${place} ${run.demandId}`;
  if (run.segment) {
    const fine = demand.joinsAllowed && run.copies === 1 && same(run.height, height);
    return fine ? [] : [{ what: "run-wrong-size", place: at, needed: height, found: run.height }];
  }
  if (!mayLie(run, demand, sheetTurned)) return [{ what: "run-may-not-turn", place: at }];
  if (demand.register?.axis === "across") {
    const fine = same(run.width, height) && same(run.height, first + (run.copies - 1) * pitch);
    return fine ? [] : [{ what: "run-wrong-size", place: at, needed: height, found: run.width }];
  }
  const long = run.turned ? run.copies * height : first + (run.copies - 1) * pitch;
  const tall = run.turned ? first : height;
  const fine = run.copies >= 1 && Number.isInteger(run.copies);
  if (!fine || !same(run.width, long))
    return [{ what: "run-wrong-size", place: at, needed: long, found: run.width }];
  if (!same(run.height, tall))
    return [{ what: "run-wrong-size", place: at, needed: tall, found: run.height }];
  return [];
}

/** On a sheet cut along its length everything lies a quarter turned, so the rules change sides. */
function mayLie(run: Placement, demand: Demand, sheetTurned: boolean): boolean {
  const { kind } = demand.shape;
  if (demand.register?.axis === "across") return run.turned;
  const free = demand.turns === "quarter" && !demand.up;
  if (kind === "nested") return !run.turned && (free || !sheetTurned);
  if (kind === "along") return run.turned !== sheetTurned;
  return free || run.turned === sheetTurned;
}

/** No two runs overlap, and crosscuts through the whole strip part the columns. */
function pairFaults(strip: Strip, place: string): Fault[] {
  const faults: Fault[] = [];
  const runs = strip.runs;
  for (let i = 0; i < runs.length; i++)
    for (let j = i + 1; j < runs.length; j++) {
      const a = runs[i];
      const b = runs[j];
      const overX = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
      const overY = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
      const at = `${place} ${a.demandId} ${b.demandId}`;
      if (overX > CLOSE && overY > CLOSE)
        faults.push({ what: "runs-overlap", place: at, found: overX });
      else if (overX > CLOSE && !same(a.x, b.x))
        faults.push({ what: "not-three-stages", place: at });
    }
  return faults;
}

function countFaults(
  layout: Pick<FabricLayout, "strips" | "unplaced">,
  demands: readonly Demand[],
  fabricId: string,
): Fault[] {
  const made = new Map<string, { copies: number; length: number; spare: number; joins: number }>();
  const at = (id: string) => {
    const had = made.get(id) ?? { copies: 0, length: 0, spare: 0, joins: 0 };
    made.set(id, had);
    return had;
  };
  for (const strip of layout.strips)
    for (const run of strip.runs) {
      const m = at(run.demandId);
      if (run.segment) {
        m.length += run.width * strip.times * strip.layers;
        m.joins += strip.times * strip.layers;
      } else if (run.mirrorId) {
        m.copies += run.copies * strip.times;
        at(run.mirrorId).copies += run.copies * strip.times;
      } else m.copies += run.copies * strip.times * strip.layers;
      if (strip.layers === 2) m.spare = 1;
    }
  const missing = new Map(layout.unplaced.map((u) => [u.demandId, u.count]));
  return demands.flatMap((d): Fault[] => {
    if (d.fabricId !== fabricId) return [];
    const m = at(d.id);
    const needed = Math.max(0, d.count) - (missing.get(d.id) ?? 0);
    if (m.joins > 0) {
      const whole = needed * d.shape.first + (m.joins - 1) * (d.joinLoss ?? 0);
      return m.length >= whole - CLOSE * Math.max(1, m.joins)
        ? []
        : [{ what: "joined-too-short", place: d.id, needed: whole, found: m.length }];
    }
    // A fabric cut double gives an even number, layers a multiple: so many may be over.
    return m.copies >= needed && m.copies <= needed + Math.max(m.spare, d.layers - 1)
      ? []
      : [{ what: "wrong-count", place: d.id, needed, found: m.copies }];
  });
}

/** The same for a plan on pieces of fabric: each fits its piece, and no more pieces than there are. */
export function replaySheets(
  plan: SheetPlan,
  demands: readonly Demand[],
  sheets: readonly Sheet[],
): readonly Fault[] {
  const known = new Map(demands.map((d) => [d.id, d]));
  const used = new Map<string, number>();
  const faults: Fault[] = [];
  plan.sheets.forEach((cut, i) => {
    const place = `${cut.sheetId} ${i + 1}`;
    const sheet = sheets.find((s) => s.id === cut.sheetId);
    if (!sheet || (cut.turned && !sheet.eitherWay)) {
      faults.push({ what: "unknown-sheet", place });
      return;
    }
    used.set(sheet.id, (used.get(sheet.id) ?? 0) + cut.times);
    const [width, length] = cut.turned ? [sheet.length, sheet.width] : [sheet.width, sheet.length];
    const stock: Stock = { fabricId: sheet.fabricId, width, folds: 0 };
    let from = 0;
    for (const strip of cut.strips) {
      if (!same(strip.from, from)) faults.push({ what: "strip-out-of-place", place, needed: from });
      from += strip.height * strip.times;
      faults.push(...stripFaults(strip, place, known, stock, cut.turned));
    }
    if (from > length + CLOSE)
      faults.push({ what: "strip-off-fabric", place, needed: from, found: length });
  });
  for (const sheet of sheets) {
    const times = used.get(sheet.id) ?? 0;
    if (times > sheet.count)
      faults.push({ what: "too-many-sheets", place: sheet.id, needed: times, found: sheet.count });
  }
  const strips = plan.sheets.flatMap((cut) =>
    cut.strips.map((s) => ({ ...s, times: s.times * cut.times })),
  );
  return [...faults, ...countFaults({ strips, unplaced: plan.unplaced }, demands, plan.fabricId)];
}
