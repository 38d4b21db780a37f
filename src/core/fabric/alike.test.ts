import { describe, expect, test } from "vitest";
import {
  alikeCells,
  layersNeeded,
  livelinessOf,
  mostDifferent,
  sewnWedge,
  unlike,
} from "./alike.ts";
import { blank, finish } from "./photo/index.ts";
import type { PhotoLook } from "./types.ts";

describe("fabric for identical layers", () => {
  // If These Threads Could Talk, "repeats": 6 repeats of 24 in are 144 in, 4 yd exactly; with a
  // short repeat use every second one (2 x 12 = 24).
  test("6 layers of a 24 in repeat: 144 in (published)", () => {
    expect(layersNeeded(6, 24, 10, 1, 1)).toEqual({
      everyNth: 1,
      layer: 24,
      layers: 6,
      stacks: 1,
      length: 144,
    });
  });

  test("a 12 in repeat taken every second time: 24 in a layer (published)", () => {
    expect(layersNeeded(6, 12, 13, 1, 1)).toMatchObject({ everyNth: 2, layer: 24, length: 144 });
  });

  test("26 blocks where a stack gives 6: five stacks, not four (own calculation)", () => {
    expect(layersNeeded(8, 11, 4.5, 24, 6)).toMatchObject({ stacks: 4, length: 352 });
    expect(layersNeeded(8, 11, 4.5, 26, 6)).toMatchObject({ stacks: 5, length: 440 });
  });

  test("a piece just as tall as the repeat needs no second one", () => {
    expect(layersNeeded(8, 0.1 * 3, 0.3, 1, 1).everyNth).toBe(1);
    expect(() => layersNeeded(8, 0, 4, 1, 1)).toThrow(RangeError);
  });
});

/** A print of four quarters, 8 by 6 in: red, green, blue, and cream with a black spot. */
const look: PhotoLook = { kind: "photo", fabricId: "p", color: "#888888", width: 8, height: 6 };
const pixels = (() => {
  const p = blank(160, 120);
  for (let y = 0; y < 120; y++)
    for (let x = 0; x < 160; x++) {
      const spot = Math.hypot(x - 120, y - 90) < 14;
      const cream = spot ? [10, 10, 10] : [240, 232, 210];
      const rgb =
        y < 60 ? (x < 80 ? [180, 30, 40] : [40, 140, 60]) : x < 80 ? [30, 60, 160] : cream;
      p.data.set([...rgb, 255], (y * 160 + x) * 4);
    }
  return p;
})();
const wedge = sewnWedge(1.7, 0.25, 45);

describe("eight alike", () => {
  test("a wedge wholly in one quarter shows one color and is not lively", () => {
    const red = alikeCells(pixels, look, wedge, { x: 2, y: 4.5, turn: 0 });
    expect(livelinessOf(red)).toBeLessThan(0.5);
    const blue = alikeCells(pixels, look, wedge, { x: 2, y: 1.5, turn: 0 });
    expect(unlike(red, blue)).toBeGreaterThan(30);
  });

  test("its point may take the spot, or its outer edge: two octagons from one spot", () => {
    // The spot's center lies at (6, 1.5); the wedge's middle is half its height from either.
    const point = alikeCells(pixels, look, wedge, { x: 6, y: 1.5 - 0.85, turn: 0 });
    const edge = alikeCells(pixels, look, wedge, { x: 6, y: 1.5 + 0.85, turn: 0 });
    expect(point[0].l).toBeLessThan(20);
    expect(edge[0].l).toBeGreaterThan(point[0].l + 40);
    expect(Math.min(...edge.slice(-4).map((c) => c.l))).toBeLessThan(20);
    expect(Math.min(...point.slice(-4).map((c) => c.l))).toBeGreaterThan(45);
  });

  test("up to four, the liveliest first, each unlike all before", () => {
    const found = finish(mostDifferent({ pixels, look, wedge, turns: [0, 180], grid: 7 }));
    expect(found).toHaveLength(4);
    for (const o of found.slice(1)) expect(o.lively).toBeLessThanOrEqual(found[0].lively);
    found.slice(1).forEach((o, i) => {
      const least = Math.min(...found.slice(0, i + 1).map((f) => unlike(f.cells, o.cells)));
      expect(o.differs).toBeCloseTo(least, 9);
    });
    expect(found[1].differs).toBeGreaterThan(found[3].differs as number);
  });

  test("a plain print holds one octagon only", () => {
    const plain = blank(40, 30);
    plain.data.fill(150);
    expect(finish(mostDifferent({ pixels: plain, look, wedge, turns: [0], grid: 4 }))).toHaveLength(
      1,
    );
  });

  test("beyond the photo's edge the repeat begins again", () => {
    const here = alikeCells(pixels, look, wedge, { x: 1.1, y: 0.4, turn: 30 });
    const there = alikeCells(pixels, look, wedge, { x: 1.1 + 8, y: 0.4 - 6, turn: 30 });
    expect(unlike(here, there)).toBeLessThan(1e-6);
  });
});
