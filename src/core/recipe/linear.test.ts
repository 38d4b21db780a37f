import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { highest } from "./linear.ts";

describe("highest", () => {
  it("finds the top of a tent, and the middle of a flat one", () => {
    const tent = [
      { a: [1, 1], b: 4 },
      { a: [-1, 1], b: 2 },
      { a: [0, -1], b: 0 },
    ];
    expect(highest(tent, 2)).toEqual([1, 3]);
    const flat = [...tent, { a: [0, 1], b: 1 }];
    expect(highest(flat, 2)).toEqual([1, 1]);
  });

  it("has no answer where nothing is feasible", () => {
    expect(
      highest(
        [
          { a: [1], b: -1 },
          { a: [-1], b: -1 },
        ],
        1,
      ),
    ).toBeUndefined();
  });

  it("is never beaten by a place tried at random (seed 11)", () => {
    const slope = fc.double({ min: -2, max: 2, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(slope, slope, fc.double({ min: 0, max: 3, noNaN: true })), {
          minLength: 1,
          maxLength: 8,
        }),
        fc.array(fc.tuple(slope, slope), { minLength: 20, maxLength: 20 }),
        (planes, tries) => {
          const roof = planes.map(([p, q, b]) => ({ a: [p, q, 1], b }));
          const walls = [0, 1].flatMap((i) =>
            [1, -1].map((s) => ({ a: [i === 0 ? s : 0, i === 1 ? s : 0, 0], b: 2 })),
          );
          const best = highest([...roof, ...walls], 3);
          expect(best).toBeDefined();
          for (const [x, y] of tries) {
            const height = Math.min(...planes.map(([p, q, b]) => b - p * x - q * y));
            expect(height).toBeLessThanOrEqual(best![2] + 1e-8);
          }
        },
      ),
      { seed: 11, numRuns: 100 },
    );
  });
});
