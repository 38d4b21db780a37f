import { describe, expect, test } from "vitest";
import { applyTo, distance } from "../geometry/index.ts";
import { oneFabric, settings } from "./blocks.testing.ts";
import { minutesFor, workOf, workOfAssembly } from "./minutes.ts";
import { chainsOf, framesOf, stepsOf } from "./steps.ts";
import { unitsOf } from "./units.ts";

const blocks = settings(4);
const unitsIn = (id: string, count = 1) =>
  unitsOf({ ...oneFabric(blocks[id]), count }, { seam: 0.25 });

describe("pictures of a step", () => {
  test("turned over, the raw edge of one part lies on the raw edge of the other", () => {
    for (const id of ["plain", "deep", "twelve"])
      for (const unit of unitsIn(id)) {
        const f = framesOf(blocks[id], unit, 0.25);
        const over = f[f.over].map((v) => applyTo(f.turnOver, v));
        const under = f.over === "first" ? f.second : f.first;
        // Both raw edges lie 1/4 beyond the stitches, on the same side once one is turned over.
        const [a, b] = f.stitches;
        const beyond = (p: { x: number; y: number }) =>
          ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / distance(a, b);
        const outOf = (q: readonly { x: number; y: number }[]) => {
          const d = q.map(beyond);
          const body = d.reduce((s, x) => s + x, 0) > 0 ? 1 : -1;
          return Math.min(...d.map((x) => x * body)) * body;
        };
        expect(outOf(over)).toBeCloseTo(outOf(under), 9);
        expect(Math.abs(outOf(under))).toBeCloseTo(0.25, 9);
      }
  });

  test("a left-handed maker turns the other part over; the stitches are the same", () => {
    const [unit] = unitsIn("kites");
    const right = framesOf(blocks.kites, unit, 0.25);
    const left = framesOf(blocks.kites, unit, 0.25, "left");
    expect([right.over, left.over]).toEqual(["first", "second"]);
    expect(left.stitches).toEqual(right.stitches);
  });

  test("one arrow to a side, two for a seam that is open or fanned, toward the part named", () => {
    const units = unitsIn("kites");
    expect(units.map((u) => framesOf(blocks.kites, u, 0.25).arrows.length)).toEqual([1, 1, 2]);
    const [unit] = units;
    const { arrows, second } = framesOf(blocks.kites, unit, 0.25);
    const to = unit.press === "second" ? second : framesOf(blocks.kites, unit, 0.25).first;
    const inside = (p: { x: number; y: number }) =>
      to.every((v, i) => {
        const w = to[(i + 1) % to.length];
        return (w.x - v.x) * (p.y - v.y) - (w.y - v.y) * (p.x - v.x) > 0;
      });
    expect(inside(arrows[0].to)).toBe(true);
  });
});

describe("chains and steps", () => {
  test("lefts and rights of a deep block are two chains that name each other", () => {
    const chains = chainsOf(unitsIn("deep", 5));
    expect(chains.map((c) => c.copies)).toEqual([20, 20, 20, 10, 5]);
    expect(chains[0].keepFrom).toBe(chains[1].unitId);
    expect(chains[1].keepFrom).toBe(chains[0].unitId);
  });

  test("the four corners are one step, and so are lefts with rights", () => {
    expect(stepsOf(unitsIn("plain")).map((s) => s.length)).toEqual([1, 1, 1, 4]);
    expect(stepsOf(unitsIn("deep")).map((s) => s.length)).toEqual([2, 1, 1, 1]);
  });
});

describe("minutes", () => {
  test("seams, inches and trips to the iron, at the maker's own rates", () => {
    const units = unitsIn("kites", 3);
    const work = workOf(units, 0.25, "in");
    expect(work.seams).toBe(3 * (4 + 2 + 1));
    const radius = 4 / Math.cos(Math.PI / 8);
    expect(work.inches).toBeCloseTo(3 * (6 * (radius + 0.5) + (2 * radius + 0.5)), 9);
    const m = minutesFor(work, 3, { perSeam: 1, perInch: 0.1, perPress: 2, perStep: 5 });
    expect(m.total).toBeCloseTo(work.seams + work.inches / 10 + 2 * work.seams + 15, 9);
  });

  test("a metric quilt counts the same inches", () => {
    expect(workOfAssembly({ seams: 3, length: 1016 }, "mm")).toEqual({
      seams: 3,
      inches: 40,
      presses: 3,
    });
  });
});
