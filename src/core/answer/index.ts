export * from "./choices.ts";
export * from "./compose.ts";
export * from "./consequences.ts";
export { fabricLetters } from "./fabrics.ts";
export * from "./looks.ts";
export * from "./sentence.ts";
export { measuresOf } from "./stages.ts";
export type * from "./types.ts";
