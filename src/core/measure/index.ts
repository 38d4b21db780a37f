export * from "./length.ts";
export * from "./money.ts";
export * from "./print.ts";
export * from "./step.ts";
export * from "./tolerance.ts";
export * from "./unit.ts";
