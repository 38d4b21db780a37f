import { lengthProblem } from "../brief/index.ts";
import type { Finding } from "../findings/index.ts";
import { type Cents, parseLength, readMoney, type Unit } from "../measure/index.ts";
import { readTable, type TableRow } from "../table/index.ts";
import { type Columns, columnsOf, isHeading, type Meaning } from "./stockColumns.ts";

/** A bolt is cut to length; a quarter, a strip and a scrap are pieces of fabric as they lie. */
export type StockKind = "bolt" | "quarter" | "strip" | "scrap";

/** Fabric that is there: one row of a stock list. Lengths are texts the brief's reader takes. */
export interface StockPiece {
  /** Line of the list, 1 for the first. */
  readonly line: number;
  /** The fabric as the list calls it; inert text. */
  readonly fabric: string;
  readonly kind: StockKind;
  /** Across; absent for a bolt whose list does not say: its fabric's usable width. */
  readonly width?: string;
  /** Along the selvage: what is left on a bolt, the length of a piece. */
  readonly length: string;
  readonly count: number;
  /** For one yard, or one meter where the list's unit is mm; no currency. */
  readonly cost?: Cents;
  readonly note?: string;
}

export interface StockList {
  readonly pieces: readonly StockPiece[];
  /** Place `line 3`. `blocks`: that row is left out; `advice`: the row is kept. */
  readonly findings: readonly Finding[];
  /** The heading, as it stood: rows that were left out can only be read again under it. */
  readonly heading?: string;
  /** The rows left out, as they stood, so that nothing is lost. */
  readonly leftOut: readonly { readonly line: number; readonly text: string }[];
}

/** Rows read from one list: more than any shop's shelf. */
export const MOST_STOCK_ROWS = 2000;
/** Longest name or note kept, as in a brief. */
const LONGEST_NAME = 120;
/** Likewise: the longest text of a length. */
const LONGEST_LENGTH = 40;
/** As much of a text as is kept: no half of a character, and no space that the next reader drops. */
const kept = (text: string): string =>
  text
    .slice(0, LONGEST_NAME)
    .replace(/[\uD800-\uDBFF]$/, "")
    .trimEnd();
const MOST_OF_ONE = 1000;

/**
 * Reads a list of bolts, quarters, strips and scraps: typed, pasted from a spreadsheet or saved as
 * CSV, with or without a heading. With a heading the columns may stand in any order and name their
 * unit ("length (yd)"); without one they are fabric, width, length, how many. A size may stand in one
 * cell, `18 x 21`. Row by row: what cannot be trusted is left out with a finding, the rest is kept.
 */
export function readStock(text: string, unit: Unit): StockList {
  const table = readTable(text);
  const findings: Finding[] = [];
  const [first, ...others] = table.rows;
  if (!first) return { pieces: [], findings: [finding("stock-empty", "list")], leftOut: [] };
  const headed = isHeading(first.cells);
  const columns = columnsOf(headed ? first.cells : undefined);
  const rows = headed ? others : table.rows;
  if (rows.length === 0)
    return { pieces: [], findings: [finding("stock-empty", "list")], leftOut: [] };
  const missing = headed ? missingIn(columns) : [];
  if (missing.length > 0) {
    const words = { missing: missing.join(", "), columns: first.cells.join(", ") };
    return {
      pieces: [],
      findings: [{ ...finding("stock-column-missing", at(first)), words }],
      leftOut: rows.map(leftOut),
    };
  }
  if (rows.length > MOST_STOCK_ROWS)
    findings.push({
      ...finding("stock-too-many-rows", "list"),
      needed: MOST_STOCK_ROWS,
      found: rows.length,
      unit: "count",
    });
  const pieces: StockPiece[] = [];
  const left: { line: number; text: string }[] = rows.slice(MOST_STOCK_ROWS).map(leftOut);
  for (const row of rows.slice(0, MOST_STOCK_ROWS)) {
    const read =
      table.openQuote === row.line
        ? { findings: [finding("stock-quote-open", at(row))] }
        : readRow(row, columns, unit);
    findings.push(...read.findings);
    if (read.piece) pieces.push(read.piece);
    else left.push(leftOut(row));
  }
  const heading = headed ? { heading: leftOut(first).text } : {};
  return { pieces, findings, ...heading, leftOut: left };
}

const at = (row: TableRow): string => `line ${row.line}`;
const leftOut = (row: TableRow) => ({ line: row.line, text: row.cells.join(" | ") });
const finding = (
  code: Finding["code"],
  place: string,
  words?: Record<string, string>,
  severity: Finding["severity"] = "blocks",
): Finding => ({ code, severity, place, ...(words && { words }) });

