import { describe, expect, test } from "vitest";
import { area, distance, edgeLength, edges, offset, type Polygon } from "../geometry/index.ts";
import { radialBlock } from "./radial.ts";

/**
 * Published figures against the finished blocks, and against their patches with every edge moved out
 * by 1/4 in. The source stands with each. Recomputed figures are kept to the digits printed.
 */
const SEAM = 0.25;
const KITES = [1, 3, 5, 7];

const square = (finished: number, whole: readonly number[] = []) =>
  radialBlock({
    id: "b",
    n: 8,
    outline: "square",
    turned: "flat",
    a: finished / 2,
    half: finished / 2,
    whole,
    join: 1e-9,
  });

const patch = (finished: number, id: string, whole?: readonly number[]) =>
  square(finished, whole).patches.find((p) => p.id === `b/${id}`)!.polygon;
const lengths = (p: Polygon) => edges(p).map(edgeLength);
const cutOut = (p: Polygon) =>
  offset(
    p,
    p.map(() => SEAM),
  );

describe("regular octagon in its square", () => {
  // University of Regina, Math Central, octagon question QQ.09.02 (2002); Catbird Quilts, octagon maths;
  // Machinery's Handbook, table of regular polygons (this one from memory).
  test("side 0.414214 F, corner leg 0.292893 F, across corners 1.082392 F", () => {
    const F = 7.3;
    const [, side] = lengths(patch(F, "s0/wedge"));
    expect((side / F).toFixed(6)).toBe("0.414214");
    expect((F / side).toFixed(6)).toBe("2.414214");
    const [, leg] = lengths(patch(F, "s1/outer"));
    expect((leg / F).toFixed(6)).toBe("0.292893");
    expect(((2 * square(F).radial!.circumradius) / F).toFixed(6)).toBe("1.082392");
  });

  // R. G. Hatfield, The American House Carpenter, art. 528: half the diagonal swung from each corner
  // marks the octagon.
  test("the marks lie half a diagonal, 0.707107 of the side, from each corner", () => {
    const F = 9.1;
    const { polygon } = square(F).patches.find((p) => p.id === "b/s0/wedge")!;
    const corner = { x: F / 2, y: -F / 2 };
    const far = polygon.find((v) => v.y > 0)!;
    expect((distance(far, corner) / F).toFixed(6)).toBe("0.707107");
  });

  // Geometry, worked out for a raw square: an octagon moved out by 1/4 all round is again regular.
  test("cut square F + 1/2: the same marks work on the raw square", () => {
    const raw = cutOut(
      square(8)
        .patches.filter((p) => p.role.startsWith("wedge"))
        .map((p) => p.polygon[1]),
    );
    for (const side of lengths(raw)) expect((side / 8.5).toFixed(6)).toBe("0.414214");
  });
});

describe("hexagon", () => {
  // CRC Standard Mathematical Tables, 30th ed., regular polygons.
  test("across flats 1.732051 sides, across corners 2 sides, ratio 1.154701", () => {
    const b = radialBlock({
      id: "h",
      n: 6,
      outline: "hexagon",
      turned: "flat",
      a: 2.9,
      half: 2.9,
      whole: [],
      join: 1e-9,
    });
    const [side] = lengths(b.outline);
    expect((b.width / side).toFixed(6)).toBe("1.732051");
    expect((b.height / side).toFixed(6)).toBe("2.000000");
    expect((b.height / b.width).toFixed(6)).toBe("1.154701");
    // A maker's blog, 2020-07-27: hexagons are named by the finished side; "1 inch": flats 1.7321,
    // cut flats 2.2321.
    expect((b.width / side).toFixed(4)).toBe("1.7321");
    expect((b.width / side + 2 * SEAM).toFixed(4)).toBe("2.2321");
  });
});

