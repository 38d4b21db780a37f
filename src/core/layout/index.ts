export * from "./handbook.ts";
export * from "./in-hand.ts";
export type { Solver } from "./integer.ts";
export * from "./plan.ts";
export * from "./replay.ts";
export * from "./types.ts";
export * from "./yardage.ts";
