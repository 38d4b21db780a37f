import type { PdfPoint } from "../measure/index.ts";
import type { Style } from "./text.ts";

export type PaperName = "letter" | "a4";

/** A sheet of paper with the one text block all sheets share: 12 columns of 33 points, gutters 12. */
export interface Paper {
  readonly name: PaperName;
  readonly width: PdfPoint;
  readonly height: PdfPoint;
  readonly left: PdfPoint;
  readonly top: PdfPoint;
  /** Lowest point for text above the running foot. */
  readonly bottom: PdfPoint;
  readonly foot: PdfPoint;
}

/** Width of the text block, which fits A4 and Letter with 10 mm margins. */
export const MEASURE: PdfPoint = 528;
const COLUMN: PdfPoint = 33;
const GUTTER: PdfPoint = 12;

/** Letter: ANSI/ASME Y14.1, 8 1/2 x 11 in. A4: ISO 216, 210 x 297 mm. */
const SIZES: Readonly<Record<PaperName, readonly [PdfPoint, PdfPoint]>> = {
  letter: [612, 792],
  a4: [(210 * 72) / 25.4, (297 * 72) / 25.4],
};

export function paper(name: PaperName): Paper {
  const [width, height] = SIZES[name];
  return {
    name,
    width,
    height,
    left: (width - MEASURE) / 2,
    top: 40,
    bottom: height - 54,
    foot: height - 43,
  };
}

/** Width of `n` columns with the gutters between them. */
export const columns = (n: number): PdfPoint => n * COLUMN + (n - 1) * GUTTER;
/** Left edge of column `i`, from 0, within the text block. */
export const columnAt = (i: number): PdfPoint => i * (COLUMN + GUTTER);

const style = (
  face: Style["face"],
  size: PdfPoint,
  lead: PdfPoint,
  color: Style["color"] = "ink",
): Style => ({
  face,
  size,
  lead,
  color,
});

/** Nothing that is to be read is set smaller than 9 points. */
export const STYLES = {
  title: style("serif", 32, 36),
  titleSmall: style("serif", 24, 28),
  sentence: style("sans", 12, 16),
  sentenceLong: style("sans", 11, 14),
  size: style("serif", 17, 20),
  sizeSmall: style("serif", 12.4, 15),
  question: style("serif", 12.5, 15),
  trade: style("italic", 9, 11, "soft"),
  step: style("serif", 17, 20),
  letter: style("serif", 13, 15),
  text: style("sans", 9.5, 11.4),
  soft: style("sans", 9.5, 11.4, "soft"),
  strong: style("bold", 9.5, 11.4),
  name: style("bold", 10.5, 12.5),
  number: style("bold", 10.5, 12.5),
  small: style("sans", 9, 11, "soft"),
  stop: style("sans", 9.5, 12, "accent"),
  stopNumber: style("bold", 13, 15),
  total: style("sans", 13, 15),
  totalBold: style("bold", 13, 15),
} as const;
