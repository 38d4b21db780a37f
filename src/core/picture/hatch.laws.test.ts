import fc from "fast-check";
import { expect, test } from "vitest";
import { area, contains, type Polygon, point, unitVector } from "../geometry/index.ts";
import { hatchLines } from "./hatch.ts";

const SEED = 20261125;

/** Corners of a convex polygon: points of an ellipse, in order. */
const convex = fc
  .record({
    turns: fc.uniqueArray(fc.integer({ min: 0, max: 359 }), { minLength: 3, maxLength: 9 }),
    wide: fc.double({ min: 1, max: 9, noNaN: true }),
    high: fc.double({ min: 1, max: 7, noNaN: true }),
  })
  .map(
    ({ turns, wide, high }): Polygon =>
      [...turns]
        .sort((a, b) => a - b)
        .map((t) => {
          const u = unitVector((t * Math.PI) / 180);
          return point(u.x * wide, u.y * high);
        }),
  );

test(`hatch lines lie inside, and their lengths times the gap make the area (seed ${SEED})`, () => {
  fc.assert(
    fc.property(convex, fc.double({ min: -3, max: 3, noNaN: true }), (p, angle) => {
      const gap = 0.01;
      const lines = hatchLines(p, angle, gap);
      let sum = 0;
      for (const [a, b] of lines) {
        expect(contains(p, a, 1e-9) && contains(p, b, 1e-9)).toBe(true);
        sum += Math.hypot(a.x - b.x, a.y - b.y);
      }
      // The trapezium rule on a piecewise linear width is off by at most a gap's worth at each end.
      const widest = 2 * 9;
      expect(Math.abs(sum * gap - area(p))).toBeLessThan(gap * widest);
    }),
    { seed: SEED, numRuns: 60 },
  );
});
