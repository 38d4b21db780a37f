export * from "./edition.ts";
export * from "./facts.ts";
export * from "./record.ts";
export * from "./ripple.ts";
