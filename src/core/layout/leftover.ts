import type { Length } from "../measure/index.ts";
import { layerWidth } from "./lay.ts";
import type { Leftover, Placement, Stock, Strip } from "./types.ts";

/** A leftover smaller than this part of the width (an inch at 40 in) is not worth keeping. */
const KEEP = 1 / 40;

/** Rectangles a layout leaves: strip ends, and what is trimmed above lower pieces. Largest first. */
export function leftoversOf(strips: readonly Strip[], stock: Stock): Leftover[] {
  const found = new Map<string, Leftover>();
  const add = (width: Length, height: Length, count: number) => {
    if (Math.min(width, height) < stock.width * KEEP) return;
    const key = `${width.toFixed(6)} ${height.toFixed(6)}`;
    const had = found.get(key)?.count ?? 0;
    found.set(key, { width, height, count: had + count });
  };
  for (const strip of strips) {
    const copies = strip.times * strip.layers;
    const room = layerWidth(stock, strip.layers);
    for (const column of columnsOf(strip.runs)) {
      const top = Math.max(...column.map((run) => run.y + run.height));
      const width = Math.max(...column.map((run) => run.width));
      add(width, strip.height - top, copies);
    }
    const end = Math.max(0, ...strip.runs.map((run) => run.x + run.width));
    // The two ends at a fold hang together: one piece of twice the width.
    if (strip.layers === 2) add(2 * (room - end), strip.height, strip.times);
    else add(room - end, strip.height, strip.times);
  }
  return [...found.values()].sort(
    (a, b) => b.width * b.height - a.width * a.height || b.width - a.width,
  );
}

/** Runs stacked over one another, by where they start. */
export function columnsOf(runs: readonly Placement[]): Placement[][] {
  const byX = new Map<Length, Placement[]>();
  for (const run of runs) byX.set(run.x, [...(byX.get(run.x) ?? []), run]);
  return [...byX.values()];
}
