export { acceptDrops, chooseFile, handOver, readText } from "./files.ts";
export { useKeep } from "./react.ts";
export { sayKept, sayNotice } from "./say.ts";
export { createKeep } from "./store.ts";
export { slugOf } from "./text.ts";
export * from "./types.ts";
