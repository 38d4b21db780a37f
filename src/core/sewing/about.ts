import {
  type Length,
  lengthToInch,
  printWithUnit,
  roundNearest,
  stepOf,
  type Unit,
} from "../measure/index.ts";

/** A small amount as a maker says it: "about 3/64 in", "less than 1/64 in", "about 1.2 mm". */
export function aboutLength(x: Length, unit: Unit): string {
  const size = Math.abs(x);
  const step = stepOf(unit === "in" ? "1/64" : "0.1", unit);
  if (lengthToInch(size, unit) < 1 / 128)
    return unit === "in" ? "less than 1/64 in" : "less than 0.4 mm";
  return `about ${printWithUnit(roundNearest(size, step), step)}`;
}
