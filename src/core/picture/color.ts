/** #rrggbb as three numbers from 0 to 255. */
const parts = (hex: string): number[] =>
  [1, 3, 5].map((i) => Number.parseInt(hex.slice(i, i + 2), 16));

/** `amount` of the way from one color to another, channel by channel (a veil of paint). */
export function mixed(from: string, to: string, amount: number): string {
  const a = parts(from);
  const b = parts(to);
  const hex = a.map((x, i) =>
    Math.round(x + (b[i] - x) * amount)
      .toString(16)
      .padStart(2, "0"),
  );
  return `#${hex.join("")}`;
}

/** Relative luminance, WCAG 2.2, then as a display gray from 0 (black) to 1. */
export function grayValue(hex: string): number {
  const [r, g, b] = parts(hex).map((c) => {
    const s = c / 255;
    return s <= 0.04045 ? s / 12.92 : ((s + 0.055) / 1.055) ** 2.4;
  });
  const y = 0.2126 * r + 0.7152 * g + 0.0722 * b;
  return y <= 0.0031308 ? 12.92 * y : 1.055 * y ** (1 / 2.4) - 0.055;
}
