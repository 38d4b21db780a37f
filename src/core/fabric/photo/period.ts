import type { Profile } from "./profile.ts";

/** Agreement of a profile with itself moved by a lag: -1 to 1. */
export interface Lag {
  readonly at: number;
  readonly agrees: number;
}

/** A repeat shorter than this many pixels cannot be told from the weave and the noise. */
export const LEAST_PERIOD = 6;

/** Normalized over the overlap, all channels together, for whole lags up to `most`. */
export function selfAgreement(p: Profile, most: number): Float64Array {
  const out = new Float64Array(most + 1);
  for (let lag = 0; lag <= most; lag++) {
    let product = 0;
    let first = 0;
    let second = 0;
    for (const v of p.values)
      for (let i = 0; i + lag < p.length; i++) {
        product += v[i] * v[i + lag];
        first += v[i] * v[i];
        second += v[i + lag] * v[i + lag];
      }
    out[lag] = first > 0 && second > 0 ? product / Math.sqrt(first * second) : 0;
  }
  return out;
}

/** Local maxima, each placed between the whole lags by the parabola through its neighbors. */
export function peaksOf(agreement: Float64Array): Lag[] {
  const out: Lag[] = [];
  for (let i = Math.max(1, LEAST_PERIOD - 2); i + 1 < agreement.length; i++) {
    const [a, b, c] = [agreement[i - 1], agreement[i], agreement[i + 1]];
    if (b <= a || b < c) continue;
    const bend = a - 2 * b + c;
    const shift = bend < 0 ? (a - c) / (2 * bend) : 0;
    out.push({ at: i + shift, agrees: b - ((a - c) * shift) / 4 });
  }
  return out;
}

/**
 * How well a repeat of `period` tells the whole profile: the share of its variance between the
 * phases, less what as many phases would explain of noise. 1 is perfect.
 */
export function foldedShare(p: Profile, period: number): number {
  const phases = Math.max(4, Math.min(256, Math.floor(period)));
  if (phases >= p.length / 2) return 0;
  let between = 0;
  let total = 0;
  for (const v of p.values) {
    const sums = new Float64Array(phases);
    const weight = new Float64Array(phases);
    let mean = 0;
    for (const x of v) mean += x / p.length;
    v.forEach((x, i) => {
      const at = ((i / period) % 1) * phases;
      const low = Math.floor(at) % phases;
      const high = (low + 1) % phases;
      const share = at - Math.floor(at);
      sums[low] += (x - mean) * (1 - share);
      weight[low] += 1 - share;
      sums[high] += (x - mean) * share;
      weight[high] += share;
      total += (x - mean) ** 2;
    });
    sums.forEach((s, k) => {
      if (weight[k] > 0) between += (s * s) / weight[k];
    });
  }
  if (total === 0) return 0;
  const raw = Math.min(1, between / total);
  const chance = phases / p.length;
  return Math.max(0, (raw - chance) / (1 - chance));
}

/** The period near `around` that folds best, to a thousandth of a pixel or so. */
export function refined(p: Profile, around: number): number {
  // Beyond a quarter of a period over the whole length the fold falls apart: that bounds the search.
  const repeats = Math.max(1, p.length / around);
  let width = around / (3 * repeats);
  let best = around;
  let share = foldedShare(p, best);
  for (let round = 0; round < 5; round++) {
    for (let k = -5; k <= 5; k++) {
      const candidate = best + (k * width) / 5;
      const s = foldedShare(p, candidate);
      if (s > share) {
        share = s;
        best = candidate;
      }
    }
    width /= 3;
  }
  return best;
}
