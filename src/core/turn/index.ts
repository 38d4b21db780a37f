export * from "./fromStock.ts";
export { givenBrief } from "./given.ts";
export { holds, overUnder } from "./holds.ts";
export { type FoundOutput, type TurnOutput, turnOutput } from "./output.ts";
export { type PinProblem, readFree, readPin } from "./read.ts";
export * from "./say.ts";
export { turnRound } from "./turn.ts";
export * from "./types.ts";
