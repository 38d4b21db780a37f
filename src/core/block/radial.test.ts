import { describe, expect, test } from "vitest";
import { area, edgeLength, edges, norm, type Polygon } from "../geometry/index.ts";
import { outlineOf, patchesOf, unitsOf } from "./plan.ts";
import { leastHalf, type RadialSpec, radialBlock } from "./radial.ts";
import type { BlockGeometry } from "./types.ts";

const T = Math.tan(Math.PI / 8);
const A = 3.7;
const DEEP = A / Math.cos(Math.PI / 8);
const KITES = [1, 3, 5, 7];

const build = (spec: Partial<RadialSpec>): BlockGeometry =>
  radialBlock({
    id: "b",
    n: 8,
    outline: "square",
    turned: "flat",
    a: A,
    half: A,
    whole: [],
    join: 1e-9,
    ...spec,
  });

/** The block with the least side. */
const least = (spec: Pick<RadialSpec, "n" | "turned"> & Partial<RadialSpec>) => {
  const whole = spec.whole ?? [];
  const outline = spec.outline ?? "square";
  return build({ ...spec, half: leastHalf({ ...spec, outline, whole, a: A }) });
};

/** `4 corner 3, 8 wedge 3`: how many patches of each role with how many corners. */
function contents(b: BlockGeometry): string {
  const counts = new Map<string, number>();
  for (const p of b.patches) {
    const role = p.role.startsWith("wedge") ? "wedge" : p.role.replace("background-", "");
    const kind = `${role} ${p.polygon.length}`;
    counts.set(kind, (counts.get(kind) ?? 0) + 1);
  }
  return [...counts]
    .map(([kind, n]) => `${n} ${kind}`)
    .sort()
    .join(", ");
}

const lengths = (p: Polygon) => edges(p).map(edgeLength);
const patch = (b: BlockGeometry, id: string) => b.patches.find((p) => p.id === id)!;

describe("eight wedges in a square, by setting", () => {
  test("plain corners: 8 wedges and 4 corner triangles, S = 2a", () => {
    const b = build({});
    expect(b.width).toBe(2 * A);
    expect(contents(b)).toBe("4 corner 3, 8 wedge 3");
    const [first, base, last] = lengths(patch(b, "b/s3/wedge").polygon);
    expect(first).toBeCloseTo(A / Math.cos(Math.PI / 8), 12);
    expect(last).toBeCloseTo(first, 12);
    expect(base).toBeCloseTo(2 * A * T, 12);
    const [seam, leg, other] = lengths(patch(b, "b/s3/outer").polygon);
    expect(seam).toBeCloseTo(2 * A * T, 12);
    expect(leg).toBeCloseTo(A * (2 - Math.SQRT2), 12);
    expect(other).toBeCloseTo(leg, 12);
    expect(b.radial).toMatchObject({ n: 8, turned: "flat", a: A, half: A, whole: [] });
    expect(b.radial?.polygonSide).toBeCloseTo(2 * A * T, 12);
    expect(b.radial?.circumradius).toBeCloseTo(A / Math.cos(Math.PI / 8), 12);
  });

  test("kites: 4 wedges and 4 kites", () => {
    const b = build({ whole: KITES });
    expect(contents(b)).toBe("4 kite 4, 4 wedge 3");
    const kite = patch(b, "b/s1/whole").polygon;
    const [long, short, other, back] = lengths(kite);
    expect(long).toBeCloseTo(A / Math.cos(Math.PI / 8), 12);
    expect(back).toBeCloseTo(long, 12);
    expect(short).toBeCloseTo(A * (1 - T), 12);
    expect(other).toBeCloseTo(short, 12);
    expect(area(kite)).toBeCloseTo((2 - Math.SQRT2) * A ** 2, 12);
  });

  test("floating: 4 trapezoids and 4 five-sided corners, all symmetric, for any side over 2a", () => {
    for (const half of [1.004 * A, 1.31 * A, 2.7 * A]) {
      const b = build({ half });
      expect(contents(b)).toBe("4 corner 5, 4 trapezoid 4, 8 wedge 3");
      expect(b.patches.every((p) => p.hand === "none")).toBe(true);
      expect(b.width).toBe(2 * half);
    }
  });

  test("framed: the plain or kite block and 4 bars", () => {
    const frame = 1.43 * A;
    const plain = build({ frame });
    expect(contents(plain)).toBe("4 bar 4, 4 corner 3, 8 wedge 3");
    expect(contents(build({ frame, whole: KITES }))).toBe("4 bar 4, 4 kite 4, 4 wedge 3");
    expect(plain.width).toBe(2 * frame);
    const [side, top] = ["b/bar-left", "b/bar-top"].map((id) => patch(plain, id).polygon);
    const sorted = (p: Polygon) => lengths(p).sort((x, y) => x - y);
    expect(sorted(side)[3]).toBeCloseTo(2 * A, 12);
    expect(sorted(top)[3]).toBeCloseTo(2 * frame, 12);
    expect(sorted(side)[0]).toBeCloseTo(frame - A, 12);
    expect(sorted(top)[0]).toBeCloseTo(frame - A, 12);
  });

  test("deep: 4 left and 4 right backgrounds, S = 2h from h = a / cos 22.5 up", () => {
    const b = least({ n: 8, turned: "corner" });
    expect(b.width).toBeCloseTo(2 * DEEP, 12);
    expect(contents(b)).toBe("4 left 3, 4 right 3, 8 wedge 3");
    expect(contents(build({ turned: "corner", half: 1.2 * DEEP }))).toBe(
      "4 left 4, 4 right 4, 8 wedge 3",
    );
  });

  test("with the right side at the bottom, the background toward its right end is the right one", () => {
    const b = least({ n: 8, turned: "corner" });
    // Sector 0 rises from the middle of the right side: turned to the bottom, that is to the right.
    expect(patch(b, "b/s0/outer")).toMatchObject({ hand: "right", role: "background-right" });
    expect(patch(b, "b/s7/outer")).toMatchObject({ hand: "left", role: "background-left" });
  });

  test("patches are named by sector, and start at the corner nearest the center", () => {
    const b = build({ whole: [1] });
    expect(b.patches.map((p) => p.id).sort()).toEqual([
      "b/s0/wedge",
      "b/s1/whole",
      "b/s2/wedge",
      "b/s3/outer",
      "b/s3/wedge",
      "b/s4/wedge",
      "b/s5/outer",
      "b/s5/wedge",
      "b/s6/wedge",
      "b/s7/outer",
      "b/s7/wedge",
    ]);
    for (const p of b.patches) {
      const far = p.polygon.map(norm);
      expect(far[0]).toBeLessThanOrEqual(Math.min(...far) + 1e-12);
    }
    expect(patch(b, "b/s0/wedge").role).toBe("wedge-even");
    expect(patch(b, "b/s3/wedge").role).toBe("wedge-odd");
  });
});

