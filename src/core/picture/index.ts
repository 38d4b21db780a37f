export {
  type BlockPictureOptions,
  blockMarks,
  blockPicture,
  patchFill,
  seamsOf,
} from "./block.ts";
export { type Cells, cellMarks } from "./cells.ts";
export { dimension, leftHanded, picture, rectangle, tape } from "./compose.ts";
export {
  type CoverPictureOptions,
  coverMarks,
  coverPicture,
  neededFabric,
  spareWords,
} from "./cover.ts";
export * from "./draw.ts";
export * from "./fraction.ts";
export { type HalfPictureOptions, halfPicture } from "./half.ts";
export { type LayoutPictureOptions, layoutPicture } from "./layout.ts";
export { letteredPicture } from "./lettered.ts";
export { type FourLivesOptions, fourLives, LIVES } from "./lives.ts";
export type * from "./marks.ts";
export { type PiecePictureOptions, piecePicture } from "./piece.ts";
export { type WedgePointOptions, wedgePointPicture } from "./point.ts";
export { type QuiltPictureOptions, quiltPicture } from "./quilt.ts";
export { type StepPictureOptions, stepPicture } from "./step.ts";
export { type StripPictureOptions, stripPicture } from "./strip.ts";
export { escapeText, type SvgOptions, toSvg } from "./svg.ts";
export * from "./swatch.ts";
export * from "./theme.ts";
export { type UnitPictureOptions, unitPicture } from "./unit.ts";
export { bothUnits, inches, type Say, sayLength, sayWithUnit } from "./words.ts";
