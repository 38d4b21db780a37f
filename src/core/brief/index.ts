export * from "./canonical.ts";
export * from "./check.ts";
export * from "./common.ts";
export * from "./lengths.ts";
export * from "./other-unit.ts";
export * from "./read.ts";
export * from "./record.ts";
export * from "./schema.ts";