describe("other numbers of wedges, least side and what lies outside", () => {
  const rows = [
    [6, "flat", "square", 1.1547, "2 left 4, 2 right 4, 2 trapezoid 4, 6 wedge 3"],
    [6, "corner", "square", 1.1547, "2 left 4, 2 right 4, 2 trapezoid 4, 6 wedge 3"],
    [
      10,
      "flat",
      "square",
      1.0515,
      "10 wedge 3, 2 left 3, 2 left 5, 2 right 3, 2 right 5, 2 trapezoid 4",
    ],
    [
      10,
      "corner",
      "square",
      1.0515,
      "10 wedge 3, 2 left 3, 2 left 5, 2 right 3, 2 right 5, 2 trapezoid 4",
    ],
    [12, "flat", "square", 1, "12 wedge 3, 4 left 3, 4 right 3"],
    [12, "corner", "square", 1.0353, "12 wedge 3, 4 corner 5, 4 left 3, 4 right 3"],
    [16, "flat", "square", 1, "16 wedge 3, 4 corner 5, 4 left 3, 4 right 3"],
    [16, "corner", "square", 1.0196, "16 wedge 3, 4 left 3, 4 left 4, 4 right 3, 4 right 4"],
    [6, "flat", "hexagon", 1, "6 wedge 3"],
    [6, "corner", "hexagon", 1.1547, "6 corner 3, 6 wedge 3"],
    [12, "flat", "hexagon", 1, "12 wedge 3, 6 corner 3"],
    [12, "corner", "hexagon", 1.0353, "12 wedge 3, 6 left 3, 6 right 3"],
  ] as const;

  test.each(rows)("%i %s in a %s", (n, turned, outline, ratio, inside) => {
    const b = least({ n, turned, outline });
    expect((b.width / (2 * A)).toFixed(4)).toBe(ratio.toFixed(4));
    expect(contents(b)).toBe(inside);
  });

  test.each([6, 10] as const)(
    "%i in a square is the same block for both turns, a quarter turned",
    (n) => {
      const flat = least({ n, turned: "flat" });
      const corner = least({ n, turned: "corner" });
      const turned = corner.patches.map((p) => p.polygon.map((v) => ({ x: -v.y, y: v.x })));
      const same = (p: Polygon, q: Polygon) =>
        p.length === q.length &&
        p.every((v) => q.some((w) => Math.hypot(v.x - w.x, v.y - w.y) < 1e-9));
      for (const p of flat.patches) expect(turned.filter((q) => same(p.polygon, q)).length).toBe(1);
    },
  );
});

