import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  applyToPolygon,
  direction,
  isConvex,
  type Polygon,
  point,
  type Rigid,
  scale,
} from "../geometry/index.ts";
import { handOf } from "./hand.ts";

const SEED = 20260111;
const JOIN = 1e-9;

/** Corners on a circle, at different whole parts of 97: convex, and hardly ever symmetric. */
const polygon: fc.Arbitrary<Polygon> = fc
  .tuple(
    fc.uniqueArray(fc.nat({ max: 96 }), { minLength: 3, maxLength: 6 }),
    fc.double({ min: 0.7, max: 40, noNaN: true }),
  )
  .map(([at, radius]) => at.sort((x, y) => x - y).map((k) => scale(direction(k, 97), radius)));

const motion: fc.Arbitrary<Rigid> = fc.record({
  turn: fc.double({ min: -4, max: 4, noNaN: true }),
  x: fc.double({ min: -9, max: 9, noNaN: true }),
  y: fc.double({ min: -9, max: 9, noNaN: true }),
  mirrored: fc.boolean(),
});

const other = { left: "right", right: "left", none: "none" } as const;

describe(`hands (seed ${SEED})`, () => {
  test("turning and moving keep the hand, turning over changes it, whatever corner is first", () => {
    let handed = 0;
    fc.assert(
      fc.property(polygon, motion, fc.nat({ max: 5 }), (p, t, first) => {
        const hand = handOf(p, JOIN);
        if (hand !== "none") handed++;
        const q = applyToPolygon(t, p);
        const k = first % q.length;
        const moved = [...q.slice(k), ...q.slice(0, k)];
        expect(isConvex(moved, 1e-9)).toBe(true);
        expect(handOf(moved, JOIN)).toBe(t.mirrored ? other[hand] : hand);
      }),
      { seed: SEED, numRuns: 2000 },
    );
    expect(handed).toBeGreaterThan(1000);
  });

  test("a half-rectangle on its long leg is a right with its square corner at the right", () => {
    const right = [point(0, 0), point(5, 0), point(5, 2)];
    const left = [point(0, 0), point(5, 0), point(0, 2)];
    expect(handOf(right, JOIN)).toBe("right");
    expect(handOf(left, JOIN)).toBe("left");
  });

  test("a parallelogram leans to the side its long edges lean to", () => {
    const leaning = [point(0, 0), point(6, 0), point(7.5, 2), point(1.5, 2)];
    expect(handOf(leaning, JOIN)).toBe("right");
    expect(handOf(leaning.map((v) => point(-v.x, v.y)).reverse(), JOIN)).toBe("left");
  });

  test.each([
    ["square", [point(0, 0), point(3, 0), point(3, 3), point(0, 3)]],
    ["rectangle", [point(0, 0), point(4, 0), point(4, 3), point(0, 3)]],
    ["half-square", [point(0, 0), point(3, 0), point(0, 3)]],
    ["kite", [point(0, 0), point(4, -1), point(5, 0), point(4, 1)]],
    ["trapezoid", [point(-3, 0), point(3, 0), point(1, 2), point(-1, 2)]],
    ["diamond", [point(-3, 0), point(0, -2), point(3, 0), point(0, 2)]],
  ])("a %s has no hand", (_, p) => {
    expect(handOf(p, JOIN)).toBe("none");
  });
});
