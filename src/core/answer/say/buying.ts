import Fraction from "fraction.js";
import { type Length, printFraction, type Unit } from "../../measure/index.ts";
import type { Answer } from "../types/answer.ts";

/** What to buy of a fabric, by its first yardage (at the stated width). */
export const buying = (a: Answer, fabricId: string): { text: string; length: Length } => {
  const y = a.yardages.find((x) => x.fabricId === fabricId);
  return { text: y?.buyText ?? "none", length: y?.buy ?? 0 };
};

/** A length of fabric as a shop says it: eighths of a yard, or meters. */
export function amount(x: Length, unit: Unit): string {
  if (unit === "mm") return `${Number((x / 1000).toFixed(2))} m`;
  const eighths = Math.round((x / 36) * 8);
  return `${printFraction(new Fraction(eighths, 8))} yd`;
}
