import { expect, test } from "vitest";
import { seamFrom, shouldMeasure } from "./seamTest.ts";

test("three strips of 1 1/2 give 3 1/2 (J. Cahoon, testing a scant quarter-inch seam, 2012; Utah Quilters guild, quarter-inch seam, 2012)", () => {
  expect(shouldMeasure({ strips: 3, cut: 1.5 }, 0.25)).toBe(3.5);
});

test("four strips of 1 1/2 give 4 1/2, two squares of 3 1/2 give 6 1/2 (common practice, no source)", () => {
  expect(shouldMeasure({ strips: 4, cut: 1.5 }, 0.25)).toBe(4.5);
  expect(shouldMeasure({ strips: 2, cut: 3.5 }, 0.25)).toBe(6.5);
});

test("two pieces joined with a true 1/4 in seam came out 1/32 short (Adonising, turn of the cloth, 2019): 1/64 from each side", () => {
  const found = seamFrom([{ strips: 2, cut: 3.5, measured: 6.5 - 1 / 32 }], 0.25, 1 / 64);
  expect(found.wider).toBeCloseTo(1 / 64, 15);
  expect(found.error).toBeCloseTo(1 / 128, 15);
});

test("23 seams each 1/16 out add up to 1 7/16 over a border of 24 units (Catbird Quilts, accurate piecing, 2017)", () => {
  // 1/16 a seam is 1/32 from each of its sides.
  const width = (seam: number) => shouldMeasure({ strips: 24, cut: 2.5 }, seam);
  expect(width(0.25)).toBeCloseTo(48 + 0.5, 12);
  expect(width(0.25) - width(0.25 + 1 / 32)).toBeCloseTo(1 + 7 / 16, 12);
});

test("16 seams each 1/16 out add up to 1 (common practice, no source)", () => {
  const off = (seam: number) => shouldMeasure({ strips: 17, cut: 2 }, seam);
  expect(off(0.25) - off(0.25 + 1 / 32)).toBeCloseTo(1, 12);
});

test("tests with more seams weigh more, and scatter is told from two on", () => {
  const tests = [
    { strips: 4, cut: 1.5, measured: 4.5 - 6 * 0.02 },
    { strips: 2, cut: 3.5, measured: 6.5 - 2 * 0.04 },
  ];
  const found = seamFrom(tests, 0.25, 1 / 32);
  expect(found.wider).toBeCloseTo((36 * 0.02 + 4 * 0.04) / 40, 12);
  expect(found.scatter).toBeGreaterThan(0);
  expect(() => seamFrom([], 0.25, 1 / 32)).toThrow(RangeError);
});
