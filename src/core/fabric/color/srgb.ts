/** A color as a screen or photo has it: 8 bits a channel, sRGB (IEC 61966-2-1). */
export type Rgb = readonly [r: number, g: number, b: number];

/** `#1F4E5F` -> 31, 78, 95. Throws RangeError for anything else. */
export function rgbOf(hex: string): Rgb {
  const m = /^#([0-9a-f]{6})$/i.exec(hex);
  if (!m) throw new RangeError(`color expected as #RRGGBB, got ${JSON.stringify(hex)}`);
  const n = Number.parseInt(m[1], 16);
  return [n >> 16, (n >> 8) & 255, n & 255];
}

export const hexOf = (rgb: Rgb): string =>
  `#${rgb
    .map((c) =>
      Math.min(255, Math.max(0, Math.round(c)))
        .toString(16)
        .padStart(2, "0"),
    )
    .join("")
    .toUpperCase()}`;

/** Light of an sRGB channel, 0 to 1 (IEC 61966-2-1; threshold as in WCAG 2.2). */
export const toLight = (channel: number): number => {
  const c = channel / 255;
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
};

/** The channel, 0 to 255 and not rounded, that gives this light. */
export const fromLight = (light: number): number => {
  const x = Math.min(1, Math.max(0, light));
  return 255 * (x <= 0.0031308 ? 12.92 * x : 1.055 * x ** (1 / 2.4) - 0.055);
};

/** Light of all 256 channel values: photos look it up. */
export const LIGHT: Float64Array = Float64Array.from({ length: 256 }, (_, i) => toLight(i));
