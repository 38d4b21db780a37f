import { differenceCiede2000, modeLab65, useMode as register } from "culori/fn";
import { fromLight, hexOf, type Rgb, rgbOf, toLight } from "./srgb.ts";

/** CIELAB under D65, the only white point used here. L* 0 to 100. */
export interface Lab {
  readonly l: number;
  readonly a: number;
  readonly b: number;
}

/** D65 white of the 2 degree observer: X, Y, Z. */
export const WHITE = [0.95047, 1, 1.08883] as const;

/** Linear sRGB to XYZ (D65); Lindbloom's seven-figure values of the IEC 61966-2-1 matrix. */
const TO_XYZ = [
  [0.4124564, 0.3575761, 0.1804375],
  [0.2126729, 0.7151522, 0.072175],
  [0.0193339, 0.119192, 0.9503041],
] as const;

const FROM_XYZ = [
  [3.2404542, -1.5371385, -0.4985314],
  [-0.969266, 1.8760108, 0.041556],
  [0.0556434, -0.2040259, 1.0572252],
] as const;

/** CIE 15: 216/24389 and 24389/27, exact. */
const EPSILON = 216 / 24389;
const KAPPA = 24389 / 27;

export const labOf = (hex: string): Lab => labOfRgb(rgbOf(hex));
export const labOfRgb = (rgb: Rgb): Lab =>
  labOfLight(toLight(rgb[0]), toLight(rgb[1]), toLight(rgb[2]));

/** From linear light, 0 to 1 a channel. */
export function labOfLight(r: number, g: number, b: number): Lab {
  const [fx, fy, fz] = TO_XYZ.map((row, i) => {
    const t = (row[0] * r + row[1] * g + row[2] * b) / WHITE[i];
    return t > EPSILON ? Math.cbrt(t) : (KAPPA * t + 16) / 116;
  });
  return { l: 116 * fy - 16, a: 500 * (fx - fy), b: 200 * (fy - fz) };
}

/** The nearest sRGB color: light outside what a screen shows is clipped. */
export function hexOfLab({ l, a, b }: Lab): string {
  const fy = (l + 16) / 116;
  const light = [fy + a / 500, fy, fy - b / 200].map((f, i) => {
    const cube = f ** 3;
    const t = cube > EPSILON ? cube : (116 * f - 16) / KAPPA;
    return t * WHITE[i];
  });
  const rgb = FROM_XYZ.map((row) =>
    fromLight(row[0] * light[0] + row[1] * light[1] + row[2] * light[2]),
  );
  return hexOf([rgb[0], rgb[1], rgb[2]]);
}

register(modeLab65);
const ciede2000 = differenceCiede2000();

/**
 * CIEDE2000 with unit weights (Sharma, Wu and Dalal 2005). culori compares `lab65` as it stands;
 * its `lab` would be taken as D50.
 */
export const colorDifference = (p: Lab, q: Lab): number =>
  ciede2000({ mode: "lab65", ...p }, { mode: "lab65", ...q });

/** Relative luminance and contrast of WCAG 2.2. */
export const luminance = (hex: string): number => {
  const [r, g, b] = rgbOf(hex).map(toLight);
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};

export function contrast(p: string, q: string): number {
  const [low, high] = [luminance(p), luminance(q)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

/** The mean of colors by area, in CIELAB. Throws RangeError when there is no area. */
export function meanLab(parts: readonly { readonly lab: Lab; readonly area: number }[]): Lab {
  const total = parts.reduce((sum, p) => sum + p.area, 0);
  if (!(total > 0)) throw new RangeError("mean color: some area expected, got none");
  const mean = (of: (l: Lab) => number): number =>
    parts.reduce((sum, p) => sum + of(p.lab) * p.area, 0) / total;
  return { l: mean((x) => x.l), a: mean((x) => x.a), b: mean((x) => x.b) };
}
