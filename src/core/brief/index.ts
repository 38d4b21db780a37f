export * from "./canonical.ts";
export * from "./check.ts";
export * from "./read.ts";
export * from "./schema.ts";