describe("which tree", () => {
  const lastSeam = (b: BlockGeometry) => (b.tree.kind === "seam" ? b.tree.seam : undefined)!;
  /** How many sectors each sewn unit joins, of those that join more than one. */
  const joined = (b: BlockGeometry) =>
    unitsOf(b.tree)
      .map((u) => new Set(patchesOf(u).map((p) => p.sector)).size)
      .filter((k) => k > 1)
      .sort((x, y) => x - y);

  test("plain corners go on last, so that the octagon can be trued; or first when asked", () => {
    const last = build({});
    expect(last.choice).toEqual({
      name: "corners-last",
      others: ["corners-first"],
      why: "trued-before-corners",
    });
    const octagon = unitsOf(last.tree).find((u) => u.outline.length === 8)!;
    expect(lengths(octagon.outline).every((x) => Math.abs(x - 2 * A * T) < 1e-12)).toBe(true);
    expect(lastSeam(last).length).toBeCloseTo(2 * A * T, 12);
    const first = build({ tree: "corners-first" });
    expect(first.choice).toMatchObject({ name: "corners-first", why: "asked" });
    expect(unitsOf(first.tree).some((u) => u.outline.length === 8)).toBe(false);
  });

  test("a plain or kite block's long seam runs octagon corner to octagon corner, 1.0824 S", () => {
    for (const b of [build({ tree: "corners-first" }), build({ whole: KITES })]) {
      expect(lastSeam(b).length / b.width).toBeCloseTo(1.0823922, 7);
      expect(lastSeam(b).length / 2).toBeCloseTo(A / Math.cos(Math.PI / 8), 12);
    }
  });

  test("a deep block pairs into four squares and ends side middle to side middle", () => {
    const b = least({ n: 8, turned: "corner" });
    expect(b.choice).toMatchObject({ name: "circle", why: "more-rectangles" });
    const squares = unitsOf(b.tree).filter(
      (u) => u.outline.length === 4 && lengths(u.outline).every((x) => Math.abs(x - DEEP) < 1e-9),
    );
    expect(squares.length).toBe(4);
    const { from, to } = lastSeam(b);
    expect([from, to].map((v) => Math.min(Math.abs(v.x), Math.abs(v.y)))).toEqual([0, 0]);
    expect(lastSeam(b).length).toBeCloseTo(b.width, 12);
  });

  test("twelve in a square: the bias edges on the diagonals are not left open for the long seam", () => {
    const b = least({ n: 12, turned: "flat" });
    expect(b.choice.why).toBe("fewer-bias-edges");
    const { from, to } = lastSeam(b);
    expect(Math.abs(Math.abs(to.x - from.x) - Math.abs(to.y - from.y))).toBeGreaterThan(A);
    const diagonal = build({ n: 12, tree: "circle-from-2" });
    expect(lastSeam(diagonal).length).toBeCloseTo(2 * Math.SQRT2 * A, 12);
  });

  test("twelve in a hexagon: the long seam runs side middle to side middle, not corner to corner", () => {
    const b = least({ n: 12, turned: "corner", outline: "hexagon" });
    expect(b.choice.why).toBe("shorter-last-seam");
    expect(lastSeam(b).length).toBeCloseTo(b.width, 12);
    expect(b.height).toBeGreaterThan(1.1 * b.width);
  });

  test("the other order of a deep block can be asked for by its name", () => {
    const b = build({ turned: "corner", half: DEEP, tree: "circle-from-1" });
    expect(b.choice).toEqual({ name: "circle-from-1", others: ["circle"], why: "asked" });
    expect(lastSeam(b).length).toBeCloseTo(2 * Math.SQRT2 * DEEP, 12);
  });

  test("a name that is no tree of the block changes nothing", () => {
    expect(build({ tree: "circle-from-9" })).toEqual(build({}));
  });

  test.each([
    [6, [2, 2, 3, 3, 6]],
    [8, [2, 2, 2, 2, 4, 4, 8]],
    [10, [2, 2, 2, 2, 4, 4, 5, 5, 10]],
    [12, [2, 2, 2, 2, 2, 2, 4, 4, 6, 6, 12]],
    [16, [2, 2, 2, 2, 2, 2, 2, 2, 4, 4, 4, 4, 8, 8, 16]],
  ] as const)("%i: pairs, then halves, then one long seam", (n, sizes) => {
    const whole = Array.from({ length: n }, (_, i) => i);
    expect(joined(build({ n, whole, tree: n === 10 ? "circle-from-0-2-2-1" : undefined }))).toEqual(
      sizes,
    );
  });

  test("a framed block sews its top and bottom bars on last", () => {
    const b = build({ frame: 1.5 * A });
    const last = lastSeam(b);
    expect(last.length).toBeCloseTo(3 * A, 12);
    expect(last.from.y).toBeCloseTo(-A, 12);
    const part = b.tree.kind === "seam" ? b.tree.parts[0] : b.tree;
    expect(outlineOf(part).length).toBe(4);
  });
});

describe("broken contracts", () => {
  test.each([
    ["sectors", { n: 7 as never }],
    ["a hexagon takes", { n: 8, outline: "hexagon" }],
    ["positive", { a: 0 }],
    ["positive", { half: Number.NaN }],
    ["sectors from 0 to 7", { whole: [8] }],
    ["half of at least", { half: 0.99 * A }],
    ["a frame is wider", { frame: A }],
  ] as [string, Partial<RadialSpec>][])("%s", (message, spec) => {
    expect(() => build(spec)).toThrow(message);
    expect(() => build(spec)).toThrow(RangeError);
  });
});
