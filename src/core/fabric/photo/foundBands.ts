import { colorDifference, hexOfLab, type Lab, labOfLight, meanLab } from "../color/index.ts";
import { CHANNELS, lightOf } from "./field.ts";
import type { Profile } from "./profile.ts";

/** One band of a repeat found in a picture; from and to are shares of the repeat, 0 to 1. */
export interface BandFound {
  readonly from: number;
  readonly to: number;
  readonly lab: Lab;
  readonly color: string;
}

/** Places a pixel of the repeat is divided into. */
const FINE = 4;
/** Neighbors nearer than this (CIEDE2000) are one band (assumption). */
const ONE_BAND = 5;
/** Share of the steepest change that still counts as an edge. */
const LEAST_EDGE = 0.12;

export interface RepeatBands {
  readonly bands: readonly BandFound[];
  /** How far into the profile's first repeat the first band begins, as a share of the repeat. */
  readonly start: number;
}

const NO_BANDS: RepeatBands = { bands: [], start: 0 };

/**
 * The bands of one repeat: the profile folded at the period, edges where its color changes fastest
 * (blur widens an edge but does not move it), colors from the middle of each band, neighbors that
 * look alike joined. The first band begins at the strongest edge. `mean`: the field's own, to give
 * colors back.
 */
export function bandsOf(p: Profile, period: number, mean: readonly number[]): RepeatBands {
  const bins = Math.max(16, Math.round(period * FINE));
  const labs = folded(p, period, bins).map(([l, rg, by]) =>
    labOfLight(...lightOf(l + mean[0], rg + mean[1], by + mean[2])),
  );
  const edges = edgesOf(labs, Math.max(1, Math.round(bins / period)));
  if (edges.length < 2) return NO_BANDS;
  let bands = edges.map((from, i) => band(labs, from, edges[(i + 1) % edges.length]));
  while (bands.length > 1) {
    const steps = bands.map((b, k) => colorDifference(b.lab, bands[(k + 1) % bands.length].lab));
    const least = steps.indexOf(Math.min(...steps));
    if (steps[least] >= ONE_BAND) break;
    bands = withJoined(labs, bands, least);
  }
  if (bands.length < 2) return NO_BANDS;
  return fromZero(bands, labs.length);
}

/** Weighted means of the profile at `bins` phases of the period; gaps take their neighbors. */
function folded(p: Profile, period: number, bins: number): number[][] {
  const weight = new Float64Array(bins);
  const sums = Array.from({ length: CHANNELS }, () => new Float64Array(bins));
  const reach = bins / period;
  for (let i = 0; i < p.length; i++) {
    const at = ((i / period) % 1) * bins;
    for (let d = Math.floor(-reach); d <= Math.ceil(reach); d++) {
      const k = Math.floor(at) + d;
      const w = Math.max(0, 1 - Math.abs(k - at) / reach);
      const bin = ((k % bins) + bins) % bins;
      weight[bin] += w;
      for (let c = 0; c < CHANNELS; c++) sums[c][bin] += w * p.values[c][i];
    }
  }
  return Array.from({ length: bins }, (_, k) => {
    let near = k;
    while (weight[near] === 0) near = (near + 1) % bins;
    return sums.map((s) => s[near] / weight[near]);
  });
}

/** Phases where the color changes fastest, placed between bins by a parabola. */
function edgesOf(labs: readonly Lab[], reach: number): number[] {
  const n = labs.length;
  const at = (k: number): Lab => labs[((k % n) + n) % n];
  const steep = labs.map((_, k) => {
    const [p, q] = [at(k - reach), at(k + reach)];
    return Math.hypot(q.l - p.l, q.a - p.a, q.b - p.b);
  });
  const least = LEAST_EDGE * Math.max(...steep);
  const out: number[] = [];
  for (let k = 0; k < n; k++) {
    const [a, b, c] = [steep[(k + n - 1) % n], steep[k], steep[(k + 1) % n]];
    if (b < least || b < a || b <= c) continue;
    const bend = a - 2 * b + c;
    out.push(k + (bend < 0 ? (a - c) / (2 * bend) : 0));
  }
  return out;
}

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly lab: Lab;
}

/** Color of the middle half of a stretch of phases (round the repeat when to <= from). */
function band(labs: readonly Lab[], from: number, to: number): Stretch {
  const n = labs.length;
  const width = to > from ? to - from : to - from + n;
  const inner: { lab: Lab; area: number }[] = [];
  for (let k = Math.ceil(from + width / 4); k <= from + (3 * width) / 4; k++)
    inner.push({ lab: labs[((k % n) + n) % n], area: 1 });
  if (inner.length === 0) inner.push({ lab: labs[Math.round(from + width / 2) % n], area: 1 });
  return { from, to: from + width, lab: meanLab(inner) };
}

function withJoined(labs: readonly Lab[], bands: readonly Stretch[], i: number): Stretch[] {
  const next = (i + 1) % bands.length;
  const one = band(labs, bands[i].from % labs.length, bands[next].to % labs.length);
  const kept = bands.filter((_, k) => k !== i && k !== next);
  return [...kept, one].sort((p, q) => p.from - q.from);
}

/** Shares of the repeat, counted from the edge with the greatest change of color. */
function fromZero(bands: readonly Stretch[], n: number): RepeatBands {
  const step = (i: number): number =>
    colorDifference(bands[i].lab, bands[(i + bands.length - 1) % bands.length].lab);
  let first = 0;
  bands.forEach((_, i) => {
    if (step(i) > step(first) + 1e-9) first = i;
  });
  const zero = bands[first].from;
  const counted = bands
    .map((_, k) => bands[(first + k) % bands.length])
    .map((b, k, all) => {
      const from = k === 0 ? 0 : (((b.from - zero) % n) + n) % n;
      const to = k === all.length - 1 ? n : (((b.to - zero) % n) + n) % n;
      return { from: from / n, to: to / n, lab: b.lab, color: hexOfLab(b.lab) };
    });
  return { bands: counted, start: (((zero % n) + n) % n) / n };
}
