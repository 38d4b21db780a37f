import {
  colorDifference,
  hexOfLab,
  type Lab,
  LIGHT,
  labOfLight,
  meanLab,
  seenAs,
  type Value,
  valueWord,
} from "../color/index.ts";
import { checkPixels, type Pixels } from "./pixels.ts";

/** One of the colors a picture is made of. */
export interface ColorShare {
  readonly lab: Lab;
  readonly color: string;
  /** Share of the picture, 0 to 1. */
  readonly share: number;
}

/** A picture's colors in CIELAB (D65): the mean, its value, the spread of lightness, the main colors. */
export interface ColorSummary {
  readonly mean: Lab;
  readonly color: string;
  readonly gray: string;
  readonly value: Value;
  /** L* under which 5 and 95 per cent of the picture lie. */
  readonly darkest: number;
  readonly lightest: number;
  /** Most of the picture first. */
  readonly main: readonly ColorShare[];
}

/** Pixels looked at: more change nothing that is seen. */
const SAMPLES = 4096;
const ROUNDS = 12;
/** Main colors nearer than this (CIEDE2000) are one. */
const ONE_COLOR = 8;

/**
 * Summarizes a picture by up to `most` main colors. Deterministic: pixels on an even grid, first
 * colors the farthest apart, then means of the nearest (Lloyd's rounds) in CIELAB. See-through
 * pixels count as white fabric.
 */
export function colorSummary(p: Pixels, most = 5): ColorSummary {
  checkPixels(p);
  const labs = sampled(p);
  const mean = meanLab(labs.map((lab) => ({ lab, area: 1 })));
  const lightness = labs.map((l) => l.l).sort((a, b) => a - b);
  const at = (q: number): number => lightness[Math.round(q * (lightness.length - 1))];
  const color = hexOfLab(mean);
  return {
    mean,
    color,
    gray: seenAs(color, "gray"),
    value: valueWord(mean),
    darkest: at(0.05),
    lightest: at(0.95),
    main: mainColors(labs, most),
  };
}

function sampled(p: Pixels): Lab[] {
  const step = Math.max(1, Math.sqrt((p.width * p.height) / SAMPLES));
  const out: Lab[] = [];
  for (let y = step / 2; y < p.height; y += step)
    for (let x = step / 2; x < p.width; x += step) {
      const i = (Math.floor(y) * p.width + Math.floor(x)) * 4;
      const alpha = p.data[i + 3] / 255;
      const light = [0, 1, 2].map((k) => LIGHT[p.data[i + k]] * alpha + (1 - alpha));
      out.push(labOfLight(light[0], light[1], light[2]));
    }
  return out;
}

const far = (p: Lab, q: Lab): number => (p.l - q.l) ** 2 + (p.a - q.a) ** 2 + (p.b - q.b) ** 2;

function nearest(lab: Lab, centers: readonly Lab[]): number {
  let best = 0;
  centers.forEach((c, k) => {
    if (far(lab, c) < far(lab, centers[best])) best = k;
  });
  return best;
}

function mainColors(labs: readonly Lab[], most: number): ColorShare[] {
  let centers: Lab[] = [meanLab(labs.map((lab) => ({ lab, area: 1 })))];
  while (centers.length < most) {
    const next = labs.reduce((a, b) =>
      far(b, centers[nearest(b, centers)]) > far(a, centers[nearest(a, centers)]) ? b : a,
    );
    if (far(next, centers[nearest(next, centers)]) < 1) break;
    centers.push(next);
  }
  let counts: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const groups: { lab: Lab; area: number }[][] = centers.map(() => []);
    for (const lab of labs) groups[nearest(lab, centers)].push({ lab, area: 1 });
    counts = groups.map((g) => g.length);
    centers = groups.map((g, k) => (g.length > 0 ? meanLab(g) : centers[k]));
  }
  return joinedColors(
    centers.map((lab, k) => ({ lab, area: counts[k] })),
    labs.length,
  );
}

function joinedColors(groups: { lab: Lab; area: number }[], total: number): ColorShare[] {
  const out: { lab: Lab; area: number }[] = [];
  for (const g of [...groups].sort((p, q) => q.area - p.area)) {
    if (g.area === 0) continue;
    const like = out.findIndex((o) => colorDifference(o.lab, g.lab) < ONE_COLOR);
    if (like < 0) out.push(g);
    else out[like] = { lab: meanLab([out[like], g]), area: out[like].area + g.area };
  }
  return out
    .sort((p, q) => q.area - p.area)
    .map(({ lab, area }) => ({ lab, color: hexOfLab(lab), share: area / total }));
}
