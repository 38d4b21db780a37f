import type { Lag } from "./period.ts";
import type { Profile } from "./profile.ts";

/** Repeats further apart than two must agree no better than neighbors; by this much, to allow noise. */
const RATIO = 0.9;
/**
 * The largest difference between one repeat and the next that goes unseen, in standard deviations; a
 * short repeat falls on the pixels a little differently each time, which is no difference.
 */
const unseen = (period: number): number => Math.max(0.08, 1.5 / period);

/**
 * Is every second (or third) repeat a little different, so that the true repeat is two or three of
 * them? In a true repeat, agreement falls with distance, because light and weave change; where it
 * rises at the second or third, and the difference is large enough to see, the repeat is in doubt.
 */
export function repeatsAlternate(p: Profile, period: number, peaks: readonly Lag[]): boolean {
  const lost = (times: number): number | undefined => {
    const near = peaks.filter((q) => Math.abs(q.at - times * period) < 0.1 * period);
    return near.length > 0 ? 1 - Math.max(...near.map((q) => q.agrees)) : undefined;
  };
  const one = lost(1);
  if (one === undefined) return false;
  return [2, 3].some((times) => {
    const far = lost(times);
    return far !== undefined && far < RATIO * one && turnByTurn(p, period, times) > unseen(period);
  });
}

/**
 * The largest difference, over three neighboring phases, between the means of every `times`-th
 * repeat begun at the first and those begun later; in standard deviations of the profile.
 */
function turnByTurn(p: Profile, period: number, times: number): number {
  const phases = Math.max(8, Math.floor(period));
  const weight = Array.from({ length: times }, () => new Float64Array(phases));
  const sums = weight.map(() => p.values.map(() => new Float64Array(phases)));
  let square = 0;
  for (let i = 0; i < p.length; i++) {
    const turn = Math.floor(i / period) % times;
    const at = ((i / period) % 1) * phases;
    const low = Math.floor(at) % phases;
    const high = (low + 1) % phases;
    const share = at - Math.floor(at);
    weight[turn][low] += 1 - share;
    weight[turn][high] += share;
    p.values.forEach((v, c) => {
      sums[turn][c][low] += v[i] * (1 - share);
      sums[turn][c][high] += v[i] * share;
      square += v[i] * v[i];
    });
  }
  const deviation = Math.sqrt(square / p.length);
  const mean = (turn: number, c: number, k: number): number =>
    sums[turn][c][k % phases] / (weight[turn][k % phases] || 1);
  let largest = 0;
  for (let turn = 1; turn < times; turn++)
    for (let k = 0; k < phases; k++) {
      const gap = p.values.map(
        (_, c) => [0, 1, 2].reduce((s, d) => s + mean(turn, c, k + d) - mean(0, c, k + d), 0) / 3,
      );
      largest = Math.max(largest, Math.hypot(...gap) / deviation);
    }
  return largest;
}
