import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cut } from "./cut.ts";
import { direction } from "./direction.ts";
import { depth, leftHalfPlane } from "./halfplane.ts";
import { distance, point, scale } from "./point.ts";
import { area, edgeLength, edges, isConvex, offset, type Polygon } from "./polygon.ts";
import { andThen, applyTo, applyToPolygon, type Rigid } from "./rigid.ts";

const SEED = 20260114;
const runs = { seed: SEED, numRuns: 2000 };

const number = (max: number) => fc.double({ min: -max, max, noNaN: true });
const anywhere = fc.record({ x: number(30), y: number(30) });
const polygon: fc.Arbitrary<Polygon> = fc
  .tuple(
    fc.uniqueArray(fc.nat({ max: 70 }), { minLength: 3, maxLength: 7 }),
    fc.double({ min: 0.5, max: 25, noNaN: true }),
    anywhere,
  )
  .map(([at, radius, c]) =>
    at
      .sort((a, b) => a - b)
      .map((k) => scale(direction(k, 71), radius))
      .map((v) => point(v.x + c.x, v.y + c.y)),
  );
const motion: fc.Arbitrary<Rigid> = fc.record({
  turn: number(7),
  x: number(40),
  y: number(40),
  mirrored: fc.boolean(),
});

describe(`geometry (seed ${SEED})`, () => {
  test("a cut gives two convex parts that share its chord to the last bit and sum to the whole", () => {
    let cuts = 0;
    fc.assert(
      fc.property(polygon, anywhere, anywhere, (p, a, b) => {
        fc.pre(distance(a, b) > 0.01);
        const h = leftHalfPlane(a, b);
        const two = cut(p, h, 1e-9);
        const sides = p.map((v) => depth(h, v));
        const crosses = Math.max(...sides) > 1e-9 && Math.min(...sides) < -1e-9;
        expect(two !== undefined).toBe(crosses);
        if (!two) return;
        cuts++;
        const { inside, outside, chord } = two;
        expect(area(inside) + area(outside)).toBeCloseTo(area(p), 9);
        expect(isConvex(inside, 1e-9) && isConvex(outside, 1e-9)).toBe(true);
        const [from, to] = chord;
        expect(edges(inside).some((e) => e.from === from && e.to === to)).toBe(true);
        expect(edges(outside).some((e) => e.from === to && e.to === from)).toBe(true);
        for (const v of chord) expect(Math.abs(depth(h, v))).toBeLessThan(1e-8);
      }),
      runs,
    );
    expect(cuts).toBeGreaterThan(500);
  });

  test("an allowance all round adds a strip along each edge and a kite at each corner", () => {
    fc.assert(
      fc.property(polygon, fc.double({ min: 0.01, max: 2, noNaN: true }), (p, by) => {
        const raw = offset(
          p,
          p.map(() => by),
        );
        const around = edges(p).reduce((sum, e) => sum + edgeLength(e), 0);
        const kites = p.reduce((sum, v, i) => {
          const before = p[(i + p.length - 1) % p.length];
          const after = p[(i + 1) % p.length];
          const turn =
            Math.atan2(after.y - v.y, after.x - v.x) - Math.atan2(v.y - before.y, v.x - before.x);
          return sum + by ** 2 * Math.tan(((turn + 4 * Math.PI) % (2 * Math.PI)) / 2);
        }, 0);
        const expected = area(p) + around * by + kites;
        expect(area(raw) / expected).toBeCloseTo(1, 8);
      }),
      runs,
    );
  });

  test("rigid motions keep lengths and areas; one after another is their product", () => {
    fc.assert(
      fc.property(polygon, motion, motion, anywhere, (p, a, b, v) => {
        const q = applyToPolygon(a, p);
        expect(area(q)).toBeCloseTo(area(p), 8);
        expect(distance(q[0], applyTo(a, p[0]))).toBe(0);
        const twice = applyTo(b, applyTo(a, v));
        expect(distance(applyTo(andThen(a, b), v), twice)).toBeLessThan(1e-10);
      }),
      runs,
    );
  });

  test("directions mirror and turn by quarters into each other to the last bit", () => {
    fc.assert(
      fc.property(fc.integer({ min: -200, max: 200 }), fc.integer({ min: 3, max: 64 }), (k, n) => {
        const d = direction(k, n);
        const angle = (2 * Math.PI * k) / n;
        expect(Math.hypot(d.x - Math.cos(angle), d.y - Math.sin(angle))).toBeLessThan(1e-12);
        const back = direction(-k, n);
        expect(back.x === d.x && back.y === -d.y).toBe(true);
        if (n % 4 !== 0) return;
        const quarter = direction(k + n / 4, n);
        expect(quarter.x === -d.y && quarter.y === d.x).toBe(true);
        expect(direction(n / 8, n).x === direction(n / 8, n).y || n % 8 !== 0).toBe(true);
      }),
      runs,
    );
    expect([0, 2, 4, 6].map((k) => direction(k, 8))).toEqual([
      { x: 1, y: 0 },
      { x: 0, y: 1 },
      { x: -1, y: 0 },
      { x: 0, y: -1 },
    ]);
  });
});
