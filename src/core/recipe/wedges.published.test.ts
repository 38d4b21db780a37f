import { describe, expect, it } from "vitest";
import { radialBlock } from "../block/index.ts";
import { stepOf } from "../measure/index.ts";
import { type Piece, piecesOf } from "../piece/index.ts";
import {
  type ChartRow,
  chartRows,
  flatTip,
  halfAcross,
  recipesOf,
  rulerOf,
  stripFor,
  wedgeBase,
  wedgesInStrip,
} from "./index.ts";

const BLUNT = { blunt: "1/4 in" } as const;
const EIGHTH = stepOf("1/8", "in");

const LINDA =
  "L., quilt-along weeks 9 and 13, 2013-10-27 and 2013-11-24, lindasquiltmania.blogspot.com";
const SPIDER = "Patchwork Playground, spiderweb block 83, 2012-08-04";
const KRATOVIL = "D. Kratovil, steps to a kaleidoscope block, 2022-12";
const OCTAGON_BLOG = "a teacher's blog on turning an octagon into a square, 2022";
const LAYERS = "Quiltfrenzy archive, quick-cutting triangles and hexagons";

/** Every number of the eight-wedge block that finishes `block`, at a 1/4 in seam. */
function rowFor(block: number, point: "sharp" | typeof BLUNT, usable = 40): ChartRow {
  const strip = stripFor(rulerOf({ point }, 8, "in"), block / 2, 0.25);
  const common = { wedges: 8, seam: 0.25, unit: "in", step: EIGHTH, folds: 0 } as const;
  return chartRows({ ...common, point, from: strip, to: strip, by: 1, usable })[0];
}

function piecesOfBlock(block: number, whole: readonly number[]): Piece[] {
  const a = block / 2;
  const geometry = radialBlock({
    id: "b",
    n: 8,
    outline: "square",
    turned: "flat",
    a,
    half: a,
    whole,
    join: 1e-9,
  });
  return [
    ...piecesOf({
      unit: "in",
      seam: 0.25,
      blocks: [
        {
          geometry,
          count: 1,
          fabricOf: Object.fromEntries(geometry.patches.map((p) => [p.id, "f"])),
        },
      ],
      extras: [],
      fabrics: { f: { name: "F", letter: "A", directional: false, reversible: false } },
    }).pieces,
  ];
}

const byRole = (pieces: readonly Piece[], role: string) =>
  pieces.find((p) => p.roles.some((r) => r.startsWith(role)))!;

describe("what a wedge's tip adds to its strip, by apex angle (circle counts: a tutorial of 2017)", () => {
  const rows: [number, number, number, number][] = [
    [60, 6, 0.75, 0.288675],
    [45, 8, 0.903281, 0.334089],
    [36, 10, 1.059017, 0.363271],
    [30, 12, 1.215926, 0.383663],
    [22.5, 16, 1.531458, 0.410339],
    [18, 20, 1.848113, 0.42704],
    [15, 24, 2.165324, 0.438488],
    [12, 30, 2.641693, 0.450202],
    [9, 40, 3.436374, 0.462195],
  ];
  it.each(rows)("%s degrees, %s wedges: a sharp tip adds %s (derived)", (angle, n, sharp) => {
    const ruler = rulerOf({ point: "sharp" }, n, "in");
    expect((ruler.angle * 180) / Math.PI).toBeCloseTo(angle, 10);
    expect(stripFor(ruler, 5, 0.25) - 5).toBeCloseTo(sharp, 6);
    expect(halfAcross(ruler, 5 + sharp, 0.25)).toBeCloseTo(5, 6);
  });
  it.each(rows)("%s degrees, %s wedges: a blunt tip adds 1/2", (_angle, n) => {
    expect(stripFor(rulerOf({ point: BLUNT }, n, "in"), 5, 0.25) - 5).toBeCloseTo(0.5, 12);
  });
  it.each(rows)("%s degrees, %s wedges: blunt after %s is flat %s wide", (_angle, n, _s, flat) => {
    expect(flatTip(rulerOf({ point: BLUNT }, n, "in"))).toBeCloseTo(flat, 6);
  });
});

