export * from "./ask.ts";
export * from "./bowed.ts";
export * from "./hole.ts";
export * from "./mirrored.ts";
export * from "./one-hand.ts";
export * from "./two-rulers.ts";
export * from "./words.ts";
