import type { PdfPoint } from "../measure/index.ts";
import { type Block, Column, cell, numberCell } from "./column.ts";
import { type CutRow, cutRows, sayUp } from "./cutting.ts";
import { STYLES } from "./grid.ts";
import { fabricLetter, fabricName, listed, type SheetJob, say } from "./job.ts";
import type { Cell } from "./model.ts";
import { fabricsInUse } from "./supplies.ts";
import { setText } from "./text.ts";

const AT = { strips: 30, wide: 58, into: 88 } as const;

/**
 * The cutting list, one block for its head and each line of strips, so that a page may end between
 * lines; a line that begins a page has the heads, and its fabric's letter, above it again.
 */
export function cutBlocks(job: SheetJob, width: PdfPoint): Block[] {
  const head = new Column(width);
  head.question("What do I cut?", "in this order, large to small; across the width");
  heads(head);
  return [
    head.block(),
    ...fabricsInUse(job).flatMap((id) => fabricBlocks(job, id, width)),
    handsBlock(job, width),
  ];
}

const pieceAt = (width: PdfPoint): PdfPoint => width - 112;

function heads(c: Column, continues = false): void {
  const y = c.y + 8;
  c.add({
    kind: "table",
    rows: [
      [
        cell("strips", STYLES.small, AT.strips, y, "end", true),
        cell("wide", STYLES.small, AT.wide + 6, y, "end", true),
        cell("cut them into", STYLES.small, AT.into, y, "start", true),
        cell("piece", STYLES.small, pieceAt(c.width), y, "start", true),
        cell("pieces", STYLES.small, c.width, y, "end", true),
      ],
    ],
    ...(continues ? { continues } : {}),
  });
  c.y = y + 4;
}

function fabricBlocks(job: SheetJob, fabricId: string, width: PdfPoint): Block[] {
  const layout = job.answer.layouts.find((l) => l.fabricId === fabricId);
  const groups: CutRow[][] = [];
  for (const row of layout ? cutRows(job, layout) : []) {
    const last = groups[groups.length - 1];
    if (last && row.strips === undefined) last.push(row);
    else groups.push([row]);
  }
  return groups.map((rows, i): Block => {
    const c = new Column(width);
    if (i === 0) c.rule();
    linesOf(job, fabricId, c, rows, i === 0);
    const top = new Column(width);
    heads(top, true);
    top.rule();
    linesOf(job, fabricId, top, rows, true);
    return { ...c.block(), atTop: top.block() };
  });
}

/** One line of strips, with a line more for each further shape cut from them. */
function linesOf(
  job: SheetJob,
  fabricId: string,
  c: Column,
  list: readonly CutRow[],
  lettered: boolean,
): void {
  const rows: Cell[][] = [];
  list.forEach((row, i) => {
    const y = c.y + 11;
    const into = setText(row.into, STYLES.text, AT.into, y, pieceAt(c.width) - AT.into - 8);
    const piece = setText(
      row.letters.length > 0
        ? `**${listed(row.letters)}** ${row.pieceName}`
        : `**${row.pieceName}**`,
      STYLES.text,
      pieceAt(c.width),
      y,
      c.width - 22 - pieceAt(c.width),
    );
    rows.push([
      cell(i === 0 && lettered ? fabricLetter(job, fabricId) : "", STYLES.letter, 0, y + 1),
      cell(row.strips === undefined ? "" : String(row.strips), STYLES.number, AT.strips, y, "end"),
      numberCell(row.strips === undefined ? "" : wideOf(job, row), STYLES.number, AT.wide, y),
      { glyphs: into.glyphs },
      { glyphs: piece.glyphs },
      cell(row.pieces === undefined ? "" : String(row.pieces), STYLES.number, c.width, y, "end"),
    ]);
    c.y += Math.max(into.height, piece.height) + 3.6;
  });
  c.add({ kind: "table", rows, continues: true });
}

/** A strip that only holds longer cuts is cut generously; every other to its own width. */
const wideOf = (job: SheetJob, row: CutRow): string =>
  /along the length|backing/.test(`${row.into} ${row.pieceName}`)
    ? sayUp(job, row.height)
    : say(job, row.height);

/** Lefts and rights, and ways up: what cutting all alike would spoil. A "none" is worth its line. */
function handsBlock(job: SheetJob, width: PdfPoint): Block {
  const c = new Column(width);
  c.rule();
  c.gap(4);
  c.paragraph(handsWords(job));
  return c.block();
}

export function handsWords(job: SheetJob): string {
  const { pieces } = job.answer;
  const lefts = pieces.filter((p) => p.hand === "left" && !p.eitherWay);
  const rights = pieces.filter((p) => p.hand === "right" && !p.eitherWay);
  const either = pieces.filter((p) => p.eitherWay);
  if (lefts.length + rights.length === 0 && either.length === 0)
    return "**Lefts and rights:** none. Every piece is its own mirror image.";
  const count = (list: typeof pieces): string =>
    listed(list.map((p) => `${p.count} ${p.letter} (${fabricName(job, p.fabricId)})`)) || "none";
  const words = [`**Lefts:** ${count(lefts)}. **Rights:** ${count(rights)}.`];
  if (lefts.length + rights.length > 0)
    words.push("Fabric all right side up; count both piles before sewing.");
  if (either.length > 0)
    words.push(`${listed(either.map((p) => p.letter))} may be turned over: both sides are alike.`);
  return words.join(" ");
}
