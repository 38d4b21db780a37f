import Papa from "papaparse";
import { plainCell } from "./write.ts";

/** One line of a list, and where it stood in the text: 1 is the first line. */
export interface TableRow {
  readonly line: number;
  readonly cells: readonly string[];
}

export interface Table {
  readonly separator: Separator;
  readonly rows: readonly TableRow[];
  /** Line of a quote that is opened and never shut; from there on nothing can be trusted. */
  readonly openQuote?: number;
}

export type Separator = "\t" | ";" | "|" | ",";

/** In this order: a list with semicolons may write its decimals with commas. */
const SEPARATORS: readonly Separator[] = ["\t", ";", "|", ","];
/** Rows looked at to find the separator. */
const LOOKED_AT = 40;

/**
 * A pasted or saved list as rows of cells (CSV in any of its dialects, or lines from a spreadsheet).
 * The separator is the first of tab, semicolon, bar and comma that parts the first line and most
 * others. Empty lines
 * are left out; cells lose the space round them and the apostrophe that keeps a formula inert.
 */
export function readTable(text: string): Table {
  const plain = text.replace(/^\uFEFF/, "").replace(/\r\n?/g, "\n");
  const separator = separatorOf(plain);
  const { data, errors } = parse(plain, separator);
  let line = 1;
  const rows: TableRow[] = [];
  for (const cells of data) {
    if (cells.some((c) => c.trim() !== ""))
      rows.push({ line, cells: cells.map((c) => plainCell(c.trim())) });
    line += 1 + cells.reduce((t, c) => t + c.split("\n").length - 1, 0);
  }
  const open = errors.find((e) => e.type === "Quotes" && e.code === "MissingQuotes");
  return { separator, rows, ...(open && { openQuote: rows.at(-1)?.line ?? 1 }) };
}

const parse = (text: string, delimiter: string, preview = 0) =>
  Papa.parse<string[]>(text, { delimiter, newline: "\n", preview, skipEmptyLines: false });

function separatorOf(text: string): Separator {
  const parts = (by: Separator): boolean => {
    const rows = parse(text, by, LOOKED_AT).data.filter((r) => r.join("").trim() !== "");
    const parted = rows.filter((r) => r.length > 1).length;
    return rows.length > 0 && rows[0].length > 1 && 2 * parted >= rows.length;
  };
  return SEPARATORS.find(parts) ?? ",";
}
