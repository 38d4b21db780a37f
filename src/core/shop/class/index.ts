export * from "./minutes.ts";
export * from "./plan.ts";
export * from "./point.ts";
export * from "./seam.ts";
export * from "./stepOuts.ts";
export * from "./student.ts";
export type * from "./types.ts";
export * from "./words.ts";
