import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseLength } from "./length.ts";
import { printLength } from "./print.ts";
import { liesOnStep, roundDown, roundNearest, roundUp, type Step, stepOf } from "./step.ts";
import { tolerances } from "./tolerance.ts";

const SEED = 20260113;
const runs = { seed: SEED, numRuns: 3000 };

const STEPS: readonly Step[] = [
  ...["1/2", "1/4", "1/8", "1/16", "1/32", "1/64", "1/10", "1/3", "0.05"].map((s) =>
    stepOf(s, "in"),
  ),
  ...["1 mm", "0.5 mm", "0.25 cm", "0.5 cm", "1 cm", "0.1", "1/3 mm"].map((s) => stepOf(s, "mm")),
];
const step = fc.constantFrom(...STEPS);
const marks = fc.integer({ min: 0, max: 40_000 });
/** Less than half a tolerance either way, as sums of square roots leave behind. */
const noise = fc.double({ min: -0.45, max: 0.45, noNaN: true });
/** Well off a mark: a part of a step. */
const part = fc.double({ min: 0.001, max: 0.999, noNaN: true });

const exactMark = (s: Step, k: number) => s.size.mul(BigInt(k)).valueOf();

describe(`rounding to the step (seed ${SEED})`, () => {
  test("a number that is a mark, give or take float noise, rounds to that mark every way", () => {
    fc.assert(
      fc.property(step, marks, noise, (s, k, e) => {
        const mark = exactMark(s, k);
        const x = mark + e * tolerances(s.unit).step;
        expect(roundUp(x, s)).toBe(mark);
        expect(roundDown(x, s)).toBe(mark);
        expect(roundNearest(x, s)).toBe(mark);
        expect(liesOnStep(x, s)).toBe(true);
      }),
      runs,
    );
  });

  test("any other number goes to the mark above, the mark below, or the nearer", () => {
    fc.assert(
      fc.property(step, marks, part, (s, k, f) => {
        const x = exactMark(s, k) + f * s.size.valueOf();
        expect(roundUp(x, s)).toBe(exactMark(s, k + 1));
        expect(roundDown(x, s)).toBe(exactMark(s, k));
        fc.pre(Math.abs(f - 0.5) > 1e-6);
        expect(roundNearest(x, s)).toBe(exactMark(s, f < 0.5 ? k : k + 1));
        expect(liesOnStep(x, s)).toBe(false);
      }),
      runs,
    );
  });

  test("rounding up never makes a number smaller than it was, and twice is once", () => {
    fc.assert(
      fc.property(step, fc.double({ min: 0, max: 5000, noNaN: true }), (s, x) => {
        const up = roundUp(x, s);
        expect(up).toBeGreaterThanOrEqual(x - tolerances(s.unit).step);
        expect(up - x).toBeLessThan(s.size.valueOf() * (1 + 1e-9));
        expect(roundUp(up, s)).toBe(up);
        expect(roundDown(x, s)).toBeLessThanOrEqual(up);
      }),
      runs,
    );
  });

  test("sums of parts of a step never jump: k seams of one step are k steps", () => {
    fc.assert(
      fc.property(step, fc.integer({ min: 1, max: 400 }), (s, k) => {
        let sum = 0;
        for (let i = 0; i < k; i++) sum += s.size.valueOf();
        expect(roundUp(sum, s)).toBe(exactMark(s, k));
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  test("what is printed on the step reads back as the same length", () => {
    fc.assert(
      fc.property(step, marks, noise, (s, k, e) => {
        // Thirds of a millimetre have no short decimal; they are printed to four places.
        fc.pre(s.unit === "in" || s.size.d !== 3n);
        const mark = exactMark(s, k);
        const text = printLength(mark + e * tolerances(s.unit).step, s);
        const read = parseLength(text, s.unit);
        if (!read.ok) throw new Error(`${text}: ${read.error.problem}`);
        expect(read.length.value.equals(s.size.mul(BigInt(k)))).toBe(true);
      }),
      runs,
    );
  });

  test.each(["0", "", "-1/8", "an eighth"])("a step of %j is refused", (text) => {
    expect(() => stepOf(text, "in")).toThrow(RangeError);
  });
});
