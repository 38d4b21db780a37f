import type { Length } from "../../measure/index.ts";
import type { OtherWay, RulerReading } from "../../recipe/index.ts";

/** The wedge of one kind of block: by her ruler, by any other way, and how to read the ruler. */
export interface WedgeGuide {
  readonly blockId: string;
  readonly strip: Length;
  readonly ways: readonly OtherWay[];
  readonly reading: RulerReading;
}
