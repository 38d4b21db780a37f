import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { point } from "../geometry/index.ts";
import { cutOne } from "./try.testing.ts";

const SEED = 20261126;

interface P {
  readonly x: number;
  readonly y: number;
}

const low = (p: readonly P[]) => Math.min(...p.map((v) => v.x));
const high = (p: readonly P[]) => Math.max(...p.map((v) => v.x));
const tall = (p: readonly P[]) => Math.max(...p.map((v) => v.y));

/** Left or right end of the piece at the height y. */
function endAt(p: readonly P[], y: number, side: 1 | -1): number {
  let out = Number.NEGATIVE_INFINITY;
  p.forEach((a, i) => {
    const b = p[(i + 1) % p.length];
    if (Math.min(a.y, b.y) > y + 1e-9 || Math.max(a.y, b.y) < y - 1e-9) return;
    if (Math.abs(a.y - b.y) < 1e-9) out = Math.max(out, side * a.x, side * b.x);
    else out = Math.max(out, side * (a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)));
  });
  return side * out;
}

/** Length of n copies pushed together, each second one turned, the first as given. */
function rowLength(first: readonly P[], n: number): number {
  const h = tall(first);
  const levels = [0, h * 0.3, h * 0.5, h * 0.8, h];
  let row = [...first];
  const all = [...row];
  for (let i = 1; i < n; i++) {
    const turned = row.map((v) => ({ x: -v.x, y: h - v.y }));
    const push = Math.max(...levels.map((y) => endAt(row, y, 1) - endAt(turned, y, -1)));
    row = turned.map((v) => ({ x: v.x + push, y: v.y }));
    all.push(...row);
  }
  return high(all) - low(all);
}

describe(`nesting along a strip, seed ${SEED}`, () => {
  it("what the planner is told is enough for any number of copies, and exact for a wedge", () => {
    fc.assert(
      fc.property(
        fc.record({
          base: fc.integer({ min: 16, max: 80 }),
          top: fc.integer({ min: 0, max: 70 }),
          lean: fc.integer({ min: -30, max: 60 }),
          height: fc.integer({ min: 16, max: 64 }),
          n: fc.integer({ min: 1, max: 7 }),
          even: fc.boolean(),
        }),
        ({ base, top, lean, height, n, even }) => {
          const at = even ? (base - top) / 2 : lean;
          const polygon = [
            [0, 0],
            [base, 0],
            [at + top, height],
            ...(top > 0 ? [[at, height]] : []),
          ].map(([x, y]) => point(x / 16, y / 16));
          const { piece, recipe, result } = cutOne({ polygon });
          const [{ shape }] = result.demands;
          if (shape.kind !== "nested") return;
          const cut = recipe.polygon;
          const over = cut.map((v) => ({ x: -v.x, y: tall(cut) - v.y }));
          const needed = Math.min(rowLength(cut, n), rowLength(over, n));
          const told = shape.first + (n - 1) * shape.pitch;
          expect(told).toBeGreaterThan(needed - 1e-9);
          if (piece.cut.length === 3 && even) expect(told).toBeCloseTo(needed, 9);
        },
      ),
      { seed: SEED, numRuns: 400 },
    );
  });
});
