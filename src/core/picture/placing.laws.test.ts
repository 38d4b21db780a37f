import fc from "fast-check";
import { expect, test } from "vitest";
import { applyToPolygon, distance, type Polygon, point } from "../geometry/index.ts";
import { placing } from "./placing.ts";

const SEED = 8125;
const scalene: Polygon = [point(0, 0), point(5, 0.3), point(4.1, 2.6), point(1.2, 3.7)];

test(`a moved shape is found again, whatever vertex it begins with (seed ${SEED})`, () => {
  const motion = fc.record({
    turn: fc.double({ min: -3, max: 3, noNaN: true }),
    x: fc.double({ min: -50, max: 50, noNaN: true }),
    y: fc.double({ min: -50, max: 50, noNaN: true }),
    mirrored: fc.boolean(),
  });
  fc.assert(
    fc.property(motion, fc.nat(3), (t, roll) => {
      const to = applyToPolygon(t, scalene);
      const rolled = [...to.slice(roll), ...to.slice(0, roll)];
      const found = placing(scalene, rolled, 1e-7);
      expect(found?.mirrored).toBe(t.mirrored);
      if (!found) return;
      const back = applyToPolygon(found, scalene);
      for (const v of back) expect(Math.min(...to.map((w) => distance(v, w)))).toBeLessThan(1e-6);
    }),
    { seed: SEED, numRuns: 100 },
  );
});

test("shapes that differ are not laid on each other", () => {
  const other = scalene.map((p, i) => (i === 2 ? point(p.x + 0.01, p.y) : p));
  expect(placing(scalene, other, 1e-6)).toBeUndefined();
});
