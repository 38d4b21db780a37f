import { type Answer, fabricLetters, looksOf } from "../answer/index.ts";
import { type Brief, seamOf } from "../brief/index.ts";
import type { PatchLook } from "../fabric/index.ts";
import {
  type Length,
  lengthToPoints,
  liesOnStep,
  printLength,
  printWithUnit,
  type Step,
  stepOf,
} from "../measure/index.ts";
import {
  type Drawing,
  draw,
  type FabricLook,
  PAPER,
  PAPER_HATCH,
  type Picture,
  type Swatches,
  swatches,
} from "../picture/index.ts";
import type { Piece } from "../piece/index.ts";
import { type PlacedBlock, placedPatches, placements, type QuiltPatch } from "../quilt/index.ts";
import type { Recipe } from "../recipe/index.ts";
import { type Paper, paper } from "./grid.ts";
import { OPENED, type Opened, type SheetOptions } from "./options.ts";

/** All that the sheets of one pattern are made from. */
export interface SheetJob {
  readonly brief: Brief;
  readonly answer: Answer;
  readonly swatches: Swatches;
  readonly looks: Readonly<Record<string, readonly PatchLook[]>>;
  readonly placed: readonly PlacedBlock[];
  /** Patches of the quilt itself, where they lie. */
  readonly between: readonly QuiltPatch[];
  readonly paper: Paper;
  readonly leftHanded: boolean;
  /** In the order of `OPENED`. */
  readonly opened: readonly Opened[];
  readonly version: string;
  readonly date: string;
  readonly step: Step;
  readonly seam: Length;
}

export function sheetJob(brief: Brief, answer: Answer, options: SheetOptions): SheetJob {
  return {
    brief,
    answer,
    swatches: swatches(brief, fabricLetters(brief)),
    looks: looksOf(brief, answer),
    placed: answer.quilt ? [...placements(brief, answer.quilt)] : [],
    between: answer.quilt ? [...placedPatches(brief, answer.quilt)] : [],
    paper: paper(options.paper ?? (brief.unit === "mm" ? "a4" : "letter")),
    leftHanded: options.leftHanded ?? false,
    opened: OPENED.filter((q) => options.opened?.includes(q)),
    version: options.version,
    date: options.date,
    step: stepOf(brief.step, brief.unit),
    seam: seamOf(brief),
  };
}

/** `4 1/2`, `2.760`: to the maker's step where it lies there, else as a decimal. */
export const say = (job: SheetJob, x: Length): string => printLength(x, job.step);
export const sayUnit = (job: SheetJob, x: Length): string => printWithUnit(x, job.step);
/** `19 × 51 in` */
export const sayBoth = (job: SheetJob, w: Length, h: Length): string =>
  `${say(job, w)} × ${sayUnit(job, h)}`;

/**
 * A length to be measured, not cut: to the maker's step where it lies within a hundredth of an inch
 * of it, else to the nearest 1/32 in (half a millimetre).
 */
export function sayMeasured(job: SheetJob, x: Length): string {
  const { unit } = job.brief;
  const near = Math.round(x / job.step.size.valueOf()) * job.step.size.valueOf();
  const slack = unit === "in" ? 0.01 : 0.25;
  if (Math.abs(near - x) <= slack || liesOnStep(x, job.step)) return printWithUnit(near, job.step);
  const fine = stepOf(unit === "in" ? "1/32" : "0.5", unit);
  const size = fine.size.valueOf();
  return printWithUnit(Math.round(x / size) * size, fine);
}

export const pieceOf = (job: SheetJob, id: string): Piece | undefined =>
  job.answer.pieces.find((p) => p.id === id);
export const recipeOf = (job: SheetJob, pieceId: string): Recipe | undefined =>
  job.answer.recipes.find((r) => r.pieceId === pieceId);
export const fabricName = (job: SheetJob, id: string): string => job.swatches[id]?.name ?? id;
export const fabricLetter = (job: SheetJob, id: string): string => job.swatches[id]?.letter ?? "";

/** Points to a unit of the document at full size. */
export const trueScale = (job: SheetJob): number => lengthToPoints(1, job.brief.unit);

/** A picture as strokes and words in points; labels 9 points high whatever the scale. */
export function drawn(
  job: SheetJob,
  picture: Picture,
  scale: number,
  look: FabricLook = "hatch",
): Drawing {
  const theme = look === "color" ? PAPER : PAPER_HATCH;
  return draw(picture, { theme, swatches: job.swatches, scale, small: theme.small, fabrics: look });
}

/** Height of small print in the document's unit, for a picture that will be drawn at `scale`. */
export const smallAt = (scale: number): Length => PAPER.small / scale;

/** Several of a thing: "24 wedges", "1 kite". */
export const counted = (n: number, thing: string): string =>
  `${n} ${n === 1 ? thing : plural(thing)}`;
export function plural(thing: string): string {
  if (/half$/.test(thing)) return `${thing.slice(0, -1)}ves`;
  return /(s|x|sh|ch)$/.test(thing) ? `${thing}es` : `${thing}s`;
}
export const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);

/** "a", "a and b", "a, b and c". */
export function listed(items: readonly string[]): string {
  if (items.length < 2) return items[0] ?? "";
  return `${items.slice(0, -1).join(", ")} and ${items[items.length - 1]}`;
}
