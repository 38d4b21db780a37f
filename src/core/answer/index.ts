export * from "./arrangements.ts";
export { boughtOf, stagesOf } from "./asked.ts";
export * from "./border-steps.ts";
export * from "./bring-blocks.ts";
export * from "./buying.ts";
export * from "./choices.ts";
export * from "./coloring-choices.ts";
export * from "./compose.ts";
export * from "./consequences.ts";
export * from "./cutting.ts";
export * from "./details.ts";
export { fabricLetters } from "./fabrics.ts";
export * from "./figures.ts";
export * from "./finish-rows.ts";
export { finishingDemands } from "./finishing.ts";
export * from "./left-handed.ts";
export * from "./look.ts";
export * from "./look-table.ts";
export type * from "./look-types.ts";
export * from "./looks.ts";
export * from "./make-it.ts";
export * from "./make-size.ts";
export * from "./meetings.ts";
export * from "./otherwise/index.ts";
export * from "./own-letters.ts";
export * from "./phrases.ts";
export * from "./place-words.ts";
export * from "./plan-words.ts";
export { sayLeft } from "./questions-of-sewing.ts";
export { judgeReadings } from "./read-readings.ts";
export { outerFabric } from "./roles.ts";
export * from "./sentence.ts";
export * from "./sewing-steps.ts";
export * from "./sight.ts";
export * from "./size-plans.ts";
export * from "./size-table.ts";
export * from "./sizes.ts";
export * from "./spare-left.ts";
export * from "./spoken.ts";
export {
  blocksOf,
  finishedBlock,
  type Measures,
  measuresOf,
  namesOf,
  quiltOf,
  rulerFor,
} from "./stages.ts";
export { stockOf } from "./stock.ts";
export * from "./stops.ts";
export * from "./tables.ts";
export * from "./top-steps.ts";
export type * from "./types.ts";
export * from "./unproved.ts";
export * from "./wedgeGuide.ts";
export * from "./why.ts";
export type * from "./words.ts";
export { changed } from "./words.ts";
export { nextBorder } from "./words-of-edges.ts";
export { blocksIn } from "./words-of-grid.ts";
export { withSetting } from "./words-of-setting.ts";
export { FREE_SIDE, leastSide, type Setting } from "./words-of-size.ts";
