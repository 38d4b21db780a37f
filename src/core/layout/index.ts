export * from "./handbook.ts";
export * from "./replay.ts";
export * from "./types.ts";
export * from "./yardage.ts";
