import { describe, expect, test } from "vitest";
import { fourPatch, oneFabric, settings } from "./blocks.testing.ts";
import { unitsOf } from "./units.ts";

const blocks = settings(4);
const unitsIn = (id: string) => unitsOf(oneFabric(blocks[id]), { seam: 0.25 });

describe("units in sewing order", () => {
  test("plain corners last: four pairs, two halves, the octagon, then four corners one by one", () => {
    const units = unitsIn("plain");
    expect(units.map((u) => [u.letter, u.stage, u.copies])).toEqual([
      ["U1", 1, 4],
      ["U2", 2, 2],
      ["U3", 3, 1],
      ["U4", 4, 1],
      ["U5", 5, 1],
      ["U6", 6, 1],
      ["U7", 7, 1],
    ]);
    expect(units[1].of).toEqual([units[0].id, units[0].id]);
  });

  test("deep: four lefts and four rights, never in one stack, then four squares", () => {
    const units = unitsIn("deep");
    const [left, right, four] = units;
    expect(new Set([left.hand, right.hand])).toEqual(new Set(["left", "right"]));
    expect([left.copies, right.copies, four.copies]).toEqual([4, 4, 4]);
    expect(left.mirrorId).toBe(right.id);
    expect(right.mirrorId).toBe(left.id);
    expect(four.measures.map((m) => [m.name, m.ways])).toEqual([["across", 2]]);
    expect(four.unfinished.across).toBeCloseTo(4 / Math.cos(Math.PI / 8) + 0.7 + 0.5, 12);
  });

  test("a pair of wedge and kite has no hand, but every copy is laid the same way round", () => {
    const [pair] = unitsIn("kites");
    expect(pair.hand).toBe("none");
    expect(pair.lay.alike).toBe(true);
    // The wedge comes first and the kite follows anticlockwise, so the wedge lies on the right.
    expect(pair.lay.left).toBe(1);
  });

  test("a pair of wedges of one fabric may be laid either way round", () => {
    expect(unitsIn("plain")[0].lay.alike).toBe(false);
  });

  test("blocks are counted through", () => {
    const units = unitsOf({ ...oneFabric(blocks.kites), count: 12 }, { seam: 0.25 });
    expect(units.map((u) => u.inAll)).toEqual([48, 24, 12]);
  });

  test("units pressed differently are different units", () => {
    const block = fourPatch(3);
    const pieceOf = { "four/a": "x", "four/b": "y", "four/a2": "x", "four/b2": "y" };
    expect(unitsOf({ ...block, pieceOf }, { seam: 0.25 }).map((u) => u.copies)).toEqual([2, 1]);
    const same = { "four/u": "first", "four/u0": "first", "four/u1": "first" } as const;
    expect(unitsOf({ ...block, pieceOf }, { seam: 0.25, pressed: same })).toHaveLength(3);
  });
});

describe("what a unit should measure", () => {
  test("the octagon: 2 a and two allowances across flats, four ways", () => {
    const octagon = unitsIn("plain")[2];
    expect(octagon.measures).toHaveLength(1);
    expect(octagon.measures[0]).toMatchObject({ name: "across flats", ways: 4 });
    expect(octagon.unfinished["across flats"]).toBeCloseTo(8.5, 12);
    expect(octagon.finished["across flats"]).toBeCloseTo(8, 12);
  });

  test("the half: its long raw edge must be straight, from raw corner to raw corner", () => {
    const half = unitsIn("plain")[1];
    expect(half.straightEdge?.arm).toBeCloseTo(4 / Math.cos(Math.PI / 8), 12);
    // The line 1/4 below the long diagonal meets the outermost raw edges, 4 1/4 from the center.
    const end = (4.25 + 0.25 * Math.sin(Math.PI / 8)) / Math.cos(Math.PI / 8);
    expect(half.unfinished["along the long edge"]).toBeCloseTo(2 * end, 12);
  });

  test("a deep half is a rectangle of h by 2 h", () => {
    const half = unitsIn("deep")[3];
    const h = 4 / Math.cos(Math.PI / 8) + 0.7;
    expect(half.unfinished.width).toBeCloseTo(h + 0.5, 12);
    expect(half.unfinished.length).toBeCloseTo(2 * h + 0.5, 12);
    expect(half.straightEdge?.arm).toBeCloseTo(h, 12);
  });

  test("squared up from the center: a + 1/4 to each side, the 45 line on a seam where one lies there", () => {
    const deep = unitsIn("deep").at(-1);
    expect(deep?.squareUp?.line?.degrees).toBe(45);
    const octagon = unitsIn("plain")[2];
    for (const d of octagon.squareUp?.toEachSide ?? []) expect(d).toBeCloseTo(4.25, 12);
    expect(octagon.squareUp?.toEachSide).toHaveLength(8);
    expect(octagon.squareUp?.line).toBeUndefined();
    expect(unitsIn("plain").at(-1)?.squareUp?.line?.degrees).toBe(45);
  });
});