describe("eight-wedge blocks, by their finished size (derived, 1/4 in seam)", () => {
  // block, side, leg, blunt, sharp, base, corner, rule, then wedges: blunt 40, 42, sharp 40, 42
  const rows = [
    [6, 2.4853, 1.7574, 3.5, 3.9033, 3.2336, 2.6109, 2.75, 21, 22, 23, 24],
    [8, 3.3137, 2.3431, 4.5, 4.9033, 4.062, 3.1967, 3.25, 17, 18, 18, 19],
    [10, 4.1421, 2.9289, 5.5, 5.9033, 4.8904, 3.7825, 3.875, 14, 15, 15, 16],
    [12, 4.9706, 3.5147, 6.5, 6.9033, 5.7189, 4.3683, 4.5, 12, 12, 12, 13],
    [16, 6.6274, 4.6863, 8.5, 8.9033, 7.3757, 5.5398, 5.625, 9, 9, 9, 10],
    [24, 9.9411, 7.0294, 12.5, 12.9033, 10.6894, 7.883, 8, 6, 6, 6, 6],
  ] as const;

  it.each(rows)("block %s: octagon side %s", (block, side) => {
    expect(rowFor(block, "sharp").octagonSide).toBeCloseTo(side, 4);
  });
  it.each(rows)("block %s: strips and cut base", (block, _s, _l, blunt, sharp, base) => {
    expect(rowFor(block, BLUNT).strip).toBeCloseTo(blunt, 10);
    expect(rowFor(block, "sharp").strip).toBeCloseTo(sharp, 4);
    expect(rowFor(block, "sharp").wedgeBase).toBeCloseTo(base, 4);
    expect(rowFor(block, BLUNT).wedgeBase).toBeCloseTo(base, 4);
  });
  it.each(rows)(
    "block %s: corner leg %s, and the square for it",
    (block, _s, leg, _b, _c, _d, cut) => {
      const corner = byRole(piecesOfBlock(block, []), "corner");
      expect(Math.min(...corner.edges.map((e) => e.finished))).toBeCloseTo(leg, 4);
      expect(rowFor(block, "sharp").cornerSquare).toBeCloseTo(cut, 4);
    },
  );
  it.each(rows)(
    "block %s: leg + 7/8, up to 1/8, is proved and over",
    (block, _s, leg, _b, _c, _d, cut, rule) => {
      expect(Math.ceil((leg + 0.875) * 8 - 1e-9) / 8).toBe(rule);
      const pieces = piecesOfBlock(block, []);
      const { recipes } = recipesOf({
        pieces,
        ruler: { point: "sharp" },
        seam: 0.25,
        step: EIGHTH,
        unit: "in",
        fabrics: {},
        choices: { b: { corner: { size: String(rule) } } },
      });
      const corner = recipes.find((r) => r.pieceId === byRole(pieces, "corner").id)!;
      expect(corner).toMatchObject({ size: rule, verdict: "proved" });
      expect(rule - corner.exactSize!).toBeCloseTo(rule - cut, 4);
    },
  );
  it.each(rows)("block %s: wedges from a strip", (block, ...rest) => {
    const [b40, b42, s40, s42] = rest.slice(7);
    expect(rowFor(block, BLUNT, 40).wedgesPerStrip).toBe(b40);
    expect(rowFor(block, BLUNT, 42).wedgesPerStrip).toBe(b42);
    expect(rowFor(block, "sharp", 40).wedgesPerStrip).toBe(s40);
    expect(rowFor(block, "sharp", 42).wedgesPerStrip).toBe(s42);
  });

  it.each([
    [16, 42, 9, 42.07],
    [12, 42, 12, 42.037],
    [12, 39, 11, 39.01],
  ])("block %s blunt from %s: %s wedges, one more would need %s", (block, usable, count, need) => {
    const ruler = rulerOf({ point: BLUNT }, 8, "in");
    const found = wedgesInStrip(ruler, block / 2 + 0.5, { usable, folds: 0, unit: "in" });
    expect(found.count).toBe(count);
    expect(usable + found.missedBy).toBeCloseTo(need, 3);
  });

  it("12 in block: 4 3/8 squares already cover the corner's 4.3683", () => {
    const corner = rowFor(12, "sharp");
    expect(corner.cornerSquareText).toBe("4 3/8");
    expect(4.375 - corner.cornerSquare!).toBeCloseTo(0.0067, 4);
  });
});

