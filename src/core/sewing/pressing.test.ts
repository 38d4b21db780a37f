import { describe, expect, test } from "vitest";
import {
  fourPatch,
  type Grid,
  gridRows,
  ninePatch,
  oneFabric,
  settings,
} from "./blocks.testing.ts";
import { armsOf, crossingsIn, laidSeams, seamThroughCenter } from "./crossings.ts";
import { centerPlies } from "./plies.ts";
import { secondBlocks } from "./pressFor.ts";
import { type PressWishes, press, pressingFindings } from "./pressing.ts";
import { crossingsInRows } from "./rowCrossings.ts";
import { outlineOf, type SeamNode, seamNodes } from "./tree.ts";
import type { Crossing, Press } from "./types.ts";
import { keyOf } from "./units.ts";

const NEAR = 1e-9;
const blocks = settings();
const wishes = (id: string, more: Partial<PressWishes> = {}): PressWishes => ({
  style: "side",
  key: keyOf(oneFabric(blocks[id])),
  near: 1e-7,
  ...more,
});
const rowsOf = (blockId: string, rows = 3, columns = 4): Grid => ({
  rows,
  columns,
  cell: () => ({ blockId, quarters: 0, mirrored: false }),
});

const inRows = (grid: Grid): Partial<PressWishes> => ({
  rows: gridRows(blocks, grid),
  second: secondBlocks({ arrangement: "rows" }),
});
const between = (id: string, grid: Grid, fanned: ReadonlyMap<string, string> = new Map()) =>
  crossingsInRows(new Map([[id, blocks[id]]]), gridRows(blocks, grid), () => false, fanned, 1e-7);

/** Tries every way of pressing: shares no code with the method under test. */
function bruteForce(crossings: readonly Crossing[]): number {
  const ids = [...new Set(crossings.flatMap((x) => x.seams))];
  if (ids.length > 20) throw new RangeError(`20 seams at most expected, got ${ids.length}`);
  let best = 0;
  for (let bits = 0; bits < 2 ** ids.length; bits++) {
    let nests = 0;
    for (const x of crossings) {
      const [u, v] = x.seams.map((s) => (bits >> ids.indexOf(s)) & 1);
      if ((u !== v) === x.differ) nests += x.count;
    }
    best = Math.max(best, nests);
  }
  return best;
}

const isRadial = ({ seam }: SeamNode): boolean =>
  [seam.from, seam.to].some((p) => Math.hypot(p.x, p.y) < NEAR);

/** Which way round a seam that ends at the center is pressed, from the corners of the part it lies on. */
function wayRound({ seam, parts }: SeamNode, pressed: Press): string {
  const out = Math.hypot(seam.to.x, seam.to.y) < NEAR ? seam.from : seam.to;
  const under = outlineOf(parts[pressed === "first" ? 0 : 1]);
  const turn = under.reduce((sum, v) => sum + (out.x * v.y - out.y * v.x), 0);
  return turn > 0 ? "anticlockwise" : "clockwise";
}

describe("crossings", () => {
  test("a four-patch has one, a nine-patch four, and all nest", () => {
    for (const [block, crossings] of [
      [fourPatch(3), 1],
      [ninePatch(2), 4],
    ] as const) {
      expect(crossingsIn(block.tree, NEAR)).toHaveLength(crossings);
      const p = press([block], wishes("plain", { key: keyOf(block) }));
      expect([p.total, p.nesting]).toEqual([crossings, crossings]);
    }
  });

  test("plain corners: one inside each half, three at the center, none where corner seams end", () => {
    expect(crossingsIn(blocks.plain.tree, NEAR)).toHaveLength(2 + 3);
  });

  test("where two plain blocks meet, wedge seams and corner seams count: two points, two each", () => {
    const grid = rowsOf("plain", 1, 2);
    const found = between("plain", grid);
    expect(found.reduce((n, x) => n + x.count, 0)).toBe(4);
    expect(new Set(found.map((x) => x.at.y.toFixed(6))).size).toBe(2);
  });

  test("where four deep blocks meet, eight seams meet, as at the center", () => {
    const corner = { x: blocks.deep.width / 2, y: blocks.deep.height / 2 };
    const inOne = laidSeams(blocks.deep.tree).filter((s) =>
      [s.from, s.to].some((p) => Math.hypot(p.x - corner.x, p.y - corner.y) < 1e-9),
    );
    // One diagonal from each block, and the four seams that join the blocks.
    expect(4 * inOne.length + 4).toBe(8);
    const grid = rowsOf("deep", 2, 2);
    const found = between("deep", grid);
    // The corners of the blocks lie half a block off whole ones.
    const atCorner = (x: number): boolean =>
      Math.abs(((x / blocks.deep.width + 10) % 1) - 1 / 2) < 1e-6;
    const there = found.filter((x) => x.joinedBy === "rows/join" && atCorner(x.at.x));
    // Three at the inner point; at each end of the long seam between the rows, one diagonal each.
    expect(there.reduce((n, x) => n + x.count, 0)).toBe(3 + 2);
  });
});

