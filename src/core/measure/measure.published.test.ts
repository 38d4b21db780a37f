import Fraction from "fraction.js";
import { describe, expect, test } from "vitest";
import { exactIn, parseLength } from "./length.ts";
import { printLength, printYards } from "./print.ts";
import { stepOf } from "./step.ts";
import {
  inchToLength,
  lengthToInch,
  lengthToMillimetre,
  lengthToPoints,
  MM_PER_INCH,
  POINTS_PER_INCH,
  toDegrees,
  toRadians,
  type Unit,
} from "./unit.ts";

const exact = (text: string, unit: Unit) => {
  const r = parseLength(text, unit);
  if (!r.ok) throw new Error(`${text}: ${r.error.problem}`);
  return exactIn(r.length, unit);
};

describe("inch, yard, point", () => {
  // NIST Special Publication 811, appendix B.8, and Federal Register of 1959-07-01 (from memory):
  // the inch is 25.4 mm and the yard 0.9144 m, exactly.
  test("the inch is 25.4 mm and the yard 914.4 mm, exactly", () => {
    expect(MM_PER_INCH).toBe(25.4);
    expect(exact("1 in", "mm").equals(new Fraction("25.4"))).toBe(true);
    expect(exact("1 yd", "mm").equals(new Fraction("914.4"))).toBe(true);
  });

  // ISO 32000-1, 8.3.2: the default unit of user space is 1/72 inch. A4 by ISO 216, Letter by
  // ANSI/ASME Y14.1 (both from memory).
  test("A4 and Letter in points", () => {
    expect(POINTS_PER_INCH).toBe(72);
    expect(lengthToPoints(210, "mm").toFixed(4)).toBe("595.2756");
    expect(lengthToPoints(297, "mm").toFixed(4)).toBe("841.8898");
    expect(lengthToPoints(8.5, "in")).toBe(612);
    expect(lengthToPoints(11, "in")).toBe(792);
    expect(lengthToMillimetre(8.5, "in")).toBeCloseTo(215.9, 12);
  });

  // Weed'n'stitch, metric flying geese (2012): seams of 0.75 cm; 6 and 7 mm are common practice, no
  // source. A quarter inch is 6.35 mm.
  test("metric seams beside a quarter inch", () => {
    const quarter = lengthToMillimetre(0.25, "in");
    expect(quarter).toBe(6.35);
    expect((quarter - 6).toFixed(2)).toBe("0.35");
    expect((7.5 - quarter).toFixed(2)).toBe("1.15");
    expect(lengthToInch(inchToLength(0.25, "mm"), "mm")).toBe(0.25);
  });

  test("degrees and radians", () => {
    expect(toRadians(180)).toBe(Math.PI);
    expect(toDegrees(toRadians(22.5))).toBeCloseTo(22.5, 14);
  });
});

describe("fractions of a yard", () => {
  // Catbird Quilts, fraction conversions (2014), and a quilting forum's table of yard fractions.
  // Millimetres follow exactly. One resource page prints "4/5 inches" for 1/8 yd: 3.7 in short.
  test.each([
    ["1/8", "4 1/2", "114.3"],
    ["1/4", "9", "228.6"],
    ["1/3", "12", "304.8"],
    ["3/8", "13 1/2", "342.9"],
    ["1/2", "18", "457.2"],
    ["5/8", "22 1/2", "571.5"],
    ["2/3", "24", "609.6"],
    ["3/4", "27", "685.8"],
    ["7/8", "31 1/2", "800.1"],
    ["1", "36", "914.4"],
  ])("%s yd is %s in is %s mm", (yards, inches, millimetres) => {
    const inIn = exact(`${yards} yd`, "in");
    expect(printLength(inIn.valueOf(), stepOf("1/8", "in"))).toBe(inches);
    expect(exact(`${yards} yd`, "mm").equals(new Fraction(millimetres))).toBe(true);
    expect(printYards(inIn.div(36))).toBe(`${yards} yd`);
  });

  test("the misprint of 4/5 in for an eighth of a yard is 3.7 short", () => {
    expect(exact("1/8 yd", "in").sub(exact("4/5", "in")).valueOf()).toBe(3.7);
  });
});
