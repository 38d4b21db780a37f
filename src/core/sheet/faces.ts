import type { PdfPoint } from "../measure/index.ts";
import { FRACTION_GAP } from "../picture/index.ts";
import data from "./face-metrics.json";

/** Text face, its bold and italic, and the display face. */
export type Face = "sans" | "bold" | "italic" | "serif";

interface FaceMetrics {
  readonly unitsPerEm: number;
  readonly ascent: number;
  readonly descent: number;
  readonly capHeight: number;
  readonly xHeight: number;
  readonly advance: Readonly<Record<string, number>>;
  readonly kern: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly fraction: {
    readonly above: readonly number[];
    readonly last: readonly number[];
    readonly slash: readonly number[];
    readonly below: readonly number[];
  };
  readonly more: Readonly<Record<string, number>>;
}

const FACES = data as unknown as Readonly<Record<Face, FaceMetrics>>;

export const capHeight = (face: Face, size: PdfPoint): PdfPoint =>
  (FACES[face].capHeight * size) / FACES[face].unitsPerEm;

/** Which file of a face holds a character: the Latin one, the one with more Latin letters, none. */
export function fileOf(face: Face, character: string): "latin" | "more" | undefined {
  const f = FACES[face];
  if (f.advance[character] !== undefined) return "latin";
  return f.more[character] === undefined ? undefined : "more";
}

/** Printed in place of a character that no face holds. */
export const UNKNOWN_CHARACTER = "?";

/** Text with every character a face can print; control characters become spaces. */
export function printable(text: string, face: Face): string {
  let out = "";
  for (const c of text.normalize("NFC")) {
    if (c < " ") out += " ";
    else out += fileOf(face, c) ? c : UNKNOWN_CHARACTER;
  }
  return out;
}

/** Width of text already made printable, figures tabular and lining, with kerning. */
export function widthOf(text: string, face: Face, size: PdfPoint): PdfPoint {
  const f = FACES[face];
  let units = 0;
  let before = "";
  for (const c of text) {
    units += f.advance[c] ?? f.more[c] ?? 0;
    units += f.kern[before]?.[c] ?? 0;
    before = c;
  }
  return (units * size) / f.unitsPerEm;
}

/** Width of a true fraction such as 11/16, set small above and below its slash. */
export function fractionWidth(above: string, below: string, face: Face, size: PdfPoint): PdfPoint {
  const f = FACES[face];
  const { fraction } = f;
  const digits = (text: string): number[] => [...text].map(Number);
  const top = digits(above);
  const foot = digits(below);
  const last = top.length - 1;
  const units =
    top.reduce((sum, d, i) => sum + (i < last ? fraction.above[d] : fraction.last[d]), 0) +
    fraction.slash[foot[0]] +
    foot.reduce((sum, d) => sum + fraction.below[d], 0);
  return (units * size) / f.unitsPerEm;
}

/** Gap between whole number and fraction, a little wider in bold. */
export const fractionGap = (face: Face, size: PdfPoint): PdfPoint =>
  (face === "bold" ? FRACTION_GAP * 1.15 : FRACTION_GAP) * size;
