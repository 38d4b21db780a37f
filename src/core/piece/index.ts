export * from "./grain.ts";
export * from "./pieces.ts";
export * from "./place.ts";
export * from "./shape.ts";
export * from "./trim.ts";
export * from "./types.ts";
