import { fromLight, LIGHT } from "../color/index.ts";
import { blank, type Pixels } from "./pixels.ts";

/** Seeded numbers in [0, 1) (mulberry32), so that every generated picture can be made again. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export interface StripePicture {
  readonly width: number;
  readonly height: number;
  /** Pixels of one repeat, square to the bands. */
  readonly period: number;
  /** Degrees anticlockwise from level. */
  readonly angle: number;
  /** Shares of the repeat, in order, from 0 to 1, with their colors. */
  readonly bands: readonly { to: number; rgb: readonly [number, number, number] }[];
  /** Standard deviation of the blur, in pixels, and of the noise, in channel values. */
  readonly blur: number;
  readonly noise: number;
  /** Light at the edges over light in the middle, less 1, and the direction it falls off in. */
  readonly falloff: number;
  readonly lean: number;
  readonly seed: number;
}

/**
 * A picture of a stripe as a phone takes it: bands mixed in light, blurred, lit unevenly (a slope
 * and a bow), with noise in every channel.
 */
export function stripePicture(s: StripePicture): Pixels {
  const random = seeded(s.seed);
  const out = blank(s.width, s.height);
  const t = (s.angle * Math.PI) / 180;
  const table = repeatTable(s);
  const [cx, sx] = [Math.cos(s.lean), Math.sin(s.lean)];
  const offset = random() * s.period;
  for (let y = 0; y < s.height; y++)
    for (let x = 0; x < s.width; x++) {
      const up = -Math.sin(t) * (x - s.width / 2) + Math.cos(t) * (s.height / 2 - y);
      const phase = ((((up + offset) / s.period) % 1) + 1) % 1;
      const k = Math.floor(phase * table.length) % table.length;
      const u = (2 * x) / s.width - 1;
      const v = (2 * y) / s.height - 1;
      const light = 1 + s.falloff * (0.7 * (u * cx + v * sx) - 0.3 * (u * u + v * v));
      const at = (y * s.width + x) * 4;
      for (let c = 0; c < 3; c++)
        out.data[at + c] = fromLight(table[k][c] * light) + s.noise * normal(random);
      out.data[at + 3] = 255;
    }
  return out;
}

/** One repeat in fine steps, blurred square to the bands (a stripe is the same along them). */
function repeatTable(s: StripePicture): number[][] {
  const n = Math.ceil(s.period * 16);
  const sharp = Array.from({ length: n }, (_, i) => {
    const band = s.bands.find((b) => (i + 0.5) / n < b.to) ?? s.bands[s.bands.length - 1];
    return band.rgb.map((c) => LIGHT[c]);
  });
  const sigma = Math.max(0.3, s.blur) * 16;
  const reach = Math.ceil(3 * sigma);
  const kernel = Array.from({ length: 2 * reach + 1 }, (_, i) =>
    Math.exp(-(((i - reach) / sigma) ** 2) / 2),
  );
  const sum = kernel.reduce((a, b) => a + b, 0);
  return sharp.map((_, i) =>
    [0, 1, 2].map(
      (c) => kernel.reduce((a, w, j) => a + w * sharp[(((i + j - reach) % n) + n) % n][c], 0) / sum,
    ),
  );
}

/** Box and Muller. */
const normal = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** A stripe picture by its number: sizes, colors and faults all drawn from the seed. */
export function randomStripe(seed: number): StripePicture {
  const random = seeded(seed);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const period = between(15, 48);
  const count = 2 + Math.floor(random() * 5);
  const widths = Array.from({ length: count }, () => between(1, 4));
  const total = widths.reduce((a, b) => a + b, 0);
  let at = 0;
  const rgb: [number, number, number][] = [];
  while (rgb.length < count) {
    const color: [number, number, number] = [0, 1, 2].map(() => Math.floor(random() * 256)) as [
      number,
      number,
      number,
    ];
    const near = [rgb[rgb.length - 1], rgb.length === count - 1 ? rgb[0] : undefined];
    if (near.every((n) => !n || color.reduce((d, c, i) => d + Math.abs(c - n[i]), 0) > 110))
      rgb.push(color);
  }
  return {
    width: 130,
    height: 170,
    period,
    angle: between(-5, 5),
    bands: widths.map((w, i) => {
      at += w / total;
      return { to: i === count - 1 ? 1 : at, rgb: rgb[i] };
    }),
    blur: between(0.3, 2.2),
    noise: between(0, 14),
    falloff: between(0, 0.45),
    lean: between(0, 2 * Math.PI),
    seed: seed * 7919 + 1,
  };
}
