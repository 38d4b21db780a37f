/**
 * A cell that a spreadsheet would run as a formula is given a leading apostrophe, so it stays text.
 * The signs, their full-width forms, and what some programs skip before them: OWASP, CSV Injection.
 */
const FORMULA = /^\s*[=+\-@＝＋－＠]|^[\t\r\n]/u;
const NUMBER = /^-?\d+(\.\d+)?$/;

const cell = (value: string | number): string => {
  const text = String(value);
  const inert = FORMULA.test(text) && !NUMBER.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(inert) ? `"${inert.replaceAll('"', '""')}"` : inert;
};

/** RFC 4180: commas, CRLF, quotes doubled; formulas made inert. */
export const csvText = (rows: readonly (readonly (string | number)[])[]): string =>
  rows.map((row) => `${row.map(cell).join(",")}\r\n`).join("");

/** The text behind a cell that `csvText` made inert; any other cell as it is. */
export const plainCell = (text: string): string =>
  /^'[=+\-@＝＋－＠]/.test(text) ? text.slice(1) : text;
