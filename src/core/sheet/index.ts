export { csvText } from "./csv.ts";
export * from "./faces.ts";
export * from "./model.ts";
export * from "./text.ts";
