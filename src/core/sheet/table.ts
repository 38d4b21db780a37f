import type { PdfPoint } from "../measure/index.ts";
import { type Block, Column, cell, numberCell } from "./column.ts";
import { MEASURE, STYLES } from "./grid.ts";
import type { Cell } from "./model.ts";
import { type Rich, type Style, setText } from "./text.ts";

/** One column of a table. `at` is its left edge, or for `end` its right edge, or a number's axis. */
export interface TableColumn {
  readonly head: Rich;
  readonly at: PdfPoint;
  /** Words break at this width; a number never breaks. */
  readonly width?: PdfPoint;
  readonly align?: "start" | "end" | "number";
  readonly style?: Style;
}

export interface TableRow {
  /** One text a column; an empty text leaves its place free. */
  readonly cells: readonly Rich[];
  /** Without the hairline above it: a row that goes on with the one before. */
  readonly goesOn?: boolean;
}

/**
 * A table as blocks, one for its head and one for each row, so that a page may end between rows. For
 * a screen reader they are one table, its heads naming the columns.
 */
export function tableBlocks(
  columns: readonly TableColumn[],
  rows: readonly TableRow[],
  width: PdfPoint = MEASURE,
): Block[] {
  const head = new Column(width);
  const y = head.y + 9;
  head.add({
    kind: "table",
    rows: [columns.map((c) => headCell(c, y))],
  });
  head.y = y + 4;
  return [head.block(), ...rows.map((row) => ({ ...rowBlock(columns, row, width), before: 0 }))];
}

function headCell(c: TableColumn, y: PdfPoint): Cell {
  const hung = c.align === "number";
  const at = hung ? c.at + 7 : c.at;
  return cell(c.head, STYLES.small, at, y, hung ? "end" : (c.align ?? "start"), true);
}

function rowBlock(columns: readonly TableColumn[], row: TableRow, width: PdfPoint): Block {
  const c = new Column(width);
  if (!row.goesOn) c.rule();
  const y = c.y + 11;
  let high: PdfPoint = STYLES.text.lead;
  const cells = columns.map((column, i): Cell => {
    const rich = row.cells[i] ?? "";
    const style = column.style ?? (column.align === "number" ? STYLES.number : STYLES.text);
    if (column.align === "number" && typeof rich === "string")
      return numberCell(rich, style, column.at, y);
    if (column.width === undefined || column.align === "end")
      return cell(rich, style, column.at, y, column.align === "end" ? "end" : "start");
    const set = setText(rich, style, column.at, y, column.width);
    high = Math.max(high, set.height);
    return { glyphs: set.glyphs };
  });
  c.add({ kind: "table", rows: [cells], continues: true });
  c.y += high + 3.6;
  return c.block();
}
