import type { Effect, Suspect, Way } from "./causes.ts";
import type { ReadingName } from "./readings.ts";

/** Readings less what was planned, each with its standard deviation. */
export interface Offsets {
  readonly names: readonly ReadingName[];
  readonly off: readonly number[];
  readonly sd: number;
}

export interface Fit {
  readonly cause: Suspect["cause"];
  /** log of: chance before x how well it foretells the readings, over every size it may have. */
  readonly logWeight: number;
  /** Mean and standard deviation of the cause's size, given the readings. */
  readonly size: number;
  readonly sizeSd: number;
  /** What the cause would make of every reading at its likeliest size. */
  readonly foretold: Effect;
  /** Sum of squares of what it leaves unexplained, in reading errors, and how many sizes were fitted. */
  readonly misfit: number;
  readonly fitted: number;
}

interface Bump {
  readonly logWeight: number;
  readonly mean: number;
  readonly variance: number;
  readonly misfit: number;
  readonly way: Way;
}

const at = (e: Effect, name: ReadingName): number => e[name] ?? 0;

/**
 * How well one suspect explains the readings. Every unknown size is a mixture of normal bumps and
 * every reading is linear in it, so the evidence (the chance of these readings, averaged over the
 * size) and the size given the readings have closed forms; derivation in docs/geometry/error-laws.md.
 */
export function explain(s: Suspect, r: Offsets): Fit {
  const bumps = s.ways.flatMap((way) => bumpsOf(way, r));
  const top = bumps.reduce((a, b) => (b.logWeight > a.logWeight ? b : a));
  let total = 0;
  let mean = 0;
  let square = 0;
  for (const b of bumps) {
    const w = Math.exp(b.logWeight - top.logWeight);
    total += w;
    mean += w * b.mean;
    square += w * (b.variance + b.mean ** 2);
  }
  mean /= total;
  const [unknown] = top.way.unknowns;
  const foretold: Record<string, number> = { ...top.way.fixed };
  if (unknown)
    for (const [name, k] of Object.entries(unknown.effect))
      foretold[name] = (foretold[name] ?? 0) + k * top.mean;
  return {
    cause: s.cause,
    logWeight: Math.log(s.before) + top.logWeight + Math.log(total),
    size: mean,
    sizeSd: Math.sqrt(Math.max(0, square / total - mean ** 2)),
    foretold,
    misfit: top.misfit,
    fitted: unknown ? 1 : 0,
  };
}

/** Each way has at most one unknown size here; two at once are `fitTwo`. */
function bumpsOf(way: Way, r: Offsets): Bump[] {
  const rest = r.names.map((name, i) => (r.off[i] - at(way.fixed, name)) / r.sd);
  const squares = rest.reduce((sum, x) => sum + x * x, 0);
  const [unknown] = way.unknowns;
  if (!unknown)
    return [
      { logWeight: Math.log(way.weight) - squares / 2, mean: 0, variance: 0, misfit: squares, way },
    ];
  const x = r.names.map((name) => at(unknown.effect, name) / r.sd);
  const xx = x.reduce((sum, v) => sum + v * v, 0);
  const xy = x.reduce((sum, v, i) => sum + v * rest[i], 0);
  return unknown.bumps.map((b): Bump => {
    const before = 1 / b.sd ** 2;
    const variance = 1 / (xx + before);
    const mean = variance * (xy + before * b.mean);
    const left = squares + before * b.mean ** 2 - mean ** 2 / variance;
    return {
      logWeight: Math.log(way.weight * b.weight) - left / 2 + Math.log(variance * before) / 2,
      mean,
      variance,
      misfit: squares - 2 * mean * xy + mean ** 2 * xx,
      way,
    };
  });
}

/** Does the suspect move any of these readings? One that moves none cannot be judged by them. */
export const shows = (s: Suspect, names: readonly ReadingName[]): boolean =>
  s.ways.some((w) =>
    names.some((n) => at(w.fixed, n) !== 0 || w.unknowns.some((u) => at(u.effect, n) !== 0)),
  );

export interface PairFit {
  readonly causes: readonly [Suspect["cause"], Suspect["cause"]];
  readonly sizes: readonly [number, number];
  readonly misfit: number;
}

/** Two causes at once by least squares, each way of each with each of the other: the best. */
export function fitTwo(a: Suspect, b: Suspect, r: Offsets): PairFit | undefined {
  let best: PairFit | undefined;
  for (const [wa, wb] of a.ways.flatMap((x) => b.ways.map((y) => [x, y] as const))) {
    const [ua, ub] = [wa.unknowns[0], wb.unknowns[0]];
    if (!ua || !ub) continue;
    const y = r.names.map((n, i) => (r.off[i] - at(wa.fixed, n) - at(wb.fixed, n)) / r.sd);
    const p = r.names.map((n) => at(ua.effect, n) / r.sd);
    const q = r.names.map((n) => at(ub.effect, n) / r.sd);
    const dot = (u: number[], v: number[]) => u.reduce((sum, k, i) => sum + k * v[i], 0);
    const det = dot(p, p) * dot(q, q) - dot(p, q) ** 2;
    if (det < 1e-9 * dot(p, p) * dot(q, q) || det === 0) continue;
    const one = (dot(q, q) * dot(p, y) - dot(p, q) * dot(q, y)) / det;
    const two = (dot(p, p) * dot(q, y) - dot(p, q) * dot(p, y)) / det;
    const misfit = y.reduce((sum, v, i) => sum + (v - one * p[i] - two * q[i]) ** 2, 0);
    if (!best || misfit < best.misfit)
      best = { causes: [a.cause, b.cause], sizes: [one, two], misfit };
  }
  return best;
}