/** A length must be somewhere, and a name. */
const missingIn = (columns: Columns): string[] => [
  ...(columns.at.fabric === undefined ? ["fabric"] : []),
  ...(columns.at.length === undefined && columns.at.size === undefined ? ["length"] : []),
];

interface ReadRow {
  readonly piece?: StockPiece;
  readonly findings: readonly Finding[];
}

function readRow(row: TableRow, columns: Columns, unit: Unit): ReadRow {
  const findings: Finding[] = [];
  const place = at(row);
  const cell = (m: Meaning): string => {
    const i = columns.at[m];
    return i === undefined ? "" : (row.cells[i] ?? "");
  };
  const refuse = (code: Finding["code"], what: string, text: string): undefined => {
    findings.push(finding(code, place, { what, text: kept(text) }));
    return undefined;
  };
  const length = (what: string, text: string, unitOf?: string): string | undefined => {
    if (text === "") return refuse("stock-cell-missing", what, "");
    const bare = /^[-\u2212+\d\s.,/]+$/.test(text);
    const full = bare && unitOf ? `${text} ${unitOf}` : text;
    if (/^[-\u2212]/.test(text)) return refuse("stock-not-positive", what, text);
    const read = parseLength(full, unit);
    if (!read.ok) return refuse("stock-cell-not-read", what, text);
    if (read.length.value.n === 0n) return refuse("stock-not-positive", what, text);
    if (full.length > LONGEST_LENGTH || lengthProblem(full, unit, false))
      return refuse("stock-cell-not-read", what, text);
    return full;
  };

  if (row.cells.slice(columns.count).some((c) => c !== ""))
    refuse("stock-too-many-cells", String(row.cells.length), row.cells.join(" | "));
  const fabric = kept(cell("fabric"));
  if (fabric === "") refuse("stock-cell-missing", "fabric", "");
  const size = sizeIn(cell("size") || (columns.headed ? "" : cell("width")));
  const along = length(
    "length",
    size ? size.length : cell("length"),
    size ? undefined : columns.unit.length,
  );
  const acrossText = size ? size.width : cell("width");
  const kind = kindOf(cell("kind"), acrossText);
  const across =
    acrossText === "" && kind === "bolt"
      ? undefined
      : length("width", acrossText, size ? undefined : columns.unit.width);
  const count = countOf(cell("count"));
  if (count === undefined) refuse("stock-count", "how many", cell("count"));
  const cost = costOf(cell("cost"));
  if (cost === "bad")
    findings.push(
      finding("stock-cost-not-read", place, { text: cell("cost").slice(0, 40) }, "advice"),
    );
  if (findings.some((f) => f.severity === "blocks")) return { findings };
  const note = kept(cell("note"));
  return {
    findings,
    piece: {
      line: row.line,
      fabric,
      kind,
      ...(across !== undefined && { width: across }),
      length: along as string,
      count: count as number,
      ...(typeof cost === "number" && { cost }),
      ...(note !== "" && { note }),
    },
  };
}

/** "18 x 21", "18 by 21 in": across by along. */
function sizeIn(text: string): { width: string; length: string } | undefined {
  const m = /^(.+?)\s*(?:x|×|\*|\bby\b)\s*(.+)$/i.exec(text);
  if (!m) return undefined;
  const unit = /[a-z"″”]+\.?$/i.exec(m[2])?.[0] ?? "";
  const width = /[a-z"″”]$/i.test(m[1]) ? m[1] : `${m[1]} ${unit}`.trim();
  return { width, length: m[2] };
}

/** The kind as said, or told by what is said: without a width it can only be a bolt. */
function kindOf(text: string, width: string): StockKind {
  const said = text.toLowerCase();
  const known = (["bolt", "quarter", "strip", "scrap"] as const).find((k) => said.includes(k));
  return known ?? (width === "" ? "bolt" : "scrap");
}

/** 1 when nothing is said; whole and above nothing. */
function countOf(text: string): number | undefined {
  if (text === "") return 1;
  const m = /^(?:x\s*)?(\d{1,4})(?:[.,]0+)?\s*(?:x|pcs?|pieces?)?$/i.exec(text);
  const n = m ? Number(m[1]) : 0;
  return n >= 1 && n <= MOST_OF_ONE ? n : undefined;
}

/** A price as money is read, whatever is said of it before and after: "$12.95 a yard". */
function costOf(text: string): Cents | undefined | "bad" {
  if (text === "") return undefined;
  return readMoney(text.replace(/^[^\d-]+|\D+$/g, "")) ?? "bad";
}
