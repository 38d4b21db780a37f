export { csvText } from "../table/index.ts";