describe("pressing", () => {
  test.each(["plain", "kites", "floating", "deep", "six", "ten", "twelve", "sixteen"])(
    "every block pressed the same way round in plain rows: every crossing nests (%s)",
    (id) => {
      const p = press([blocks[id]], wishes(id, inRows(rowsOf(id))));
      expect(p.nesting).toBe(p.total);
      expect(p.otherBlocks).toBeUndefined();
      const ways = seamNodes(blocks[id].tree)
        .filter(isRadial)
        .map((n) => wayRound(n, p.bySeam[n.id]));
      expect(new Set(ways)).toEqual(new Set(["anticlockwise"]));
      const long = seamThroughCenter(blocks[id].tree, NEAR);
      expect(long && p.bySeam[long.id]).toBe("anticlockwise");
    },
  );

  test.each([
    ["deep", true],
    ["sixteen", true],
    ["six", false],
  ])("units that are alike are pressed alike where that costs nothing (%s: %s)", (id, alike) => {
    // Of six outer seams, opposite ones are alike, but going round they must alternate.
    expect(press([blocks[id]], wishes(id)).unitsAlike).toBe(alike);
  });

  test("rows are pressed in opposite directions", () => {
    const { rows } = press([blocks.kites], wishes("kites", inRows(rowsOf("kites"))));
    expect(rows.odd).not.toBe(rows.even);
  });

  test("without fanning, the long seam of a kite block misses at one end of each meeting", () => {
    const p = press(
      [blocks.kites],
      wishes("kites", { ...inRows(rowsOf("kites", 1, 3)), fan: false }),
    );
    expect(p.total - p.nesting).toBeGreaterThan(0);
    expect(pressingFindings(p)[0].code).toBe("crossing-does-not-nest");
  });

  test("bars run into bars alike, so framed blocks are pressed in two ways, like a checkerboard", () => {
    const p = press([blocks.framed], wishes("framed", inRows(rowsOf("framed"))));
    expect(p.otherBlocks).toBeDefined();
    expect(p.nesting).toBe(p.total);
  });

  test.each(["plain", "first", "kites", "framed", "floating", "deep", "six"])(
    "as many crossings nest as any way of pressing allows (%s, by trying all)",
    (id) => {
      const block = blocks[id];
      const long = seamThroughCenter(block.tree, NEAR);
      const inside = crossingsIn(block.tree, 1e-7, long?.id);
      expect(press([block], wishes(id)).nesting).toBe(bruteForce(inside));
    },
  );

  test.each(["plain", "kites"])("the same for blocks in rows (%s)", (id) => {
    const block = blocks[id];
    const long = seamThroughCenter(block.tree, NEAR);
    const fanned = new Map(long ? [[id, long.id]] : []);
    const turnedGrids: Grid[] = [
      rowsOf(id, 2, 3),
      {
        rows: 2,
        columns: 3,
        cell: (r, c) => ({ blockId: id, quarters: (r + 2 * c) % 4, mirrored: false }),
      },
      {
        rows: 2,
        columns: 2,
        cell: (r, c) => ({ blockId: id, quarters: 0, mirrored: (r + c) % 2 === 1 }),
      },
    ];
    for (const grid of turnedGrids) {
      const all = [
        ...crossingsIn(block.tree, 1e-7, long?.id).map((x) => ({
          ...x,
          count: grid.rows * grid.columns,
        })),
        ...between(id, grid, fanned),
      ];
      const p = press([block], wishes(id, inRows(grid)));
      if (p.otherBlocks) expect(p.nesting / p.total).toBeGreaterThan(bruteForce(all) / total(all));
      else expect(p.nesting).toBe(bruteForce(all));
    }
  });

  test("open is open everywhere, and nothing is said to fail", () => {
    const p = press([blocks.deep], wishes("deep", { style: "open" }));
    expect(new Set(Object.values(p.bySeam))).toEqual(new Set(["open"]));
    expect(pressingFindings(p)).toEqual([]);
  });

  test("what the maker has decided stays, and the rest gives way where it can", () => {
    const [seam] = seamNodes(blocks.deep.tree).filter((s) =>
      s.parts.every((q) => q.kind === "patch"),
    );
    const free = press([blocks.deep], wishes("deep"));
    const other = free.bySeam[seam.id] === "first" ? "second" : "first";
    const p = press([blocks.deep], wishes("deep", { fixed: { [seam.id]: other } }));
    expect(p.bySeam[seam.id]).toBe(other);
    expect(p.nesting).toBe(p.total);
  });

  test("the two arms of a fanned seam have names of their own", () => {
    expect(armsOf("kites/u")).toEqual(["kites/u@from", "kites/u@to"]);
  });
});

const total = (all: readonly Crossing[]): number => all.reduce((n, x) => n + x.count, 0);

describe("plies at the center", () => {
  test("a four-patch: 7 to one side, 5 fanned, 4 open (counted by hand on folded paper layers)", () => {
    const block = fourPatch(3);
    const p = press([block], wishes("plain", { key: keyOf(block) }));
    const plies = centerPlies(block.tree, p.bySeam, 0.25, NEAR);
    expect([plies?.before.most, plies?.after.most, plies?.open.most]).toEqual([7, 5, 4]);
  });

  test("n seams to one side lie 2 n - 1 thick; fanned and open are thinner for eight", () => {
    for (const [id, n] of [
      ["kites", 8],
      ["twelve", 12],
    ] as const) {
      const p = press([blocks[id]], wishes(id));
      const plies = centerPlies(blocks[id].tree, p.bySeam, 0.25, NEAR);
      expect(plies?.before.most).toBe(2 * n - 1);
      expect(plies?.after.most).toBeLessThan(2 * n - 1);
      expect(plies?.open.most).toBeLessThan(plies?.after.most ?? 0);
    }
  });
});
