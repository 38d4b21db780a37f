import type { Brief } from "../../brief/index.ts";
import {
  inchToLength,
  type Length,
  printAtMark,
  printWithUnit,
  roundDown,
  roundNearest,
  roundUp,
  type Step,
  stepOf,
} from "../../measure/index.ts";
import { aboutLength } from "../../sewing/about.ts";
import type { Replanned } from "../../sewing/stops.ts";
import type { SewnUnit } from "../../sewing/types.ts";
import { inWords } from "../words/word.ts";

/** What a ruler with 1/32 marks and careful hands may be off by: common practice, no source. */
export const readingOf = (b: Brief): Length => inchToLength(1 / 32, b.unit);

/** What a ruler can be read to. */
const MARKS = { in: stepOf("1/32", "in"), mm: stepOf("0.5", "mm") } as const;

export const nearest = (x: Length, b: Brief): Length => roundNearest(x, MARKS[b.unit]);

/** Spare at each side: all alike, or how many sides have none. */
export function spareWords(block: SewnUnit | undefined, unit: Brief["unit"]): string {
  if (!block) return "";
  const spares = block.spareBySide.map((s) => s.spare);
  const some = spares.filter((s) => s > 1e-6);
  if (some.length === 0) return "Nothing to spare at any side: cut and sew exactly.";
  const [least, most] = [Math.min(...some), Math.max(...some)].map((x) => aboutLength(x, unit));
  const range = least === most ? most : `${least} to ${most}`;
  const spare = range.charAt(0).toUpperCase() + range.slice(1);
  return some.length === spares.length
    ? `${spare} to spare at every side, to be trimmed off.`
    : `${spare} to spare at ${inWords(some.length)} of ${inWords(spares.length)} sides, none at the others.`;
}

/** What the seams show themselves to be, and what the block will be; a range where one reading is all. */
export function outcomeWords(later: Replanned, readings: number, b: Brief, step: Step): string {
  const { seamsWider, block } = later;
  const size = printAtMark(nearest(block.expected, b), step);
  const planned = printAtMark(block.planned, step);
  const off = Math.abs(block.expected - block.planned) > readingOf(b) / 2;
  const slight = Math.abs(seamsWider) < inchToLength(1 / 128, b.unit);
  const seams = slight
    ? "The seams are right, the fold counted."
    : `The seams are ${aboutLength(seamsWider, b.unit)} too ${seamsWider > 0 ? "wide" : "narrow"}, the fold counted.`;
  const one = readings === 1 ? ` ${onlyOne(later, b)}` : "";
  return off
    ? `${seams}${one} Sewn on like this, the block will finish ${size}, not ${planned}; make all its fellows the same, or mend the seam.`
    : `${seams}${one} The block will finish ${planned} as planned.`;
}

/** One reading alone may be a slip: between what the seams then lie, and what to do. */
function onlyOne({ seamsWider, within }: Replanned, b: Brief): string {
  const off = printWithUnit(readingOf(b), b.unit === "in" ? MARKS.in : stepOf("0.1", "mm"));
  const fine = stepOf(b.unit === "in" ? "1/64" : "0.1", b.unit);
  const low = seamSaid(roundDown(seamsWider - within, fine), fine);
  const high = seamSaid(roundUp(seamsWider + within, fine), fine);
  return `That rests on one measurement: read ${off} wrong, it would be anything from ${low} to ${high}. Measure another stop to be surer.`;
}

const seamSaid = (x: Length, fine: Step): string =>
  x === 0 ? "right" : `${printWithUnit(Math.abs(x), fine)} too ${x > 0 ? "wide" : "narrow"}`;
