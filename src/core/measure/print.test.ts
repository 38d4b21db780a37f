import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { printAtMark, printFraction, printLength, printWithUnit, printYards } from "./print.ts";
import { stepOf } from "./step.ts";
import type { Unit } from "./unit.ts";

const print = (x: number, step: string, unit: Unit) => printLength(x, stepOf(step, unit));

describe("lengths for people", () => {
  test.each([
    [4.5, "1/8", "4 1/2"],
    [0.375, "1/8", "3/8"],
    [8, "1/8", "8"],
    [0, "1/8", "0"],
    [7.1875, "1/16", "7 3/16"],
    [7.1875, "1/8", "7.188"],
    [0.03125, "1/32", "1/32"],
    [4.903281, "1/8", "4.903"],
    [2.1, "0.1", "2 1/10"],
    [-1.625, "1/8", "-1 5/8"],
    [-0.02, "1/8", "-0.020"],
    [-0.0002, "1/8", "0.000"],
    [4.5 + 4e-10, "1/8", "4 1/2"],
    [0.1 + 0.2 - 0.3 + 1.125, "1/8", "1 1/8"],
  ])("%d at steps of %s in: %s", (x, step, text) => {
    expect(print(x, step, "in")).toBe(text);
  });

  test.each([
    [115, "1", "115"],
    [182.5, "0.25 cm", "182.5"],
    [182.4, "0.25 cm", "182.4"],
    [182.44, "1 mm", "182.4"],
    [97, "0.25 cm", "97.0"],
    [97.5, "0.25 cm", "97.5"],
    [100, "0.5 cm", "100"],
    [-6, "1 mm", "-6"],
  ])("%d mm at steps of %s: %s", (x, step, text) => {
    expect(print(x, step, "mm")).toBe(text);
  });

  test("with its unit, never a prime mark; digits off the step can be chosen", () => {
    expect(printWithUnit(7.1875, stepOf("1/16", "in"))).toBe("7 3/16 in");
    expect(printWithUnit(7.1875, stepOf("1/8", "in"), 4)).toBe("7.1875 in");
    expect(printWithUnit(182.5, stepOf("0.25 cm", "mm"))).toBe("182.5 mm");
  });

  test("what is no number stays visible", () => {
    expect(print(Number.NaN, "1/8", "in")).toBe("NaN");
    expect(print(Number.POSITIVE_INFINITY, "1/8", "in")).toBe("Infinity");
  });

  test("fractions in lowest terms", () => {
    expect(printFraction(new Fraction(6, 4))).toBe("1 1/2");
    expect(printFraction(new Fraction(-6, 16))).toBe("-3/8");
    expect(printFraction(new Fraction(-9, 4))).toBe("-2 1/4");
    expect(printYards(new Fraction(11, 8))).toBe("1 3/8 yd");
  });

  test.each([
    [4.5, "4 1/2 in"],
    [4.5769, "4 9/16 in (1/64 over)"],
    [6.6091, "6 5/8 in (1/64 under)"],
    [4.0208, "4 in (1/64 over)"],
    [12.437, "12 7/16 in"],
    [7.402, "7 13/32 in"],
    [0.992, "1 in (1/64 under)"],
  ])("%d in to be measured: %s", (x, text) => {
    expect(printAtMark(x, stepOf("1/8", "in"))).toBe(text);
  });

  test("what is said at a mark is right to 1/128 in, over its whole range", () => {
    for (let x = 0.02; x < 3; x += 0.0017) {
      const said = printAtMark(x, stepOf("1/8", "in"));
      const [, whole, top, bottom, off] =
        /^(?:(\d+)(?: |$))?(?:(\d+)\/(\d+) )?in(?: \(1\/64 (over|under)\))?$/.exec(said) ?? [];
      const mark = Number(whole ?? 0) + (top ? Number(top) / Number(bottom) : 0);
      const meant = mark + (off === "over" ? 1 / 64 : off === "under" ? -1 / 64 : 0);
      expect(Math.abs(meant - x), said).toBeLessThanOrEqual(1 / 128 + 1e-12);
    }
  });

  test("millimeters to be measured: the nearest half", () => {
    expect(printAtMark(105.9, stepOf("1", "mm"))).toBe("106 mm");
    expect(printAtMark(193.42, stepOf("1", "mm"))).toBe("193.5 mm");
    expect(printAtMark(182.25, stepOf("0.25", "mm"))).toBe("182.25 mm");
  });
});
