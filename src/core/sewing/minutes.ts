import { type Length, lengthToInch, type Unit } from "../measure/index.ts";
import type { SeamsToSew } from "./assembly.ts";
import type { SewnUnit } from "./types.ts";

/** What there is to sew: whole numbers and inches, so that rates mean the same in every unit. */
export interface Work {
  readonly seams: number;
  readonly inches: number;
  readonly presses: number;
}

/** Minutes of one maker. Estimates to be replaced by her own; no source. */
export interface Rates {
  readonly perSeam: number;
  readonly perInch: number;
  readonly perPress: number;
  /** For each distinct unit: laying out, measuring, reading the step. */
  readonly perStep: number;
}

/** A relaxed class pace: pinning and matching, 40 in of seam a minute under the needle. */
export const RATES: Rates = { perSeam: 0.75, perInch: 1 / 40, perPress: 0.35, perStep: 3 };

export function workOf(units: readonly SewnUnit[], seam: Length, unit: Unit): Work {
  const seams = units.reduce((n, u) => n + u.inAll, 0);
  const length = units.reduce((sum, u) => sum + u.inAll * (u.seam.length + 2 * seam), 0);
  return { seams, inches: lengthToInch(length, unit), presses: seams };
}

export const workOfAssembly = (a: SeamsToSew, unit: Unit): Work => ({
  seams: a.seams,
  inches: lengthToInch(a.length, unit),
  presses: a.seams,
});

export interface Minutes {
  readonly sewing: number;
  readonly pressing: number;
  readonly laying: number;
  readonly total: number;
}

/** Sewing is seams and inches; pressing is trips to the iron; laying is one stop for each step. */
export function minutesFor(work: Work, steps: number, rates: Rates = RATES): Minutes {
  const sewing = work.seams * rates.perSeam + work.inches * rates.perInch;
  const pressing = work.presses * rates.perPress;
  const laying = steps * rates.perStep;
  return { sewing, pressing, laying, total: sewing + pressing + laying };
}
