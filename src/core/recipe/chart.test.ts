import { describe, expect, it } from "vitest";
import { stepOf } from "../measure/index.ts";
import { type ChartInput, chartRows, checkCircle, rulerOf, wedgesInStrip } from "./index.ts";

const INCH: ChartInput = {
  wedges: 8,
  point: "sharp",
  from: 3,
  to: 10,
  by: 0.5,
  seam: 0.25,
  usable: 40,
  folds: 0,
  unit: "in",
  step: stepOf("1/8", "in"),
};

const KEYS = [
  "strip",
  "finished",
  "unfinished",
  "octagonSide",
  "wedgeBase",
  "cornerSquare",
  "kiteSquareCover",
  "kiteSquareSharp",
  "kiteMark",
  "deepSquare",
  "deepSlice",
];

const at = (strip: number, more: Partial<ChartInput> = {}) =>
  chartRows({ ...INCH, from: strip, to: strip, ...more })[0];

describe("chartRows", () => {
  it("has a row for every strip, and no key but those promised", () => {
    const rows = chartRows(INCH);
    expect(rows.map((r) => r.strip)).toEqual(Array.from({ length: 15 }, (_, i) => 3 + i / 2));
    const expected = [...KEYS, ...KEYS.map((k) => `${k}Text`), "wedgesPerStrip"].sort();
    for (const row of rows) expect(Object.keys(row).sort()).toEqual(expected);
  });

  it("gives the figures of a 4 in half octagon: strip 4.9033 sharp, 4 1/2 blunt", () => {
    const sharp = at(4 + 0.25 + 0.25 / Math.sin(Math.PI / 8));
    const blunt = at(4.5, { point: { blunt: "1/4" } });
    for (const row of [sharp, blunt]) {
      expect(row.finished).toBeCloseTo(8, 12);
      expect(row.unfinished).toBeCloseTo(8.5, 12);
      expect(row.octagonSide).toBeCloseTo(3.3137, 4);
      expect(row.wedgeBase).toBeCloseTo(4.062, 4);
      expect(row.cornerSquare).toBeCloseTo(3.1967, 4);
      expect(row.kiteSquareCover).toBeCloseTo(4.481, 4);
      expect(row.kiteSquareSharp).toBeCloseTo(4.7119, 4);
      expect(row.kiteMark).toBeCloseTo(2.7602, 4);
      expect(row.deepSquare).toBeCloseTo(4 / Math.cos(Math.PI / 8) + 0.8536, 4);
      expect(row.deepSlice).toBeCloseTo(4.4033, 4);
      expect(row.cornerSquareText).toBe("3 1/4");
      expect(row.kiteSquareCoverText).toBe("4 1/2");
    }
    expect(sharp.stripText).toBe("5");
    expect(blunt.stripText).toBe("4 1/2");
  });

  it("moves the octagon with the seam, as the flat tip stays: 7.8151 at 7 mm, 8.0996 at 6 mm", () => {
    const tip = { point: { flat: "0.334089" } };
    expect(at(4.5, tip).finished).toBeCloseTo(8, 5);
    expect(at(4.5, { ...tip, seam: 7 / 25.4 }).finished).toBeCloseTo(7.8151, 4);
    expect(at(4.5, { ...tip, seam: 6 / 25.4 }).finished).toBeCloseTo(8.0996, 4);
  });

  it("counts wedges head to tail, single and folded", () => {
    expect(at(4.5).wedgesPerStrip).toBe(20);
    expect(at(4.5, { folds: 1 }).wedgesPerStrip).toBe(18);
    expect(at(4.5, { usable: 3 }).wedgesPerStrip).toBe(0);
  });

  it("says by how little a strip missed one more", () => {
    // Blunt 8 1/2 in strip for a 16 in block: ten wedges need 42.070.
    const r = wedgesInStrip(rulerOf({ point: { blunt: "1/4" } }, 8, "in"), 8.5, {
      ...INCH,
      usable: 42,
    });
    expect(r.count).toBe(9);
    expect(r.missedBy).toBeCloseTo(0.07, 3);
  });

  it("has null where wedges of another number have nothing", () => {
    const row = at(4, { wedges: 12 });
    for (const key of ["octagonSide", "cornerSquare", "kiteMark", "deepSlice", "deepSquareText"])
      expect(row[key as keyof typeof row]).toBeNull();
    expect(row.finished).toBeCloseTo(2 * (4 - 0.25 - 0.25 / Math.sin(Math.PI / 12)), 12);
    expect(at(0.5).finished).toBeNull();
  });

  it("tests a rule of thumb on every row", () => {
    const kite = { piece: "kite", rule: "strip-1/2" } as const;
    expect(at(4.5, { rule: kite })).toMatchObject({ ruleSize: 4, ruleVerdict: "thin" });
    expect(at(4.5, { rule: kite }).ruleW).toBeCloseTo(0.1659, 4);
    const blunt = { rule: kite, point: { blunt: "1/4" } };
    expect(at(4.5, blunt)).toMatchObject({ ruleSizeText: "4", ruleVerdict: "blocked" });
    expect(at(4.5, { rule: { piece: "corner", rule: "strip-1/2" } }).ruleVerdict).toBe("proved");
    expect(at(4.5, { rule: { piece: "background", rule: "2*strip-1" } }).ruleVerdict).toBe(
      "proved",
    );
    expect(at(4.5, { rule: { piece: "kite", rule: "about four" } })).toMatchObject({
      ruleVerdict: "not understood",
    });
  });

  it("refuses a range without rows or with far too many", () => {
    expect(() => chartRows({ ...INCH, from: 5, to: 4 })).toThrow(RangeError);
    expect(() => chartRows({ ...INCH, by: 0 })).toThrow(RangeError);
    expect(() => chartRows({ ...INCH, by: 1e-6 })).toThrow(RangeError);
  });

  it("finds angles that do not close the circle", () => {
    expect(checkCircle(45, 8)).toBeUndefined();
    expect(checkCircle(22.5, 16)).toBeUndefined();
    expect(checkCircle(45, 7)).toMatchObject({ code: "circle-not-closed", found: 315 });
  });
});
