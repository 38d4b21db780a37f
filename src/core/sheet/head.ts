import type { PdfPoint } from "../measure/index.ts";
import type { Drawing } from "../picture/index.ts";
import { picture, quiltPicture, rectangle } from "../picture/index.ts";
import type { QuiltGeometry } from "../quilt/index.ts";
import { blockCounts, blockName, blockSort, isWhole } from "./block-words.ts";
import { type Block, Column } from "./column.ts";
import { columns, MEASURE, STYLES } from "./grid.ts";
import {
  counted,
  drawn,
  fabricLetter,
  listed,
  type SheetJob,
  sayBoth,
  sayUnit,
  smallAt,
  trueScale,
} from "./job.ts";
import { type Span, type Style, setLine, setText, textWidth } from "./text.ts";

/** The title, what the sheet is, and the whole job in one sentence. */
export function titleBlock(job: SheetJob, what: string): Block {
  const c = new Column();
  const { title } = job.brief;
  const room = MEASURE - textWidth(what, STYLES.trade) - 16;
  const style = textWidth(title, STYLES.title) <= room ? STYLES.title : STYLES.titleSmall;
  c.gap(8);
  const line = c.y + style.size * 0.78;
  const note = setLine(what, STYLES.trade, MEASURE, line, "end");
  const set = c.paragraph(title, style, { role: "H1", width: room });
  c.add({ kind: "text", role: "Note", glyphs: note.glyphs });
  c.gap(set.lines > 1 ? 4 : 6);
  const sentence = sentenceSpans(job);
  const long = setText(sentence, STYLES.sentence, 0, 0, MEASURE).lines > 3;
  c.paragraph(sentence, long ? STYLES.sentenceLong : STYLES.sentence);
  return c.block();
}

/** Words that could have been others are bold; a word not proved is dotted. */
export function sentenceSpans(job: SheetJob): Span[] {
  return job.answer.sentence.map((part) => ({
    text: part.text.replaceAll(" x ", " × "),
    ...(part.word ? { face: "bold" as const } : {}),
    ...(part.doubt ? { doubt: true } : {}),
  }));
}

export interface QuiltDrawing {
  readonly drawing: Drawing;
  /** One inch of the picture stands for this many. */
  readonly ratio: number;
}

/** The quilt at a whole-number scale that fits the room, with both its sizes. */
export function quiltDrawing(
  job: SheetJob,
  width: PdfPoint,
  height: PdfPoint,
): QuiltDrawing | undefined {
  const { quilt } = job.answer;
  if (!quilt) return undefined;
  const whole = trueScale(job);
  // Sizes are written beside and below, 1.6 lines of small print deep.
  const labels = 1.7 * 9;
  const wide = (quilt.width * whole) / (width - labels);
  const high = (quilt.height * whole) / (height - labels);
  const ratio = Math.max(1, Math.ceil(Math.max(wide, high) - 1e-9));
  const scale = whole / ratio;
  const made = quiltPicture(job.answer, job.placed, {
    looks: job.looks,
    patches: job.between,
    small: smallAt(scale),
    dimensions: { width: sayUnit(job, quilt.width), height: sayUnit(job, quilt.height) },
    title: `The finished top: ${sayBoth(job, quilt.width, quilt.height)}, ${counted(quilt.rows, "row")} of ${quilt.columns}`,
  });
  return { drawing: drawn(job, made, scale, "color"), ratio };
}

const ORDINALS = [
  "full size",
  "one half",
  "one third",
  "one quarter",
  "one fifth",
  "one sixth",
  "one seventh",
  "one eighth",
  "one ninth",
  "one tenth",
  "one eleventh",
  "one twelfth",
];
export const ratioWords = (ratio: number): string => ORDINALS[ratio - 1] ?? `one to ${ratio}`;

