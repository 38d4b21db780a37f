import type Fraction from "fraction.js";
import { exactIn, parseLength } from "./length.ts";
import { tolerances } from "./tolerance.ts";
import type { Length, Unit } from "./unit.ts";

/** The smallest division of the maker's ruler, as an exact fraction of the document's unit. */
export interface Step {
  readonly size: Fraction;
  readonly unit: Unit;
}

/** Throws RangeError when the text is no positive length; briefs are checked before they reach it. */
export function stepOf(text: string, unit: Unit): Step {
  const r = parseLength(text, unit);
  if (!r.ok || r.length.value.compare(0) <= 0)
    throw new RangeError(`step must be a positive length, got ${JSON.stringify(text)}`);
  return { size: exactIn(r.length, unit), unit };
}

const onStep = (n: number, step: Step): Length => step.size.mul(BigInt(n)).valueOf();

/** Least step at or above `x`; a number within the step tolerance of a step already lies on it. */
export function roundUp(x: Length, step: Step): Length {
  const size = step.size.valueOf();
  const near = Math.round(x / size);
  if (Math.abs(x - onStep(near, step)) <= tolerances(step.unit).step) return onStep(near, step);
  return onStep(Math.ceil(x / size), step);
}

/** Greatest step at or below `x`, by the same rule. */
export function roundDown(x: Length, step: Step): Length {
  const size = step.size.valueOf();
  const near = Math.round(x / size);
  if (Math.abs(x - onStep(near, step)) <= tolerances(step.unit).step) return onStep(near, step);
  return onStep(Math.floor(x / size), step);
}

export function roundNearest(x: Length, step: Step): Length {
  return onStep(Math.round(x / step.size.valueOf()), step);
}

/** Does `x` lie on the maker's ruler? */
export function liesOnStep(x: Length, step: Step): boolean {
  return Math.abs(x - roundNearest(x, step)) <= tolerances(step.unit).step;
}
