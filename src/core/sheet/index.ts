export { csvText } from "./csv.ts";
export * from "./faces.ts";
export { type Paper, type PaperName, paper } from "./grid.ts";
export { type SheetJob, type SheetOptions, sheetJob } from "./job.ts";
export * from "./model.ts";
export { patternSheet } from "./pattern.ts";
export * from "./text.ts";