describe("kite of a quarter block", () => {
  // Geometry, against a designer's blog of 2026-04-11 whose quarter-block kite goes to the middles of
  // the far sides and so has a tip of 36.870 degrees.
  test("a true 45-degree kite is marked at 0.414214 q and has area 0.585786 q^2", () => {
    const q = 4.7;
    const kite = patch(2 * q, "s1/whole", KITES);
    const mark = Math.min(...(kite[1].x === q ? [kite[1].y] : [kite[1].x]));
    expect((mark / q).toFixed(6)).toBe("0.414214");
    expect((area(kite) / q ** 2).toFixed(6)).toBe("0.585786");
    expect(area(patch(8, "s1/whole", KITES))).toBeCloseTo(9.3726, 4);
    const corner = (i: number) => {
      const [u, v, w] = [kite[(i + 3) % 4], kite[i], kite[(i + 1) % 4]];
      const turn =
        Math.atan2(u.y - v.y, u.x - v.x) - Math.atan2(w.y - v.y, w.x - v.x) + 4 * Math.PI;
      return ((turn % (2 * Math.PI)) * 180) / Math.PI;
    };
    expect([0, 1, 2, 3].map((i) => corner(i).toFixed(1))).toEqual([
      "45.0",
      "112.5",
      "90.0",
      "112.5",
    ]);
    const toMiddles = 90 - (2 * Math.atan(0.5) * 180) / Math.PI;
    expect(toMiddles.toFixed(3)).toBe("36.870");
    expect(corner(0) - toMiddles).toBeCloseTo(8.13, 2);
  });

  // Worked figures for a square block of four axis wedges and four corner kites, 1/4 in seam.
  test.each([
    [6, 2.4853, 3.2472, 1.7574, 4.2426, 2.4853, 5.2495, 3.0751, 4.0178, 2.1744],
    [8, 3.3137, 4.3296, 2.3431, 5.6569, 3.3137, 6.6637, 3.9035, 5.1002, 2.7602],
    [12, 4.9706, 6.4944, 3.5147, 8.4853, 4.9706, 9.4921, 5.5604, 7.265, 3.9318],
    [16, 6.6274, 8.6591, 4.6863, 11.3137, 6.6274, 12.3205, 7.2172, 9.4297, 5.1033],
  ])("block %d", (B, base, long, short, axis, width, cutAxis, cutWidth, cutLong, cutShort) => {
    const wedge = patch(B, "s0/wedge", KITES);
    const kite = patch(B, "s1/whole", KITES);
    expect(lengths(wedge)[1]).toBeCloseTo(base, 4);
    expect(lengths(wedge)[0]).toBeCloseTo(long, 4);
    const sizes = (p: Polygon) => [
      lengths(p)[0],
      lengths(p)[1],
      distance(p[0], p[2]),
      distance(p[1], p[3]),
    ];
    const close = (found: number[], printed: number[]) =>
      printed.forEach((x, i) => {
        expect(Math.abs(found[i] - x)).toBeLessThanOrEqual(0.5001e-4);
      });
    close(sizes(kite), [long, short, axis, width]);
    close(sizes(cutOut(kite)), [cutLong, cutShort, cutAxis, cutWidth]);
    expect((sizes(cutOut(kite))[2] - sizes(kite)[2]).toFixed(6)).toBe("1.006835");
  });
});

