import type { Length } from "../measure/index.ts";
import { copiesIn, laysOf, NOISE, runLength } from "./lay.ts";
import type { Demand, Placement, Stock, Strip } from "./types.ts";

/** Whole repeats that hold this length. */
const repeats = (length: Length, period: Length): number =>
  Math.max(1, Math.ceil(length / period - NOISE));

/**
 * Strips for a demand registered to a repeat; undefined when it does not fit. They come first from
 * the straightened end, which lies at the start of a repeat, so that every one starts at a repeat.
 *
 * along: the repeat runs along the fabric. One layer: each strip begins at its phase of a repeat,
 * so each takes whole repeats. N layers: N repeats lie on one another and each cut gives N alike,
 * anywhere in the repeat, so a stack takes N whole repeats. Where one place alone will do, a stack
 * gives one cut for each time that place comes across the fabric: for certain, one fewer than would
 * fit at best, since how the repeat falls between the selvages is not known.
 * across: the repeat runs across the width (stripes along the selvage). Strips lie along the
 * length, side by side at their phase, each as long as its share of the copies.
 */
export function registeredStrips(demand: Demand, stock: Stock): Strip[] | undefined {
  if (!demand.register || demand.count < 1) return undefined;
  if (demand.register.axis === "across") return sideBySide(demand, stock);
  const layered = demand.layers > 1 || demand.register.everyAcross !== undefined;
  return layered ? inLayers(demand, stock) : atPhase(demand, stock);
}

function atPhase(demand: Demand, stock: Stock): Strip[] | undefined {
  const { period, phase } = demand.register!;
  const choices = laysOf(demand).flatMap((lay) => {
    const per = copiesIn(lay, stock.width);
    if (per === 0) return [];
    const height = repeats(phase + lay.height, period) * period;
    return [{ lay, per, height, length: Math.ceil(demand.count / per) * height }];
  });
  if (choices.length === 0) return undefined;
  const { lay, per, height } = choices.reduce((a, b) => (b.length < a.length ? b : a));
  const strip = (copies: number, times: number): Strip => ({
    from: 0,
    height,
    times,
    layers: 1,
    runs: [
      run(
        demand,
        { y: phase, width: runLength(lay, copies), height: lay.height, copies },
        lay.turned,
      ),
    ],
  });
  const full = Math.floor(demand.count / per);
  const rest = demand.count - full * per;
  return [...(full > 0 ? [strip(per, full)] : []), ...(rest > 0 ? [strip(rest, 1)] : [])];
}

function inLayers(demand: Demand, stock: Stock): Strip[] | undefined {
  const { period, everyAcross } = demand.register!;
  const lay = laysOf(demand)[0];
  const fitting = copiesIn(lay, stock.width);
  if (fitting === 0) return undefined;
  const placed = everyAcross !== undefined;
  const per = placed ? Math.max(1, surely(lay.first, everyAcross, stock.width)) : fitting;
  const height = repeats(lay.height, period) * period;
  const rows = placed ? 1 : Math.max(1, Math.floor(height / lay.height + NOISE));
  const sets = Math.ceil(demand.count / demand.layers);
  const stack = (cuts: number, times: number): Strip => ({
    from: 0,
    height,
    times: times * demand.layers,
    layers: 1,
    runs: Array.from({ length: Math.ceil(cuts / per) }, (_, row) => {
      const copies = Math.min(per, cuts - row * per);
      const size = { width: runLength(lay, copies), height: lay.height, copies };
      return run(demand, { y: row * lay.height, ...size }, lay.turned);
    }),
  });
  const full = Math.floor(sets / (per * rows));
  const rest = sets - full * per * rows;
  return [...(full > 0 ? [stack(per * rows, full)] : []), ...(rest > 0 ? [stack(rest, 1)] : [])];
}

/** How often a place that comes every so far surely lies whole within the width. */
const surely = (first: Length, every: Length, width: Length): number =>
  Math.floor((width - first) / every + NOISE);

function sideBySide(demand: Demand, stock: Stock): Strip[] | undefined {
  const { period, phase } = demand.register!;
  const { first, pitch, height } = demand.shape;
  const step = repeats(height, period) * period;
  const across = copiesIn(
    { first: height, pitch: step, height: 0, turned: true },
    stock.width - phase,
  );
  if (across === 0) return undefined;
  const each = Math.ceil(demand.count / across);
  const runs: Placement[] = [];
  for (let left = demand.count, k = 0; left > 0; k++) {
    const copies = Math.min(each, left);
    const size = { y: 0, width: height, height: first + (copies - 1) * pitch, copies };
    runs.push({ ...run(demand, size, true), x: phase + k * step });
    left -= copies;
  }
  return [{ from: 0, height: runs[0].height, times: 1, layers: 1, runs }];
}

const run = (
  demand: Demand,
  at: Pick<Placement, "y" | "width" | "height" | "copies">,
  turned: boolean,
): Placement => ({ demandId: demand.id, x: 0, ...at, turned });
