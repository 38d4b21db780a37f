import { describe, expect, test } from "vitest";
import { exactIn, knownLength, lengthIn, parseLength } from "./length.ts";
import type { Unit } from "./unit.ts";

const read = (text: string, unit: Unit = "in") => {
  const r = parseLength(text, unit);
  if (!r.ok) throw new Error(`${text}: ${r.error.problem}`);
  return r.length;
};

describe("lengths as people type them", () => {
  test.each([
    ["4 1/2", "9/2"],
    ["4-1/2", "9/2"],
    ["4 - 1/2", "9/2"],
    ["4.5", "9/2"],
    ["4,5", "9/2"],
    ["9/2", "9/2"],
    ["4½", "9/2"],
    ['4½"', "9/2"],
    ["4 ½″", "9/2"],
    ["4 1/2 in", "9/2"],
    ["4 1/2 in.", "9/2"],
    ["4 1/2in", "9/2"],
    ["  4   1/2  inches ", "9/2"],
    ["4 1 / 2 Inch", "9/2"],
    ["4 1⁄2", "9/2"],
    ["4\u00a01/2", "9/2"],
    ["7", "7"],
    ["0", "0"],
    [".5", "1/2"],
    ["0.1", "1/10"],
    ["⅞", "7/8"],
    ["3 ⅓", "10/3"],
    ["5/8 yd", "45/2"],
    ["1 1/4 yards", "45"],
    ["10/4", "5/2"],
    ["00012.50", "25/2"],
  ])("%s in", (text, fraction) => {
    const typed = read(text);
    expect(typed.value.toFraction()).toBe(fraction);
    expect(typed.unit).toBe("in");
    expect(typed.text).toBe(text);
  });

  test.each([
    ["11.5 cm", "115"],
    ["115 mm", "115"],
    ["115mm.", "115"],
    ["11,5cm", "115"],
    ["0.75 cm", "15/2"],
    ["1.2 m", "1200"],
    ["1/3 cm", "10/3"],
  ])("%s in a document in inches or millimetres", (text, millimetres) => {
    for (const unit of ["in", "mm"] as const) {
      expect(read(text, unit).value.toFraction()).toBe(millimetres);
      expect(read(text, unit).unit).toBe("mm");
    }
  });

  test("without a unit the document's is meant", () => {
    expect(read("7", "mm").unit).toBe("mm");
    expect(read("7", "in").unit).toBe("in");
  });

  test("crossing between units is exact, both ways", () => {
    expect(exactIn(read("4 1/2 in"), "mm").toFraction()).toBe("1143/10");
    expect(exactIn(read("114.3 mm"), "in").toFraction()).toBe("9/2");
    expect(lengthIn(read("1 in"), "mm")).toBe(25.4);
    expect(lengthIn(read("11.5 cm"), "in")).toBe(115 / 25.4);
    expect(knownLength("2 3/4", "in")).toBe(2.75);
    expect(knownLength("1/8 yd", "mm")).toBe(114.3);
  });
});

describe("what is no length", () => {
  test.each([
    ["", "empty"],
    ["   ", "empty"],
    ["four", "not-a-length"],
    ["in", "not-a-length"],
    ["-4", "not-a-length"],
    ["4--1/2", "not-a-length"],
    ["4 1/2/3", "not-a-length"],
    ["4 5 1/2", "not-a-length"],
    ["4 5", "not-a-length"],
    ["4.5 1/2", "not-a-length"],
    ["1.2.3", "not-a-length"],
    ["4.", "not-a-length"],
    ["4/", "not-a-length"],
    ["/2", "not-a-length"],
    ["½½", "not-a-length"],
    ["1e3", "not-a-length"],
    ["NaN", "not-a-length"],
    ["4 in 1/2", "not-a-length"],
    ['4""', "not-a-length"],
    ["4 ft", "unknown-unit"],
    ["4 constructor", "unknown-unit"],
    ["4 1/0", "zero-denominator"],
    ["1/0", "zero-denominator"],
    ["1".repeat(41), "too-long"],
  ])("%j", (text, problem) => {
    const r = parseLength(text, "in");
    expect(r).toEqual({ ok: false, error: { problem, text } });
    expect(() => knownLength(text, "in")).toThrow(RangeError);
  });
});
