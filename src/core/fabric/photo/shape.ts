import type { Degree, Length } from "../../measure/index.ts";
import { toRadians } from "../../measure/index.ts";
import { fromLight, LIGHT } from "../color/index.ts";
import { blank, checkPixels, MOST_PIXELS, type Pixels, type Progress } from "./pixels.ts";

/** A place on a picture in pixels, from its top left corner, y down. */
export interface Tap {
  readonly x: number;
  readonly y: number;
}

/** Two taps nearer than this (pixels) cannot set a scale: a fingertip covers them both. */
export const LEAST_TAP_DISTANCE = 8;

/**
 * Pixels to one unit of length, from two taps on a known length. Undefined when they are too near.
 * Throws RangeError for a length that is not positive.
 */
export function scaleFromTaps(a: Tap, b: Tap, known: Length): number | undefined {
  if (!(known > 0)) throw new RangeError(`known length must be positive, got ${known}`);
  const distance = Math.hypot(b.x - a.x, b.y - a.y);
  return distance < LEAST_TAP_DISTANCE ? undefined : distance / known;
}

/** Degrees to turn the picture anticlockwise so that the line through two taps lies level. */
export function angleToLevel(a: Tap, b: Tap): Degree {
  const [left, right] = a.x <= b.x ? [a, b] : [b, a];
  return (Math.atan2(right.y - left.y, right.x - left.x) * 180) / Math.PI;
}

/** Rows between two yields. */
const ROWS_A_STROKE = 64;

/**
 * The part of a picture inside a box (whole pixels, clamped to the picture). Throws RangeError when
 * nothing is left.
 */
export function cropped(
  p: Pixels,
  left: number,
  top: number,
  width: number,
  height: number,
): Pixels {
  checkPixels(p);
  const x0 = Math.max(0, Math.round(left));
  const y0 = Math.max(0, Math.round(top));
  const x1 = Math.min(p.width, Math.round(left + width));
  const y1 = Math.min(p.height, Math.round(top + height));
  if (x1 <= x0 || y1 <= y0) throw new RangeError("crop: a box inside the picture expected");
  const out = blank(x1 - x0, y1 - y0);
  for (let y = y0; y < y1; y++) {
    const from = (y * p.width + x0) * 4;
    out.data.set(p.data.subarray(from, from + (x1 - x0) * 4), (y - y0) * (x1 - x0) * 4);
  }
  return out;
}

/**
 * The picture turned anticlockwise about its middle, cut to the largest box of its own proportions
 * that holds no empty corner. Bilinear. Yields its progress.
 */
export function* straightened(p: Pixels, angle: Degree): Generator<Progress, Pixels> {
  checkPixels(p);
  const t = toRadians(angle);
  const c = Math.cos(t);
  const s = Math.sin(t);
  const shrink = fittingShare(p.width, p.height, t);
  const width = Math.max(1, Math.floor(p.width * shrink));
  const height = Math.max(1, Math.floor(p.height * shrink));
  const out = blank(width, height);
  for (let y = 0; y < height; y++) {
    if (y % ROWS_A_STROKE === 0) yield { done: y / height };
    for (let x = 0; x < width; x++) {
      const dx = x + 0.5 - width / 2;
      const dy = y + 0.5 - height / 2;
      sample(
        p,
        p.width / 2 + c * dx - s * dy - 0.5,
        p.height / 2 + s * dx + c * dy - 0.5,
        out.data,
        (y * width + x) * 4,
      );
    }
  }
  return out;
}

/** The share of width and height that a turned picture still fills without empty corners. */
function fittingShare(width: number, height: number, t: number): number {
  const c = Math.abs(Math.cos(t));
  const s = Math.abs(Math.sin(t));
  return Math.min(width / (width * c + height * s), height / (width * s + height * c));
}