/** "How big is it?": the finished sizes, large. */
export function sizeBlock(job: SheetJob, width: PdfPoint): Block {
  const c = new Column(width);
  c.question("How big is it?", width < 200 ? "" : "finished, all seams sewn");
  const { quilt, blocks } = job.answer;
  const sizes: [string, string][] = [];
  if (quilt) {
    sizes.push([sayBoth(job, quilt.width, quilt.height), "the top, finished"]);
    if (quilt.centerWidth < quilt.width - 1e-9)
      sizes.push([sayBoth(job, quilt.centerWidth, quilt.centerHeight), "center, without borders"]);
  }
  const first = blocks.find((b) => b.count > 0);
  if (first) {
    const square = Math.abs(first.width - first.height) < 1e-9;
    const finished = square ? sayUnit(job, first.width) : sayBoth(job, first.width, first.height);
    const raw = square
      ? sayUnit(job, first.width + 2 * job.seam)
      : sayBoth(job, first.width + 2 * job.seam, first.height + 2 * job.seam);
    sizes.push([finished, `${blockSort(first)} (${raw} unfinished)`]);
  }
  const counts = quilt ? blockCounts(blocks) : [];
  if (quilt && counts.length > 0) sizes.push([String(counts[0][0]), countWords(quilt, counts)]);
  if (width < 200) {
    c.gap(5);
    const style = sizeStyle(sizes, width);
    for (const [number, what] of sizes) {
      c.gap(5);
      c.paragraph(number, style);
      c.paragraph(what, STYLES.soft);
    }
    return c.block();
  }
  const fits = (list: readonly Size[], style: Style): boolean =>
    list.reduce((sum, [number]) => sum + askedBy(number, style), 0) <= width;
  const style = fits(sizes, STYLES.size) ? STYLES.size : STYLES.sizeSmall;
  const rows = fits(sizes, style) ? [sizes] : [sizes.slice(0, -2), sizes.slice(-2)];
  for (const row of rows) sizeRow(c, row, style);
  return c.block();
}

/** "blocks and 6 half blocks, 6 rows of 5"; hexagons, all of them in halves, are counted whole. */
function countWords(quilt: QuiltGeometry, counts: readonly (readonly [number, string])[]): string {
  const [[, first], ...others] = counts;
  const kinds = listed([first, ...others.map(([n, sort]) => `${n} ${sort}`)]);
  const rows = `${counted(quilt.rows, "row")} of ${quilt.columns}`;
  return quilt.arrangement === "hexagon-rows"
    ? `${kinds}, for ${rows} hexagons`
    : `${kinds}, ${rows}`;
}

type Size = readonly [number: string, what: string];

const askedBy = (number: string, style: Style): PdfPoint =>
  Math.max(78, textWidth(number, style) + 18);

/** As large as lets every size stand on one line, its unit beside it. */
function sizeStyle(sizes: readonly Size[], width: PdfPoint): Style {
  const over = (style: Style): number =>
    Math.max(...sizes.map(([number]) => textWidth(number, style) / width));
  if (over(STYLES.size) <= 1) return STYLES.size;
  const { size } = STYLES.sizeSmall;
  return { ...STYLES.sizeSmall, size: size / Math.max(1, over(STYLES.sizeSmall) * 1.001) };
}

/** Each column as wide as its number asks, the rest shared out. */
function sizeRow(c: Column, sizes: readonly Size[], style: Style): void {
  const sum = sizes.reduce((total, [number]) => total + askedBy(number, style), 0);
  const top = c.y;
  let lowest = top;
  let x = 0;
  for (const [number, what] of sizes) {
    const each = (askedBy(number, style) / sum) * c.width;
    c.y = top + 3;
    c.paragraph(number, style, { x, width: each - 2 });
    c.paragraph(what, STYLES.soft, { x, width: each - 8 });
    lowest = Math.max(lowest, c.y);
    x += each;
  }
  c.y = lowest;
}

/** Color and hatch side by side: the key to every diagram. A stripe shows one whole repeat. */
export function swatchDrawing(job: SheetJob, fabricId: string, look: "color" | "hatch"): Drawing {
  const seen = job.swatches[fabricId]?.look;
  const inches = job.brief.unit === "in" ? 1 : 25.4;
  const high =
    seen?.kind === "bands" ? (seen.period ?? seen.bands.at(-1)?.to ?? inches) : 2.4 * inches;
  const wide = high * 1.1;
  const made = picture({
    title: `${fabricLetter(job, fabricId)}, ${look === "color" ? "as seen" : "as drawn"}`,
    unit: job.brief.unit,
    box: { left: 0, bottom: 0, right: wide, top: high },
    marks: [
      {
        kind: "shape",
        polygon: rectangle(0, 0, wide, high),
        fill: { kind: "fabric", fabricId },
        line: "rule",
      },
    ],
  });
  return drawn(job, made, 20 / wide, look);
}

/** Picture, its scale, and the kinds of block by their letters. */
export function pictureBlock(job: SheetJob, width: PdfPoint, height: PdfPoint): Block {
  const c = new Column(width);
  const made = quiltDrawing(job, width, height);
  if (made) {
    c.figure(made.drawing, 0, made.drawing.title);
    c.gap(5);
    const used = job.answer.blocks.filter((b) => b.count > 0);
    const kinds = [
      ...used.filter(isWhole).map((b) => `${b.count} ${blockName(b, b.count)}`),
      ...blockCounts(used.filter((b) => !isWhole(b))).map(([n, sort]) => `${n} ${sort}`),
    ];
    c.paragraph(`Drawn at ${ratioWords(made.ratio)}: ${kinds.join(", ")}.`, STYLES.soft, {
      width: Math.max(width, columns(4)),
    });
  }
  return c.block();
}