describe("eight-wedge blocks, finished and cut with a full sharp point", () => {
  // Worked figures for 45 degrees at 1/4 in; block 6 with a 3 1/2 in strip and block 12 with 6 1/2
  // (blunt) also in L., quilt-along weeks 9 and 13 (2013), Patchwork Playground, spiderweb block 83
  // (2012) and D. Kratovil, steps to a kaleidoscope block (2022).
  test.each([
    [6, 2.4853, 1.7574, 3.5, 3.9033, 3.2336, 2.6109],
    [8, 3.3137, 2.3431, 4.5, 4.9033, 4.062, 3.1967],
    [10, 4.1421, 2.9289, 5.5, 5.9033, 4.8904, 3.7825],
    [12, 4.9706, 3.5147, 6.5, 6.9033, 5.7189, 4.3683],
    [16, 6.6274, 4.6863, 8.5, 8.9033, 7.3757, 5.5398],
    [24, 9.9411, 7.0294, 12.5, 12.9033, 10.6894, 7.883],
  ])("block %d", (B, side, leg, blunt, strip, base, cornerCut) => {
    const wedge = patch(B, "s0/wedge");
    const cutWedge = cutOut(wedge);
    const near = (found: number, printed: number) =>
      expect(Math.abs(found - printed)).toBeLessThanOrEqual(0.5001e-4);
    near(lengths(wedge)[1], side);
    near(lengths(patch(B, "s1/outer"))[1], leg);
    near(cutWedge[1].x - cutWedge[0].x, strip);
    near(cutWedge[1].x + SEAM, blunt);
    near(lengths(cutWedge)[1], base);
    near(lengths(cutOut(patch(B, "s1/outer")))[1], cornerCut);
  });

  // Patchwork Playground, spiderweb block 83 (2012): the raw octagon of a 6 in block must measure
  // 3 1/4 from the center to each edge; corners are half-square triangles from a 2 1/4 in strip.
  test("block 6: raw octagon 3 1/4 from the center; the printed corner is 0.0074 short", () => {
    expect(cutOut(patch(6, "s0/wedge"))[1].x).toBeCloseTo(3.25, 12);
    const exact = lengths(patch(6, "s1/outer"))[1];
    expect((exact - (2.25 - 2 * SEAM)).toFixed(4)).toBe("0.0074");
  });

  // L., quilt-along (2013): a 12 in block's corners from 4 1/2 in, leg 4.
  test("block 12: the printed corner leg of 4 is 0.485 over", () => {
    expect((4 - lengths(patch(12, "s1/outer"))[1]).toFixed(3)).toBe("0.485");
  });

  // D. Kratovil, steps to a kaleidoscope block (2022) calls the last seam the diagonal; it runs from
  // octagon corner to octagon corner, 22.5 degrees off a center line.
  test("the last seam of corners first is 1.082392 B long and 22.5 degrees off a center line", () => {
    const b = radialBlock({
      id: "b",
      n: 8,
      outline: "square",
      turned: "flat",
      a: 6,
      half: 6,
      whole: [],
      tree: "corners-first",
      join: 1e-9,
    });
    if (b.tree.kind !== "seam") throw new Error("a block of one patch");
    const { from, to, length } = b.tree.seam;
    expect((length / b.width).toFixed(6)).toBe("1.082392");
    const angle = (Math.atan2(Math.abs(to.y - from.y), Math.abs(to.x - from.x)) * 180) / Math.PI;
    expect(Math.min(angle, 90 - angle)).toBeCloseTo(22.5, 10);
  });
});

describe("what a sharp or blunt wedge point adds to its finished height, by angle", () => {
  // Worked figures at 1/4 in; the angles of 6, 8, 10, 12 and 16 wedges in a circle are in print in a
  // 2017 tutorial on wedge rulers. Blunt: the tip cut 1/4 past the finished point.
  test.each([
    [6, 0.75, 0.288675],
    [8, 0.903281, 0.334089],
    [10, 1.059017, 0.363271],
    [12, 1.215926, 0.383663],
    [16, 1.531458, 0.410339],
  ] as const)("%i wedges", (n, sharp, flatTip) => {
    const a = 5.3;
    const { patches } = radialBlock({
      id: "b",
      n,
      outline: "square",
      turned: "flat",
      a,
      half: 2 * a,
      whole: [],
      join: 1e-9,
    });
    const cutWedge = cutOut(patches.find((p) => p.id === "b/s0/wedge")!.polygon);
    const [tip, low, high] = cutWedge;
    expect((low.x - tip.x - a).toFixed(6)).toBe(sharp.toFixed(6));
    const atBlunt = ((high.y - low.y) * (-SEAM - tip.x)) / (low.x - tip.x);
    expect(atBlunt.toFixed(6)).toBe(flatTip.toFixed(6));
    expect((low.x + SEAM - a).toFixed(6)).toBe("0.500000");
  });
});
