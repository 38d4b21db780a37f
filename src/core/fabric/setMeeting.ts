import type { Length, Step } from "../measure/index.ts";
import { seamLines, setWidth } from "./stripSet.ts";
import { NARROW_RING_INCHES } from "./stripSetFindings.ts";

/**
 * The least distance between rings of up and down wedges of one set, sewn side by side. Up seam y at
 * radius a + SA - y, down seam z at z - p: they lie |W - y - z| apart, W the set's sewn width.
 */
export function leastSetMiss(cuts: readonly Length[], seam: Length): Length | undefined {
  const lines = seamLines(cuts, seam);
  const width = setWidth(cuts, seam);
  const gaps = lines.flatMap((y) => lines.map((z) => Math.abs(width - y - z)));
  return gaps.length > 0 ? Math.min(...gaps) : undefined;
}

/** The largest distance between a ring and its partner, the ring as far from the other edge. */
export function mostSetMiss(cuts: readonly Length[], seam: Length): Length {
  const lines = seamLines(cuts, seam);
  const width = setWidth(cuts, seam);
  const partner = (i: number): Length => lines[lines.length - 1 - i];
  return Math.max(0, ...lines.map((y, i) => Math.abs(width - y - partner(i))));
}

/**
 * Cut widths whose rings meet all round when up and down wedges are sewn side by side: each strip
 * and its mirror take the mean of the two. Rings match in color only where the fabrics mirror too.
 */
export const cutsThatMeet = (cuts: readonly Length[]): Length[] =>
  cuts.map((c, i) => (c + cuts[cuts.length - 1 - i]) / 2);

/** The most steps moved from strip to strip in looking for a miss. */
const MOST_STEPS = 12;

interface Moved {
  readonly cuts: readonly Length[];
  readonly steps: number;
  readonly least: Length;
}

/**
 * The smallest change, in steps moved from one strip to another (the sum stays), after which no two
 * rings of up and down wedges lie nearer than `least`; the largest miss among equals. No strip shows
 * less than a quarter inch. Undefined when no change of up to two moves does.
 */
export function cutsThatMiss(
  cuts: readonly Length[],
  seam: Length,
  step: Step,
  least: Length,
): readonly Length[] | undefined {
  const size = step.size.valueOf();
  const narrow = step.unit === "in" ? NARROW_RING_INCHES : NARROW_RING_INCHES * 25.4;
  const wide = (c: Length, i: number): boolean => {
    const seams = i === 0 || i === cuts.length - 1 ? 1 : 2;
    return c - seams * seam >= narrow + (seams === 1 ? seam : 0) - 1e-9;
  };
  const judge = (moved: readonly Length[], steps: number): Moved | undefined => {
    if (!moved.every(wide)) return undefined;
    const miss = leastSetMiss(moved, seam);
    return miss !== undefined && miss >= least - 1e-9
      ? { cuts: moved, steps, least: miss }
      : undefined;
  };
  const better = (a: Moved | undefined, b: Moved | undefined): Moved | undefined => {
    if (!a || !b) return a ?? b;
    if (b.steps !== a.steps) return b.steps < a.steps ? b : a;
    return b.least > a.least + 1e-9 ? b : a;
  };
  let best = judge(cuts, 0);
  const singles = transfers(cuts.length, size);
  for (const one of singles) best = better(best, judge(plus(cuts, one.change), one.steps));
  if (best || cuts.length > 6) return best?.cuts;
  for (const one of singles)
    for (const two of singles) {
      const steps = one.steps + two.steps;
      if (steps > MOST_STEPS) continue;
      best = better(best, judge(plus(plus(cuts, one.change), two.change), steps));
    }
  return best?.cuts;
}

const plus = (a: readonly Length[], b: readonly Length[]): Length[] => a.map((x, i) => x + b[i]);

function transfers(count: number, size: Length): { change: Length[]; steps: number }[] {
  const out: { change: Length[]; steps: number }[] = [];
  for (let from = 0; from < count; from++)
    for (let to = 0; to < count; to++) {
      if (from === to) continue;
      for (let steps = 1; steps <= MOST_STEPS; steps++) {
        const change = new Array<Length>(count).fill(0);
        change[from] = -steps * size;
        change[to] = steps * size;
        out.push({ change, steps });
      }
    }
  return out;
}
