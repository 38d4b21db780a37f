export * from "./crossings.ts";
export * from "./grid.ts";
export * from "./measures.ts";
export * from "./nest.ts";
export * from "./pressing.ts";
export type { SpareOf } from "./spare.ts";
export { spareFrom } from "./spare.ts";
export * from "./types.ts";
export * from "./units.ts";
