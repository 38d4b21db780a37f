import { describe, expect, test } from "vitest";
import { halveBlock, layOutBlock } from "../block/index.ts";
import { type Brief, smallBrief } from "../brief/sample.ts";
import { layOutQuilt, topRows } from "../quilt/index.ts";
import { type Assembly, assemble } from "./assembly.ts";

const tiles = (side: string, quilt: object): Brief =>
  smallBrief({
    blocks: [{ kind: "unit", id: "tile", unit: "square", width: side, fabric: { patch: "red" } }],
    quilt: { plan: [["tile"]], setting: "sand", ...quilt },
  });
const hexagons = (quilt: object): Brief =>
  smallBrief({
    blocks: [
      {
        kind: "wedges",
        id: "tile",
        n: 6,
        outline: "hexagon",
        setting: "sectors",
        turned: "flat",
        strip: "4 1/2",
        side: "9",
        fabric: { wedge: "red", background: "sand" },
      },
    ],
    quilt: { arrangement: "hexagon-rows", plan: [["tile"]], setting: "sand", ...quilt },
  });

function sewn(brief: Brief) {
  const [block] = brief.blocks.flatMap((b) => layOutBlock(b, "in", 0.25, 3).geometry ?? []);
  const g = layOutQuilt(brief, [block]).geometry!;
  const outlines = new Map([["tile", block.outline]]);
  for (const half of g.halves) {
    let part = block;
    for (const keep of half.keep) part = halveBlock(part, keep, half.id, 1e-9).geometry;
    outlines.set(half.id, part.outline);
  }
  const top = topRows(brief, g, (id) => outlines.get(id));
  return { g, top, a: assemble(top, 1e-7) };
}

const inRows = (a: Assembly) => ({
  seams: a.rows.reduce((n, r) => n + r.seams, 0),
  length: a.rows.reduce((n, r) => n + r.length, 0),
});

describe("the seams of the top, by formulas", () => {
  test("12 blocks, 4 rows of 3: 8 seams in the rows and 3 between them", () => {
    const { a } = sewn(tiles("8", { rows: 4, columns: 3 }));
    expect(inRows(a)).toEqual({ seams: 8, length: expect.closeTo(64, 9) });
    expect(a.joins).toEqual({ seams: 3, length: expect.closeTo(3 * 24, 9) });
  });

  test("straight rows with cornerstones: every piece but the first is one seam", () => {
    const sashing = { width: "1 1/2", fabric: "red", cornerstone: "sand" };
    const { a } = sewn(tiles("8", { rows: 3, columns: 4, sashing }));
    expect(a.seams).toBe(12 + 3 * 3 + 2 * (4 + 3) - 1);
    expect(a.joins.length).toBeCloseTo(4 * (4 * 8 + 3 * 1.5), 9);
  });

  test.each([
    [3, 2],
    [2, 5],
    [1, 1],
  ])("on point, %s by %s: chords of the top", (rows, columns) => {
    const { a, top } = sewn(tiles("6", { arrangement: "on-point", rows, columns }));
    const d = 6 * Math.SQRT2;
    const chord = (m: number): number =>
      Math.SQRT2 * (Math.min(m * d, columns * d) - Math.max(0, m * d - rows * d));
    const diagonals = rows + columns - 1;
    let joined = 0;
    for (let m = 0; m <= diagonals; m++) joined += chord(m + 1 / 2);
    expect(a.joins).toEqual({ seams: diagonals + 1, length: expect.closeTo(joined, 9) });
    const blocks = rows * columns + (rows - 1) * (columns - 1);
    expect(inRows(a)).toEqual({
      seams: blocks + diagonals,
      length: expect.closeTo(6 * (blocks + diagonals), 9),
    });
    expect(top.rows.filter((r) => r.kind === "corner")).toHaveLength(2);
  });

  test("sashed on point, 2 by 3: chords through the middles of the sashes, half a sash to either side", () => {
    const sashing = { width: "2", fabric: "red", cornerstone: "sand" };
    const { a, top } = sewn(tiles("6", { arrangement: "on-point", rows: 2, columns: 3, sashing }));
    // Five strips of sashes, 1, 3, 4, 3 and 1 sash long: each joined above and below.
    const longs = [1, 3, 4, 3, 1].map((k) => k * 8);
    expect(a.joins.seams).toBe(10);
    expect(a.joins.length).toBeCloseTo(2 * longs.reduce((x, y) => x + y), 9);
    expect(top.rows.map((r) => r.kind).join(" ")).toBe(
      "corner sashes blocks sashes blocks sashes blocks sashes blocks sashes corner",
    );
  });

  test("hexagons: rows half a hexagon high, every piece but the first is one seam", () => {
    const { a, top } = sewn(hexagons({ rows: 3, columns: 4 }));
    expect(top.rows).toHaveLength(6);
    expect(inRows(a).seams).toBe(6 * (4 + 2 - 1));
    // A slanted seam is as long as a side of the hexagon.
    expect(inRows(a).length).toBeCloseTo((30 * 9) / Math.sqrt(3), 9);
  });
});

const SASHES = [
  undefined,
  { width: "1 1/2", fabric: "red" },
  { width: "1", fabric: "red", cornerstone: "sand" },
];

describe("what the quilt counts without walking is what is sewn", () => {
  test.each([
    ["straight", {}, SASHES],
    ["shifted", { offset: true }, [undefined]],
    ["on point", { arrangement: "on-point" }, SASHES],
    ["on point with halves", { arrangement: "on-point", edges: "halves" }, SASHES],
  ] as const)("%s", (_, quilt, sashes) => {
    for (const sashing of sashes)
      for (const [rows, columns] of [
        [1, 1],
        [2, 2],
        [3, 5],
        [4, 1],
      ]) {
        const { g, a } = sewn(tiles("6", { ...quilt, rows, columns, sashing }));
        expect([inRows(a).seams, a.joins.seams]).toEqual([
          g.assembly.rowSeams,
          g.assembly.joinSeams,
        ]);
      }
  });

  test("hexagon rows", () => {
    for (const [rows, columns] of [
      [1, 1],
      [2, 3],
      [3, 4],
    ]) {
      const { g, a } = sewn(hexagons({ rows, columns }));
      expect([inRows(a).seams, a.joins.seams]).toEqual([g.assembly.rowSeams, g.assembly.joinSeams]);
    }
  });
});
