// Pages in real units, before anyone writes PDF. To make a sheet of one's own:
//
//   1. Set parts as blocks: a `Column` of some width is set from the top down (question, paragraph,
//      figure, rule, stop); `tableBlocks` sets a table whose rows may part; `beside` and `stacked` join
//      blocks. Styles are those of `STYLES`, widths those of `columns(n)` out of twelve.
//   2. Put them on pages with `paginate`: a block is never parted, its `before` is the gap above it.
//   3. Sign them with `withFeet`, and give back a `Sheet`.
//   4. Give it a line in `SHEETS` (all.ts): the command line, the page and the PDF writer follow.
//
// What a sheet needs of the design is in its `SheetJob`; lengths are printed by `say`, `sayUnit`,
// `sayBoth` and (to be measured, not cut) `sayMeasured`, pictures drawn by `drawn`. Equal jobs give
// equal pages. docs/sheets.md shows a whole sheet.
export { makeSheet, SHEET_NAMES, SHEETS, type SheetName, sheetNames } from "./all.ts";
export { cardSheet } from "./card.ts";
export { chartSheet } from "./chart.ts";
export {
  type Block,
  beside,
  Column,
  cell,
  moved,
  numberCell,
  paginate,
  stacked,
  withFeet,
} from "./column.ts";
export { csvText } from "./csv.ts";
export { DXF_LAYERS, dxfText } from "./dxf.ts";
export * from "./faces.ts";
export { footWords } from "./foot.ts";
export { formFiles } from "./forms.ts";
export { columnAt, columns, MEASURE, type Paper, type PaperName, paper, STYLES } from "./grid.ts";
export {
  drawn,
  type SheetJob,
  say,
  sayBoth,
  sayMeasured,
  sayUnit,
  sheetJob,
  smallAt,
  trueScale,
} from "./job.ts";
export { layoutSheet } from "./layouts.ts";
export { listFiles } from "./lists.ts";
export * from "./model.ts";
export * from "./options.ts";
export { longSheet, patternSheet } from "./pattern.ts";
export { pictureFiles } from "./pictures.ts";
export { type Check, draftReasons, type OpenPoint, releaseChecks } from "./release.ts";
export { sewingSheet } from "./sewing.ts";
export { type TableColumn, type TableRow, tableBlocks } from "./table.ts";
export { templateSheet } from "./templates.ts";
export * from "./text.ts";
