import type { Op } from "../picture/index.ts";
import type { Glyphs, Item, Page } from "./model.ts";
import { setRuns } from "./text.ts";

// What can be seen to be wrong with a printed page without looking at it: words too small, outside
// the margins or over one another, and headings that stand alone. For tests only.

/** Ten millimeters: what most printers can reach. */
export const MARGIN = (10 * 72) / 25.4;

export const glyphsOf = (item: Item): readonly Glyphs[] => {
  if (item.kind === "text" || item.kind === "furniture") return item.glyphs;
  return item.kind === "table" ? item.rows.flat().flatMap((c) => c.glyphs) : [];
};

type TextOp = Extract<Op, { op: "text" }>;
export const wordsIn = (ops: readonly Op[]): TextOp[] =>
  ops.flatMap((op) => {
    if (op.op === "text") return [op];
    if (op.op !== "group") return [];
    const { clip } = op;
    // What a clip cuts away is not printed.
    return wordsIn(op.ops).filter(
      ({ at }) =>
        clip === undefined ||
        (Math.max(...clip.map((p) => p.y)) >= at.y && Math.min(...clip.map((p) => p.y)) <= at.y),
    );
  });

export function smallest(page: Page): number {
  const sizes = page.items.flatMap((item) => [
    ...glyphsOf(item).map((g) => g.size),
    ...(item.kind === "figure" ? wordsIn(item.drawing.ops).map((w) => w.size) : []),
  ]);
  return Math.min(...sizes);
}

/** Everything that reaches nearer to the edge of the sheet than 10 mm. */
export function outside(page: Page): string[] {
  const [right, bottom] = [page.width - MARGIN, page.height - MARGIN];
  const out: string[] = [];
  for (const item of page.items) {
    for (const g of glyphsOf(item))
      if (g.x < MARGIN - 0.01 || g.x + g.width > right + 0.01 || g.y > bottom || g.y < MARGIN)
        out.push(g.text);
    if (item.kind !== "figure") continue;
    const { x, y, drawing } = item;
    if (
      x < MARGIN - 1 ||
      y < MARGIN ||
      x + drawing.width > right + 1 ||
      y + drawing.height > bottom + 1
    )
      out.push(
        `${drawing.title} at ${x.toFixed(1)}, ${y.toFixed(1)}, ${drawing.width.toFixed(1)} x ${drawing.height.toFixed(1)}`,
      );
  }
  return out;
}

/** A stretch of words as the four corners of what its ink fills. */
interface Inked {
  readonly text: string;
  readonly corners: readonly (readonly [number, number])[];
}

function inkOf(page: Page): Inked[] {
  return page.items.flatMap((item): Inked[] => {
    if (item.kind !== "figure")
      return glyphsOf(item)
        .filter((g) => g.text.trim() !== "")
        .map((g) => inked(g.text, g.x, g.y, 0, g.width, g.size, 0));
    return wordsIn(item.drawing.ops).map((op) => {
      const { width } = setRuns(op.runs, op.bold ? "bold" : "sans", op.size);
      const shift = op.anchor === "start" ? 0 : op.anchor === "end" ? -width : -width / 2;
      const text = op.runs
        .map((r) => (r.kind === "text" ? r.text : `${r.whole} ${r.above}/${r.below}`))
        .join("");
      return inked(text, item.x + op.at.x, item.y + op.at.y, shift, width, op.size, op.turn);
    });
  });
}

/** From just above the base line to just under the height of an x, a little drawn in at both ends. */
function inked(
  text: string,
  x: number,
  y: number,
  shift: number,
  width: number,
  size: number,
  degrees: number,
): Inked {
  const a = (degrees * Math.PI) / 180;
  const at = (u: number, v: number): readonly [number, number] => [
    x + u * Math.cos(a) - v * Math.sin(a),
    y + u * Math.sin(a) + v * Math.cos(a),
  ];
  const [l, r, up, down] = [shift + 0.4, shift + width - 0.4, -0.44 * size, -0.04 * size];
  return { text, corners: [at(l, up), at(r, up), at(r, down), at(l, down)] };
}

/** Pairs of words of which one is printed over the other. */
export function overprinted(page: Page): string[] {
  const ink = inkOf(page);
  const out: string[] = [];
  ink.forEach((a, i) => {
    for (const b of ink.slice(i + 1)) if (!apart(a, b)) out.push(`"${a.text}" over "${b.text}"`);
  });
  // Nor is a picture, with all that belongs to it, laid over the words around it.
  for (const figure of page.items)
    if (figure.kind === "figure")
      for (const item of page.items)
        for (const g of glyphsOf(item))
          if (
            g.x + g.width > figure.x + 2 &&
            g.x < figure.x + figure.drawing.width - 2 &&
            g.y > figure.y + 2 &&
            g.y - 0.44 * g.size < figure.y + figure.drawing.height - 2
          )
            out.push(`"${figure.drawing.title}" over "${g.text}"`);
  return out;
}

/** Some edge of one of the two has all of the other on its outer side. */
function apart(a: Inked, b: Inked): boolean {
  return [a, b].some((box) =>
    box.corners.some((p, i) => {
      const q = box.corners[(i + 1) % 4];
      const [nx, ny] = [q[1] - p[1], p[0] - q[0]];
      const side = (c: readonly [number, number]): number =>
        nx * (c[0] - p[0]) + ny * (c[1] - p[1]);
      const other = box === a ? b : a;
      return other.corners.every((c) => side(c) >= -1e-9);
    }),
  );
}

/** Headings with nothing below them on their page but the foot. */
export function lonely(page: Page): string[] {
  const foot = (item: Item): number =>
    item.kind === "figure"
      ? item.y + item.drawing.height
      : Math.max(0, ...glyphsOf(item).map((g) => g.y));
  const body = page.items.filter((i) => i.kind !== "furniture" && i.kind !== "rule");
  return body.flatMap((item) => {
    if (item.kind !== "text" || !/^H[123]$/.test(item.role)) return [];
    const y = foot(item);
    const follows = body.some((o) => o !== item && foot(o) > y + 4);
    return follows ? [] : [item.glyphs.map((g) => g.text).join(" ")];
  });
}
