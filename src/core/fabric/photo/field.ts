import { LIGHT } from "../color/index.ts";
import type { Pixels } from "./pixels.ts";

/** Channels of a field: lightness, red against green, blue against both; in logarithms of light. */
export const CHANNELS = 3;

/**
 * A picture as a field of logarithms of light with its slow changes taken out: uneven light
 * multiplies, so in logarithms it adds, and a quadratic surface fits it. `trend` keeps what was
 * taken out at the middle of the picture, so colors can be given back.
 */
export interface Field {
  readonly width: number;
  readonly height: number;
  /** Channel by channel, row by row. */
  readonly values: readonly Float64Array[];
  readonly mean: readonly number[];
}

/** Black is never quite black in a photo; keeps the logarithm of dark pixels quiet. */
const DARK = 0.02;

export function fieldOf(p: Pixels): Field {
  const size = p.width * p.height;
  const values = Array.from({ length: CHANNELS }, () => new Float64Array(size));
  for (let i = 0; i < size; i++) {
    const r = Math.log(LIGHT[p.data[4 * i]] + DARK);
    const g = Math.log(LIGHT[p.data[4 * i + 1]] + DARK);
    const b = Math.log(LIGHT[p.data[4 * i + 2]] + DARK);
    values[0][i] = (r + g + b) / 3;
    values[1][i] = r - g;
    values[2][i] = b - (r + g) / 2;
  }
  const mean = values.map((v) => levelled(v, p.width, p.height));
  return { width: p.width, height: p.height, values, mean };
}

/** Light of a channel triple (as in `values`, mean added back): linear R, G, B. */
export function lightOf(l: number, rg: number, by: number): [number, number, number] {
  // l = (r + g + b) / 3, by = b - (r + g) / 2, so b = l + 2/3 by and r + g = 2 l - 2/3 by.
  const b = l + (2 / 3) * by;
  const half = l - by / 3;
  return [half + rg / 2, half - rg / 2, b].map((x) =>
    Math.min(1, Math.max(0, Math.exp(x) - DARK)),
  ) as [number, number, number];
}

/** Takes the best quadratic surface out of `v`, in place; gives back the mean that went with it. */
function levelled(v: Float64Array, width: number, height: number): number {
  const n = 6;
  const m = Array.from({ length: n }, () => new Array<number>(n + 1).fill(0));
  const b = new Float64Array(n);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      surface(b, (2 * x + 1) / width - 1, (2 * y + 1) / height - 1);
      const value = v[y * width + x];
      for (let i = 0; i < n; i++) {
        const row = m[i];
        for (let j = i; j < n; j++) row[j] += b[i] * b[j];
        row[n] += b[i] * value;
      }
    }
  for (let i = 0; i < n; i++) for (let j = 0; j < i; j++) m[i][j] = m[j][i];
  const k = solved(m);
  let sum = 0;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      surface(b, (2 * x + 1) / width - 1, (2 * y + 1) / height - 1);
      let level = 0;
      for (let i = 0; i < n; i++) level += k[i] * b[i];
      sum += level;
      v[y * width + x] -= level;
    }
  return sum / (width * height);
}

/** The six terms of a quadratic surface at (x, y), each from -1 to 1. */
function surface(b: Float64Array, x: number, y: number): void {
  b[0] = 1;
  b[1] = x;
  b[2] = y;
  b[3] = x * x;
  b[4] = x * y;
  b[5] = y * y;
}

/** Gauss with the largest pivot; a flat direction (a picture one pixel wide) is left at 0. */
function solved(m: number[][]): number[] {
  const n = m.length;
  for (let col = 0; col < n; col++) {
    let pivot = col;
    for (let r = col + 1; r < n; r++) if (Math.abs(m[r][col]) > Math.abs(m[pivot][col])) pivot = r;
    [m[col], m[pivot]] = [m[pivot], m[col]];
    if (Math.abs(m[col][col]) < 1e-9) continue;
    for (let r = 0; r < n; r++) {
      if (r === col) continue;
      const f = m[r][col] / m[col][col];
      for (let j = col; j <= n; j++) m[r][j] -= f * m[col][j];
    }
  }
  return m.map((row, i) => (Math.abs(row[i]) < 1e-9 ? 0 : row[n] / row[i]));
}
