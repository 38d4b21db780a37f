import { type Inch, inchToLength, type Length, type Unit } from "../measure/index.ts";
import { flatTip, halfAcross, pastCenter, type Ruler, wedgeBase } from "./ruler.ts";

/** The slip everything is judged by: 1/32 in, about the width of a pencil line (common practice). */
const SLIP: Inch = 1 / 32;
export const slipOf = (unit: Unit): Length => inchToLength(SLIP, unit);

/** One thing to measure on the ruler, what it should be, and what reading it 1/32 in wrong does. */
export interface Reading {
  readonly what: "flat-tip" | "width-at-line" | "line";
  /** Strip line it is measured at; for the tip, none. */
  readonly atLine?: Length;
  readonly shouldBe: Length;
  readonly misread: Length;
  /** Change of the finished octagon across flats. */
  readonly across: Length;
}

export interface RulerReading {
  readonly finished: Length;
  /** How far past the finished center the tip cuts, at this seam. */
  readonly past: Length;
  readonly readings: readonly Reading[];
}

/**
 * How to read your ruler for one strip: measure the flat tip edge to edge where the ruler ends (not
 * at its first printed line), and check by the width at the longest line used. A misread tip moves
 * the height that is missing by e / (2 tan(A/2)), so the octagon by e / tan(A/2) across flats; a
 * strip laid one slip off its line moves it by two slips. Derivation: docs/geometry/rulers.md.
 */
export function readYourRuler(ruler: Ruler, strip: Length, seam: Length, unit: Unit): RulerReading {
  const misread = slipOf(unit);
  const byWidth = misread / Math.tan(ruler.angle / 2);
  const line = ruler.longest ?? strip;
  return {
    finished: 2 * halfAcross(ruler, strip, seam),
    past: pastCenter(ruler, seam),
    readings: [
      { what: "flat-tip", shouldBe: flatTip(ruler), misread, across: byWidth },
      {
        what: "width-at-line",
        atLine: line,
        shouldBe: wedgeBase(ruler, line),
        misread,
        across: byWidth,
      },
      { what: "line", atLine: strip, shouldBe: strip, misread, across: 2 * misread },
    ],
  };
}
