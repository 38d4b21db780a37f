export * from "./arrangements.ts";
export * from "./compose.ts";
export { boughtOf, stagesOf } from "./cut/asked.ts";
export * from "./cut/cutting.ts";
export { fabricLetters } from "./cut/fabrics.ts";
export { finishingDemands } from "./cut/finishing.ts";
export {
  blocksOf,
  finishedBlock,
  type Measures,
  measuresOf,
  namesOf,
  quiltOf,
  rulerFor,
} from "./cut/stages.ts";
export { stockOf } from "./cut/stock.ts";
export * from "./cut/wedge-guide.ts";
export * from "./left-handed.ts";
export * from "./look/figures.ts";
export * from "./look/looks.ts";
export * from "./look/meetings.ts";
export * from "./look/seen.ts";
export * from "./look/sights.ts";
export * from "./look/table.ts";
export * from "./make-it.ts";
export * from "./otherwise/index.ts";
export { sayLeft } from "./questions/sewing.ts";
export * from "./say/border-steps.ts";
export * from "./say/buying.ts";
export * from "./say/consequences.ts";
export * from "./say/finish-rows.ts";
export * from "./say/phrases.ts";
export * from "./say/plan-words.ts";
export * from "./say/spoken.ts";
export * from "./say/tables.ts";
export * from "./sewing/make-size.ts";
export { judgeReadings } from "./sewing/readings.ts";
export * from "./sewing/spare-left.ts";
export * from "./sewing/steps.ts";
export * from "./sewing/stops.ts";
export * from "./sewing/top-steps.ts";
export * from "./sewing/why.ts";
export * from "./size/plans.ts";
export * from "./size/sizes.ts";
export * from "./size/table.ts";
export type * from "./types/answer.ts";
export type * from "./types/cutting.ts";
export type * from "./types/guide.ts";
export type * from "./types/look.ts";
export type * from "./types/meeting.ts";
export * from "./unproved.ts";
export * from "./words/bring-blocks.ts";
export * from "./words/choices.ts";
export * from "./words/coloring-choices.ts";
export * from "./words/details.ts";
export { nextBorder } from "./words/edges.ts";
export { blocksIn } from "./words/grid.ts";
export * from "./words/own-letters.ts";
export * from "./words/place-words.ts";
export { outerFabric } from "./words/roles.ts";
export * from "./words/sentence.ts";
export { withSetting } from "./words/setting.ts";
export { FREE_SIDE, leastSide } from "./words/size.ts";
export type * from "./words/word.ts";
export { changed } from "./words/word.ts";
