import type { Degree } from "../../measure/index.ts";
import { toRadians } from "../../measure/index.ts";
import { CHANNELS, type Field } from "./field.ts";

/** Means of a field square to a direction, one bin a pixel, one array a channel. */
export interface Profile {
  readonly length: number;
  /** How far above the middle of the picture the first bin lies. */
  readonly origin: number;
  readonly values: readonly Float64Array[];
  /** Share of the field's variance that lies between the bins rather than within them. */
  readonly explained: number;
}

/** Bins that hold less than this share of the fullest are the picture's corners: left out. */
const CORNER = 0.3;

/**
 * The profile across bands that run at `angle` (degrees anticlockwise from level, as seen). `stride`
 * looks at every so many pixels only, `window` only at a square of that side in the middle. Profile
 * runs from the bottom of the picture upward.
 */
export function profileAt(
  f: Field,
  angle: Degree,
  stride = 1,
  window = Math.max(f.width, f.height),
): Profile {
  const t = toRadians(angle);
  const c = Math.cos(t);
  const s = Math.sin(t);
  const reach = Math.ceil((Math.abs(s) * f.width + Math.abs(c) * f.height) / 2) + 1;
  const bins = 2 * reach + 1;
  const weight = new Float64Array(bins);
  const sums = Array.from({ length: CHANNELS }, () => new Float64Array(bins));
  const [v0, v1, v2] = f.values;
  const [s0, s1, s2] = sums;
  let total = 0;
  let count = 0;
  const [left, top] = [f.width, f.height].map((n) => Math.max(0, Math.floor((n - window) / 2)));
  for (let y = top; y < f.height - top; y += stride) {
    // y grows downward in the picture and upward here.
    const level = c * (f.height / 2 - y - 0.5) + reach;
    for (let x = left; x < f.width - left; x += stride) {
      const at = level - s * (x - f.width / 2 + 0.5);
      const low = Math.floor(at);
      const share = at - low;
      const rest = 1 - share;
      const i = y * f.width + x;
      const p = v0[i];
      const q = v1[i];
      const r = v2[i];
      weight[low] += rest;
      weight[low + 1] += share;
      s0[low] += p * rest;
      s0[low + 1] += p * share;
      s1[low] += q * rest;
      s1[low + 1] += q * share;
      s2[low] += r * rest;
      s2[low + 1] += r * share;
      total += p * p + q * q + r * r;
      count++;
    }
  }
  return cut(weight, sums, total, count, reach);
}

function cut(
  weight: Float64Array,
  sums: Float64Array[],
  total: number,
  count: number,
  reach: number,
): Profile {
  const full = Math.max(...weight) * CORNER;
  let from = 0;
  let to = weight.length;
  while (from < to && weight[from] < full) from++;
  while (to > from && weight[to - 1] < full) to--;
  let between = 0;
  let inside = 0;
  const values = sums.map((s) => s.slice(from, to).map((v, i) => v / (weight[from + i] || 1)));
  for (let i = from; i < to; i++) inside += weight[i];
  for (const v of values)
    v.forEach((x, i) => {
      between += x * x * weight[from + i];
    });
  // Both as means a pixel: bins cut off at the corners count in neither.
  const explained = total > 0 ? between / inside / (total / count) : 0;
  return { length: to - from, origin: from - reach, values, explained };
}

export interface Direction {
  /** Degrees anticlockwise from level at which the bands run, more than -90 to 90. */
  readonly angle: Degree;
  readonly explained: number;
}

const COARSE: Degree = 3;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Side of the first window: 3 degrees across it stay well inside a band of a fine stripe. */
const FIRST_WINDOW = 80;
const WINDOW_GROWS = 2.5;

/**
 * The direction whose profile keeps most of the picture's variance: along the bands. A coarse look
 * round the half circle, once in a small window in the middle (a fine stripe blurs away over a large
 * one) and once at the whole (a broad one has no edge in the small one); each best is narrowed by
 * golden sections in growing windows.
 */
export function directionOf(f: Field): Direction {
  const whole = Math.max(f.width, f.height);
  const looks = [
    { window: FIRST_WINDOW, stride: 1 },
    { window: whole, stride: Math.max(1, Math.floor(whole / FIRST_WINDOW)) },
  ];
  const found = (whole <= FIRST_WINDOW ? looks.slice(1) : looks).map(({ window, stride }) => {
    let best = { angle: 0, explained: -1 };
    for (let angle = -90 + COARSE; angle <= 90; angle += COARSE) {
      const { explained } = profileAt(f, angle, stride, window);
      if (explained > best.explained) best = { angle, explained };
    }
    return best.angle;
  });
  const near = found.length === 2 && apart(found[0], found[1]) <= COARSE;
  const narrowed = (near ? found.slice(0, 1) : found).map((angle) => narrow(f, angle));
  return narrowed.reduce((a, b) => (b.explained > a.explained ? b : a));
}

/** Degrees between two directions, which begin again at 180. */
const apart = (a: Degree, b: Degree): Degree => Math.abs(wrapped(a - b));

function narrow(f: Field, coarse: Degree): Direction {
  const whole = Math.max(f.width, f.height);
  let angle = coarse;
  for (let window = Math.min(FIRST_WINDOW, whole), reach = COARSE; ; ) {
    const stride = Math.max(1, Math.floor(window / 160));
    angle = bestNear((a) => profileAt(f, a, stride, window).explained, angle, reach);
    if (window === whole)
      return { angle: wrapped(angle), explained: profileAt(f, angle, stride).explained };
    window = Math.min(whole, window * WINDOW_GROWS);
    reach /= WINDOW_GROWS;
  }
}

/** Golden section over `reach` to either side, to a thirtieth of it. */
function bestNear(score: (a: Degree) => number, angle: Degree, reach: Degree): Degree {
  let [low, high] = [angle - reach, angle + reach];
  let p = high - GOLDEN * (high - low);
  let q = low + GOLDEN * (high - low);
  let [atP, atQ] = [score(p), score(q)];
  while (high - low > reach / 30) {
    if (atP < atQ) {
      [low, p, atP] = [p, q, atQ];
      q = low + GOLDEN * (high - low);
      atQ = score(q);
    } else {
      [high, q, atQ] = [q, p, atP];
      p = high - GOLDEN * (high - low);
      atP = score(p);
    }
  }
  return (low + high) / 2;
}

function wrapped(a: Degree): Degree {
  if (a > 90) return a - 180;
  return a <= -90 ? a + 180 : a;
}
