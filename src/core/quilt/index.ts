export * from "./bedSizes.ts";
export { countIn } from "./count.ts";
export * from "./finishing.ts";
export * from "./layout.ts";
export * from "./placing.ts";
export * from "./rows.ts";
export * from "./shape-names.ts";
export * from "./sizes.ts";
export type * from "./types.ts";
