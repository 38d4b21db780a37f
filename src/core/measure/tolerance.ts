import type { Length, Unit } from "./unit.ts";
import { inchToLength } from "./unit.ts";

/**
 * The one home of every tolerance. Stated in inches and converted to the document's unit, so that
 * an inch brief and a metric brief are judged alike. Each has a purpose; none is tuned to a test.
 */
export interface Tolerances {
  /** A number this near to a step of the ruler lies on it: rounding up never jumps past it. */
  readonly step: Length;
  /** Allowance may fall short by this much and still cover: far below what can be cut or seen. */
  readonly cover: Length;
  /** Two edges of one seam, or two points, this near are the same. */
  readonly join: Length;
  /** Shapes whose sides and angles agree this closely are the same cut piece. */
  readonly congruent: Length;
}

export const tolerances = (unit: Unit): Tolerances => ({
  step: inchToLength(1e-9, unit),
  cover: inchToLength(1e-7, unit),
  join: inchToLength(1e-9, unit),
  congruent: inchToLength(1e-7, unit),
});

/** Angles in degrees: an edge this near to the thread counts as straight grain (the trade's view). */
export const STRAIGHT_GRAIN_DEGREES = 2;
/** Beyond this an edge stretches as bias (common practice, no source). */
export const BIAS_DEGREES = 30;
