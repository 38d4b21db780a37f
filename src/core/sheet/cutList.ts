import type { PdfPoint } from "../measure/index.ts";
import { type Block, Column, cell, numberCell } from "./column.ts";
import { type CutRow, cutRows, sayUp } from "./cutting.ts";
import { STYLES } from "./grid.ts";
import { fabricLetter, fabricName, listed, type SheetJob, say } from "./job.ts";
import type { Cell } from "./model.ts";
import { fabricsInUse } from "./supplies.ts";
import { setText } from "./text.ts";

const AT = { strips: 30, wide: 58, into: 88 } as const;

/** The cutting list, one block for its head and each fabric, so that a page may end between fabrics. */
export function cutBlocks(job: SheetJob, width: PdfPoint): Block[] {
  const head = new Column(width);
  head.question("What do I cut?", "in this order, large to small; across the width");
  const y = head.y + 8;
  const pieceAt = width - 112;
  head.add({
    kind: "table",
    rows: [
      [
        cell("strips", STYLES.small, AT.strips, y, "end", true),
        cell("wide", STYLES.small, AT.wide + 6, y, "end", true),
        cell("cut them into", STYLES.small, AT.into, y, "start", true),
        cell("piece", STYLES.small, pieceAt, y, "start", true),
        cell("pieces", STYLES.small, width, y, "end", true),
      ],
    ],
  });
  head.y = y + 4;
  return [
    head.block(),
    ...fabricsInUse(job).map((id) => fabricBlock(job, id, width, pieceAt)),
    handsBlock(job, width),
  ];
}

function fabricBlock(job: SheetJob, fabricId: string, width: PdfPoint, pieceAt: PdfPoint): Block {
  const c = new Column(width);
  c.rule();
  const rows: Cell[][] = [];
  const layout = job.answer.layouts.find((l) => l.fabricId === fabricId);
  const list = layout ? cutRows(job, layout) : [];
  list.forEach((row, i) => {
    const y = c.y + 11;
    const into = setText(row.into, STYLES.text, AT.into, y, pieceAt - AT.into - 8);
    const piece = setText(
      row.letters.length > 0
        ? `**${listed(row.letters)}** ${row.pieceName}`
        : `**${row.pieceName}**`,
      STYLES.text,
      pieceAt,
      y,
      width - 22 - pieceAt,
    );
    rows.push([
      cell(i === 0 ? fabricLetter(job, fabricId) : "", STYLES.letter, 0, y + 1),
      cell(row.strips === undefined ? "" : String(row.strips), STYLES.number, AT.strips, y, "end"),
      numberCell(row.strips === undefined ? "" : wideOf(job, row), STYLES.number, AT.wide, y),
      { glyphs: into.glyphs },
      { glyphs: piece.glyphs },
      cell(row.pieces === undefined ? "" : String(row.pieces), STYLES.number, width, y, "end"),
    ]);
    c.y += Math.max(into.height, piece.height) + 3.6;
  });
  c.add({ kind: "table", rows, continues: true });
  return c.block();
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
