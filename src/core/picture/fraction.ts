/**
 * Text as it is set: plain stretches, and mixed numbers as one box (whole number, small gap, true
 * fraction) that no line may break. Every number of the core is printed in ASCII (`4 1/2 in`); this
 * is the one place where such text becomes typography, on screen and on paper alike.
 */
export type Run =
  | { readonly kind: "text"; readonly text: string }
  | {
      readonly kind: "fraction";
      readonly whole: string;
      readonly above: string;
      readonly below: string;
    };

const MIXED = /(?:(?<![\d.,/])(\d+) )?(?<![\d.,/])(\d{1,3})\/(\d{1,3})(?![\d/])/g;

/** `cut 4 1/2 in` becomes "cut ", the box 4 1/2, " in". */
export function runsOf(text: string): Run[] {
  const runs: Run[] = [];
  let at = 0;
  for (const m of text.matchAll(MIXED)) {
    if (m.index > at) runs.push({ kind: "text", text: text.slice(at, m.index) });
    runs.push({ kind: "fraction", whole: m[1] ?? "", above: m[2], below: m[3] });
    at = m.index + m[0].length;
  }
  if (at < text.length) runs.push({ kind: "text", text: text.slice(at) });
  return runs;
}

/** U+2044, at which the fonts form a fraction. */
export const FRACTION_SLASH = "\u2044";
/** Gap between a whole number and its fraction, in em. */
export const FRACTION_GAP = 0.1;
