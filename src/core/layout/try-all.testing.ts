import type { Demand } from "./types.ts";

/**
 * Least length for a few rectangles by trying every content of every strip, remembered by what
 * remains. Shares no code with the planner.
 */
export function shortestByTrying(demands: readonly Demand[], width: number): number {
  const ways = demands.flatMap(({ shape, turns }, item) => {
    const upright = { item, w: shape.first, h: shape.height };
    return turns === "quarter" ? [upright, { item, w: shape.height, h: shape.first }] : [upright];
  });
  const known = new Map<string, number>();

  function least(left: readonly number[]): number {
    if (left.every((n) => n === 0)) return 0;
    const key = left.join(",");
    const had = known.get(key);
    if (had !== undefined) return had;
    let best = Number.POSITIVE_INFINITY;
    const fill = (way: number, room: number, height: number, rest: readonly number[]): void => {
      if (way === ways.length) {
        if (height > 0) best = Math.min(best, height + least(rest));
        return;
      }
      const { item, w, h } = ways[way];
      const after = [...rest];
      for (let k = 0; k === 0 || (k * w <= room + 1e-9 && after[item] >= 0); k++) {
        fill(way + 1, room - k * w, k > 0 ? Math.max(height, h) : height, after);
        if (after[item] === 0) break;
        after[item]--;
      }
    };
    fill(0, width, 0, left);
    known.set(key, best);
    return best;
  }
  return least(demands.map((d) => d.count));
}
