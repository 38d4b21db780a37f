import {
  inchToLength,
  type Length,
  lengthToInch,
  lengthToMillimetre,
  printLength,
  printWithUnit,
  type Step,
  stepOf,
  type Unit,
} from "../measure/index.ts";

/** How lengths are said on a picture: to the maker's step where they lie on it, else as a decimal. */
export type Say = (x: Length) => string;

/** A ruler's finest division, for pictures made without the maker's own step. */
export const fineStep = (unit: Unit): Step => stepOf(unit === "in" ? "1/32" : "0.5", unit);

export const sayLength =
  (step: Step): Say =>
  (x) =>
    printLength(x, step);
export const sayWithUnit =
  (step: Step): Say =>
  (x) =>
    printWithUnit(x, step);

/** For templates: `2.760 in, 70.1 mm`, the document's unit first. */
export function bothUnits(x: Length, unit: Unit): string {
  const inches = `${lengthToInch(x, unit).toFixed(3)} in`;
  const mm = `${lengthToMillimetre(x, unit).toFixed(1)} mm`;
  return unit === "in" ? `${inches}, ${mm}` : `${mm}, ${inches}`;
}

/** A nominal size given in inches, in the unit of the document. */
export const inches = (x: number, unit: Unit): Length => inchToLength(x, unit);