describe("published practice for eight-wedge blocks", () => {
  const blunt = rulerOf({ point: BLUNT }, 8, "in");
  it.each([
    [6, 3.5, `${SPIDER}; ${KRATOVIL}`],
    [12, 6.5, LINDA],
  ])("block %s from a %s in strip, blunt (%s): exact", (block, strip, _source) => {
    expect(stripFor(blunt, block / 2, 0.25)).toBeCloseTo(strip, 12);
  });

  it(`6 in web block: the unfinished octagon measures 3 1/4 from center to edge (${SPIDER}): exact`, () => {
    expect(halfAcross(blunt, 3.5, 0.25) + 0.25).toBeCloseTo(3.25, 12);
  });
  it(`and 8 wedges come from an 18 in strip set (${SPIDER})`, () => {
    const { count } = wedgesInStrip(blunt, 3.5, { usable: 18, folds: 0, unit: "in" });
    expect(count).toBeGreaterThanOrEqual(8);
  });
  it(`and its corners' leg of 1.75 from a 2 1/4 in strip (${SPIDER}): 0.0074 under`, () => {
    const corner = byRole(piecesOfBlock(6, []), "corner");
    expect(1.75 - Math.min(...corner.edges.map((e) => e.finished))).toBeCloseTo(-0.0074, 4);
  });
  it(`12 in block, corners from a 4 1/2 in strip, leg 4.0 (${LINDA}): 0.485 over on purpose`, () => {
    const corner = byRole(piecesOfBlock(12, []), "corner");
    expect(4 - Math.min(...corner.edges.map((e) => e.finished))).toBeCloseTo(0.485, 3);
  });
  it(`corners from squares of the measured leg + 1 1/2 (${OCTAGON_BLOG}): 0.646 over`, () => {
    for (const block of [7, 12]) {
      const row = rowFor(block, "sharp");
      const leg = (block / 2) * (2 - Math.SQRT2);
      expect(leg + 1.5 - row.cornerSquare!).toBeCloseTo(0.646, 3);
    }
  });
  it(`24 wedges of 15 degrees, 6 in strips (${LINDA}): the circle closes, 11 in across with blunt tips`, () => {
    const ruler = rulerOf({ point: BLUNT }, 24, "in");
    expect((ruler.angle * 180) / Math.PI).toBeCloseTo(15, 12);
    expect(2 * halfAcross(ruler, 6, 0.25)).toBeCloseTo(11, 12);
  });
  it(`the last seam of a kaleidoscope block is 1.082392 of the block (${KRATOVIL})`, () => {
    const wedge = byRole(piecesOfBlock(9, []), "wedge");
    const leg = Math.max(...wedge.edges.map((e) => e.finished));
    expect((2 * leg) / 9).toBeCloseTo(1.082392, 6);
  });
  it(`224 triangles of 3 1/2 in base from 8 layers of a 44 in strip (${LAYERS}): 192, 32 over`, () => {
    const sixty = rulerOf({ point: "sharp" }, 6, "in");
    const strip = 3.5 * Math.cos(Math.PI / 6);
    expect(wedgeBase(sixty, strip)).toBeCloseTo(3.5, 12);
    const { count } = wedgesInStrip(sixty, strip, { usable: 44, folds: 0, unit: "in" });
    expect(8 * count).toBe(192);
    expect(224 - 8 * count).toBe(32);
  });
  it("a 10-degree blade 10 in long, 2 in wide (a blog): 1.7498 from a sharp point, so the print starts blunt by about 1/4", () => {
    const blade = { n: 36, angle: (10 * Math.PI) / 180, missing: 0, point: "sharp" as const };
    expect(wedgeBase(blade, 10)).toBeCloseTo(1.7498, 4);
    const tip = 2 - wedgeBase(blade, 10);
    expect(tip).toBeCloseTo(0.25, 2);
  });
});

describe("kites of a square block of four wedges and four kites (derived, 1/4 in seam)", () => {
  // block, long side, short side, axis, width, cut axis, cut width, cut long side, cut short side
  const rows = [
    [6, 3.2472, 1.7574, 4.2426, 2.4853, 5.2495, 3.0751, 4.0178, 2.1744],
    [8, 4.3296, 2.3431, 5.6569, 3.3137, 6.6637, 3.9035, 5.1002, 2.7602],
    [12, 6.4944, 3.5147, 8.4853, 4.9706, 9.4921, 5.5604, 7.265, 3.9318],
    [16, 8.6591, 4.6863, 11.3137, 6.6274, 12.3205, 7.2172, 9.4297, 5.1033],
  ] as const;
  const kiteOf = (block: number) => byRole(piecesOfBlock(block, [1, 3, 5, 7]), "kite");
  /** Greatest and least distance between corners two apart: the axis and the width. */
  const across = (p: readonly { x: number; y: number }[]) => {
    const d = [0, 1].map((i) => Math.hypot(p[i + 2].x - p[i].x, p[i + 2].y - p[i].y));
    return { axis: Math.max(...d), width: Math.min(...d) };
  };

  it.each(rows)(
    "block %s: sides %s and %s, axis %s, width %s",
    (block, long, short, axis, width) => {
      const { edges, finished } = kiteOf(block);
      expect(Math.max(...edges.map((e) => e.finished))).toBeCloseTo(long, 4);
      expect(Math.min(...edges.map((e) => e.finished))).toBeCloseTo(short, 4);
      expect(across(finished).axis).toBeCloseTo(axis, 4);
      expect(across(finished).width).toBeCloseTo(width, 4);
    },
  );
  it.each(rows)("block %s: as cut", (block, ...rest) => {
    const [axis, width, long, short] = rest.slice(4);
    const { edges, cut } = kiteOf(block);
    expect(across(cut).axis).toBeCloseTo(axis, 4);
    expect(across(cut).width).toBeCloseTo(width, 4);
    expect(Math.max(...edges.map((e) => e.cut))).toBeCloseTo(long, 4);
    expect(Math.min(...edges.map((e) => e.cut))).toBeCloseTo(short, 4);
    expect(rowFor(block, "sharp").kiteMark).toBeCloseTo(short, 4);
  });
  it.each(rows)("block %s: the cut axis gains 1.006835 whatever the size", (block) => {
    const { cut, finished } = kiteOf(block);
    expect(across(cut).axis - across(finished).axis).toBeCloseTo(1.006835, 6);
  });
});