function sample(p: Pixels, x: number, y: number, out: Uint8ClampedArray, at: number): void {
  const x0 = Math.min(p.width - 1, Math.max(0, Math.floor(x)));
  const y0 = Math.min(p.height - 1, Math.max(0, Math.floor(y)));
  const x1 = Math.min(p.width - 1, x0 + 1);
  const y1 = Math.min(p.height - 1, y0 + 1);
  const fx = Math.min(1, Math.max(0, x - x0));
  const fy = Math.min(1, Math.max(0, y - y0));
  const [a, b] = [(y0 * p.width + x0) * 4, (y0 * p.width + x1) * 4];
  const [c, d] = [(y1 * p.width + x0) * 4, (y1 * p.width + x1) * 4];
  for (let k = 0; k < 4; k++) {
    const top = p.data[a + k] * (1 - fx) + p.data[b + k] * fx;
    const low = p.data[c + k] * (1 - fx) + p.data[d + k] * fx;
    out[at + k] = top * (1 - fy) + low * fy;
  }
}

/**
 * A picture made smaller as its rows come in, so that the large one need never lie in memory whole:
 * it holds one row of sums and the small picture. Means are of light, not of channel values, so that
 * fine stripes keep their brightness. See-through pixels count as white fabric.
 */
export class Shrinker {
  readonly #out: Pixels & { data: Uint8ClampedArray };
  readonly #sums: Float64Array;
  readonly #weight: Float64Array;
  #row = 0;
  #target = 0;
  readonly #width: number;
  readonly #height: number;

  /** Throws RangeError for sizes out of bounds. `longest`: the small picture's longer side. */
  constructor(width: number, height: number, longest: number) {
    if (width * height > MOST_PIXELS || width < 1 || height < 1)
      throw new RangeError(`shrink: 1 to ${MOST_PIXELS} pixels expected, got ${width} x ${height}`);
    const share = Math.min(1, longest / Math.max(width, height));
    this.#width = width;
    this.#height = height;
    this.#out = blank(
      Math.max(1, Math.round(width * share)),
      Math.max(1, Math.round(height * share)),
    );
    this.#sums = new Float64Array(this.#out.width * 3);
    this.#weight = new Float64Array(this.#out.width);
  }

  /** Whole rows of RGBA bytes, in order, as many as there are. */
  push(rows: Uint8ClampedArray | Uint8Array): void {
    const stride = this.#width * 4;
    for (let at = 0; at + stride <= rows.length; at += stride) this.#add(rows, at);
  }

  #add(rows: Uint8ClampedArray | Uint8Array, from: number): void {
    const { width, height } = this.#out;
    const target = Math.min(height - 1, Math.floor(((this.#row + 0.5) * height) / this.#height));
    if (target !== this.#target) this.#flush();
    this.#target = target;
    for (let x = 0; x < this.#width; x++) {
      const cell = Math.min(width - 1, Math.floor(((x + 0.5) * width) / this.#width));
      const i = from + x * 4;
      const alpha = rows[i + 3] / 255;
      for (let k = 0; k < 3; k++)
        this.#sums[cell * 3 + k] += LIGHT[rows[i + k]] * alpha + (1 - alpha);
      this.#weight[cell]++;
    }
    this.#row++;
  }

  #flush(): void {
    const { width, data } = this.#out;
    for (let x = 0; x < width; x++) {
      const w = this.#weight[x];
      if (w === 0) continue;
      const at = (this.#target * width + x) * 4;
      for (let k = 0; k < 3; k++) data[at + k] = fromLight(this.#sums[x * 3 + k] / w);
      data[at + 3] = 255;
    }
    this.#sums.fill(0);
    this.#weight.fill(0);
  }

  /** The small picture. Throws RangeError when rows are missing. */
  finish(): Pixels {
    if (this.#row !== this.#height)
      throw new RangeError(`shrink: ${this.#height} rows expected, got ${this.#row}`);
    this.#flush();
    return this.#out;
  }
}

/** A picture whose longer side is at most `longest` pixels. Yields its progress. */
export function* shrunk(p: Pixels, longest: number): Generator<Progress, Pixels> {
  checkPixels(p);
  const work = new Shrinker(p.width, p.height, longest);
  for (let y = 0; y < p.height; y += ROWS_A_STROKE) {
    yield { done: y / p.height };
    const end = Math.min(p.height, y + ROWS_A_STROKE);
    work.push(p.data.subarray(y * p.width * 4, end * p.width * 4));
  }
  return work.finish();
}
