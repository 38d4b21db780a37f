import type { PdfPoint } from "../measure/index.ts";
import type { Drawing } from "../picture/index.ts";
import type { Face } from "./faces.ts";

export type Ink = "ink" | "soft" | "accent" | "lost";

export const INKS: Readonly<Record<Ink, string>> = {
  ink: "#1c1a18",
  soft: "#57524d",
  accent: "#a3195b",
  lost: "#8b857d",
};

/**
 * The page model: where every word, rule and picture stands, in points from the upper left corner of
 * the sheet, before anyone writes PDF. y of text is its base line.
 */
export interface Sheet {
  readonly title: string;
  /** Name for a file, without its ending: "pattern", "templates". */
  readonly name: string;
  readonly language: string;
  readonly pages: readonly Page[];
}

export interface Page {
  readonly width: PdfPoint;
  readonly height: PdfPoint;
  /** In reading order. */
  readonly items: readonly Item[];
}

/** A stretch of one face at one place. A fraction is its own stretch: `1⁄2` with U+2044. */
export interface Glyphs {
  readonly x: PdfPoint;
  readonly y: PdfPoint;
  readonly text: string;
  readonly face: Face;
  readonly size: PdfPoint;
  readonly color: Ink;
  readonly fraction?: boolean;
  /** Width, so that a doubt mark can be drawn under it. */
  readonly width: PdfPoint;
  /** Not proved: dotted underline. */
  readonly doubt?: boolean;
  /** The file with more Latin letters. */
  readonly more?: boolean;
}

export type TextRole = "H1" | "H2" | "H3" | "P" | "Caption" | "Note";

export interface Cell {
  readonly header?: boolean;
  readonly glyphs: readonly Glyphs[];
}

export type Item =
  | { readonly kind: "text"; readonly role: TextRole; readonly glyphs: readonly Glyphs[] }
  | {
      readonly kind: "table";
      readonly rows: readonly (readonly Cell[])[];
      /** The same table as the last one before it: its rows go on, under the same heads. */
      readonly continues?: boolean;
    }
  | {
      readonly kind: "figure";
      /** What a person who cannot see it is told. */
      readonly alt: string;
      readonly x: PdfPoint;
      readonly y: PdfPoint;
      readonly drawing: Drawing;
    }
  /** Decoration, skipped by a screen reader. */
  | {
      readonly kind: "rule";
      readonly from: readonly [PdfPoint, PdfPoint];
      readonly to: readonly [PdfPoint, PdfPoint];
      readonly width: PdfPoint;
      readonly color: Ink;
    }
  | {
      readonly kind: "box";
      readonly x: PdfPoint;
      readonly y: PdfPoint;
      readonly width: PdfPoint;
      readonly height: PdfPoint;
      readonly line: PdfPoint;
    }
  /** Running foot and the like: printed, not read out. */
  | { readonly kind: "furniture"; readonly glyphs: readonly Glyphs[] };

/** The words of a stretch, with the spaces that are seen: a new line, or a gap, parts two words. */
export function textOf(glyphs: readonly Glyphs[]): string {
  let text = "";
  glyphs.forEach((g, i) => {
    const before = glyphs[i - 1];
    const gap = before ? g.x - (before.x + before.width) : 0;
    const apart = before !== undefined && (g.y !== before.y || gap > 0.12 * g.size);
    text += (apart && !text.endsWith(" ") ? " " : "") + g.text;
  });
  return text.trim();
}
