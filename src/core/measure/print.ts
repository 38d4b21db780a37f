import type Fraction from "fraction.js";
import type { Step } from "./step.ts";
import { liesOnStep, roundNearest, stepOf } from "./step.ts";
import type { Length } from "./unit.ts";

/**
 * A length for people. On the ruler's step: a true fraction (`7 3/16`) or, in metric, a decimal.
 * Off the step: a decimal with `places` digits (default 3 in inches, 1 in mm), never a rounded
 * fraction, so that a number nobody can cut never looks like one that can. Plain ASCII; the page
 * and the sheets set real fraction glyphs from it.
 */
export function printLength(x: Length, step: Step, places = step.unit === "in" ? 3 : 1): string {
  if (!Number.isFinite(x)) return String(x);
  const negative = x < 0;
  const size = Math.abs(x);
  const text = liesOnStep(size, step) ? printOnStep(size, step) : size.toFixed(places);
  return negative && Number(text) !== 0 ? `-${text}` : text;
}

function printOnStep(x: Length, step: Step): string {
  const times = BigInt(Math.round(roundNearest(x, step) / step.size.valueOf()));
  const exact = step.size.mul(times);
  return isRulerFraction(step) ? printFraction(exact) : trimDecimal(exact);
}

/** Inch steps such as 1/8 print as fractions; 0.25 cm and 1 mm print as decimals. */
const isRulerFraction = (step: Step): boolean => step.unit === "in" && step.size.d <= 128n;

const trimDecimal = (f: Fraction): string => String(Number(f.valueOf().toFixed(4)));

/** `7 3/16`, `3/4`, `8`, `-1/2`: lowest terms, whole number first. */
export function printFraction(f: Fraction): string {
  if (f.s < 0n) return `-${printFraction(f.neg())}`;
  const whole = f.n / f.d;
  const rest = f.n % f.d;
  if (rest === 0n) return String(whole);
  return whole === 0n ? `${rest}/${f.d}` : `${whole} ${rest}/${f.d}`;
}

/** With its unit, never a prime mark: `7 3/16 in`, `182.5 mm`. */
export const printWithUnit = (x: Length, step: Step, places?: number): string =>
  `${printLength(x, step, places)} ${step.unit}`;

/**
 * A length that is measured or marked, not cut along a line of the ruler. On the step it is exact; off
 * it, right to 1/128 in, the nearest 1/32 in or, from the plainer mark beside it, the 64th it is over
 * or under: `4 9/16 in (1/64 over)`. In metric, the nearest half millimetre.
 */
export function printAtMark(x: Length, step: Step): string {
  if (!Number.isFinite(x) || liesOnStep(x, step)) return printWithUnit(x, step);
  if (step.unit === "mm") return printWithUnit(roundNearest(x, HALF_MM), HALF_MM);
  const sixtyFourths = Math.round(x * 64);
  if (sixtyFourths % 2 === 0) return printWithUnit(sixtyFourths / 64, MARK);
  const under = sixtyFourths + 1;
  // Of two neighboring even numbers just one is divided by four: the longer line of the ruler.
  return under % 4 === 0
    ? `${printWithUnit(under / 64, MARK)} (1/64 under)`
    : `${printWithUnit((sixtyFourths - 1) / 64, MARK)} (1/64 over)`;
}

const MARK = stepOf("1/32", "in");
const HALF_MM = stepOf("0.5", "mm");

/** Yards as a shop says them: `1 3/8 yd`, from inches that lie on an eighth. */
export const printYards = (yards: Fraction): string => `${printFraction(yards)} yd`;
