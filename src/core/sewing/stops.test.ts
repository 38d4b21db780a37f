import { describe, expect, test } from "vitest";
import type { Recipe } from "../recipe/types.ts";
import { oneFabric, settings } from "./blocks.testing.ts";
import { circleLoss } from "./laws.ts";
import { spareFrom } from "./spare.ts";
import { judgeHalf, judgeStop, replan, type StopContext, widthWhen } from "./stops.ts";
import { unitsOf } from "./units.ts";

const SEAM = 0.25;
const blocks = settings(4);
const contextOf = (id: string, more: Partial<StopContext> = {}): StopContext => {
  const block = oneFabric(blocks[id]);
  return { block, units: unitsOf(block, { seam: SEAM }), seam: SEAM, reading: 1 / 32, ...more };
};
const octagonOf = (c: StopContext) => ({ unitId: c.units[2].id, name: "across flats" });

describe("a measured stop", () => {
  const c = contextOf("plain");
  const at = octagonOf(c);

  test("as planned, within what a ruler can be read to: sew on", () => {
    expect(judgeStop(c, { ...at, measured: 8.5 - 1 / 32 })).toMatchObject({
      verdict: "sew-on",
      planned: 8.5,
    });
  });

  test("an octagon 0.163 large: each of its seams 1/32 deeper", () => {
    const v = judgeStop(c, { ...at, measured: 8.5 + circleLoss(8, 1 / 32) });
    expect(v.verdict).toBe("take-in");
    expect(v.perSeam).toBeCloseTo(1 / 32, 12);
    expect(v.seams).toBe(7);
  });

  test("an octagon 0.163 small: let each seam out by 1/32; 0.4 small: cut again", () => {
    const small = judgeStop(c, { ...at, measured: 8.5 - circleLoss(8, 1 / 32) });
    expect(small.verdict).toBe("let-out");
    expect(small.perSeam).toBeCloseTo(-1 / 32, 12);
    expect(judgeStop(c, { ...at, measured: 8.1 }).verdict).toBe("recut");
  });

  test("a name that is no width of the unit is refused with those that are", () => {
    expect(() => judgeStop(c, { ...at, name: "girth", measured: 8 })).toThrow("across flats");
  });

  test("later stops move with it: the block comes out as small as the octagon", () => {
    const e = 0.03;
    const plan = replan(c, [{ ...at, measured: 8.5 - circleLoss(8, e) }]);
    expect(plan.seamsWider).toBeCloseTo(e, 12);
    expect(plan.block.planned).toBeCloseTo(8, 12);
    expect(plan.stops.every((s) => c.units.findIndex((u) => u.id === s.unitId) > 2)).toBe(true);
    const kites = contextOf("kites");
    const whole = kites.units.at(-1);
    const m = whole?.measures[0];
    if (!whole || !m) throw new Error("kite block without a width");
    expect(widthWhen(kites, whole.id, m, e)).toBeCloseTo(8.5 - circleLoss(8, e), 9);
  });

  test("two stops that disagree are weighed by how much each shows a seam", () => {
    const [pair] = c.units;
    const m = pair.measures[0];
    const e = 0.02;
    const plan = replan(c, [
      { unitId: pair.id, name: m.name, measured: widthWhen(c, pair.id, m, 2 * e) },
      { ...at, measured: 8.5 - circleLoss(8, e) },
    ]);
    // The octagon shows a seam 5.226 times, the pair far less.
    expect(plan.seamsWider).toBeGreaterThan(e);
    expect(plan.seamsWider).toBeLessThan(1.15 * e);
  });
});

describe("spare at the sides", () => {
  /** Corner triangles from a square that leaves 0.52 at each side; nothing else has any. */
  const block = oneFabric(blocks.plain);
  const corner = block.patches.find((p) => p.role === "corner");
  if (!corner) throw new Error("no corner");
  const recipe = {
    pieceId: block.pieceOf[corner.id],
    patch: corner.polygon,
    spareBySide: [0.11, 0.52, 0.53].map((spare, index) => ({ index, spare })),
  } as unknown as Recipe;
  const spareOf = spareFrom([recipe], block.pieceOf, 1e-9);

  test("is read from the recipe by the shape of the piece, however it is turned", () => {
    const corners = block.patches.filter((p) => p.role === "corner");
    for (const p of corners) {
      const found = p.polygon.map((_, i) => spareOf(p, i));
      expect([...found].sort()).toEqual([0.11, 0.52, 0.53]);
    }
    expect(spareOf(block.patches[0], 0)).toBe(0);
  });

  test("a recipe for another shape is refused", () => {
    const wrong = { ...recipe, patch: corner.polygon.map((v) => ({ x: 2 * v.x, y: v.y })) };
    expect(() => spareFrom([wrong], block.pieceOf, 1e-9)(corner, 0)).toThrow(RangeError);
  });

  test("plain corners: none across the flats, so a block's sides have none", () => {
    const units = unitsOf(block, { seam: SEAM, recipes: [recipe] });
    const whole = units.at(-1);
    expect(whole?.spareBySide.map((s) => s.spare)).toEqual([0, 0, 0, 0]);
  });

  test("deep: all sides; a block that comes large there is sewn on and trimmed", () => {
    const deep = oneFabric(blocks.deep);
    const all = contextOf("deep", { spareOf: (p) => (p.role.startsWith("background") ? 0.2 : 0) });
    const units = unitsOf(deep, { seam: SEAM });
    const last = units[units.length - 1];
    const c: StopContext = { ...all, units };
    const planned = last.unfinished.across;
    const v = judgeStop(c, { unitId: last.id, name: "across", measured: planned + 0.31 });
    expect(v.verdict).toBe("sew-on");
    expect(v.toTrim).toBeCloseTo(0.31, 12);
    const plan = replan(c, [{ unitId: last.id, name: "across", measured: planned + 0.31 }]);
    expect(plan.block.expected).toBeLessThanOrEqual(plan.block.planned + 1e-12);
  });
});

test("a half that shows 1/16 in the middle makes the circle 1/4 too much; flat within a reading is straight", () => {
  expect(judgeHalf(1 / 16, 1 / 32)).toEqual({ straight: false, tooMuch: 1 / 4 });
  expect(judgeHalf(-0.02, 1 / 32).straight).toBe(true);
});
