import { describe, expect, it } from "vitest";
import type { BlockGeometry, Hand, Patch, Role } from "../block/types.ts";
import { applyToPolygon, area, covers, distance, type Polygon, point } from "../geometry/index.ts";
import { laidOn, type PieceFabric, piecesOf } from "./index.ts";

const INCH = { unit: "in", seam: 0.25 } as const;
const FABRICS: Record<string, PieceFabric> = {
  tide: { name: "Tide", letter: "A", directional: false, reversible: false },
  both: { name: "Both sides alike", letter: "B", directional: false, reversible: true },
};

const patch = (
  id: string,
  role: Role,
  polygon: Polygon,
  outside: readonly number[] = [],
  hand: Hand = "none",
): Patch => ({ id, role, hand, polygon, outside: polygon.map((_, i) => outside.includes(i)) });

/** A block for these tests: its tree is not read here. */
function block(id: string, patches: readonly Patch[]): BlockGeometry {
  const [first] = patches;
  return {
    id,
    outline: first.polygon,
    width: 8,
    height: 8,
    patches,
    tree: { kind: "patch", patch: first },
    choice: { name: "test", others: [], why: "" },
  };
}

const all = (b: BlockGeometry, fabric: string) =>
  Object.fromEntries(b.patches.map((p) => [p.id, fabric]));

const radial = (a: number, degrees: number): Polygon => {
  const at = (d: number) => {
    const r = (d * Math.PI) / 180;
    const R = a / Math.cos(Math.PI / 8);
    return point(R * Math.cos(r), R * Math.sin(r));
  };
  return [point(0, 0), at(degrees - 22.5), at(degrees + 22.5)];
};

const deep = (h: number, a: number): Polygon => {
  const R = a / Math.cos(Math.PI / 8);
  const d = R * Math.SQRT1_2;
  return [point(R, 0), point(h, 0), point(h, h), point(d, d)];
};
const mirrored = (p: Polygon): Polygon => p.map((v) => point(v.x, -v.y)).reverse();

describe("piecesOf", () => {
  it("makes one piece of wedges turned all round, standing on the outer edge", () => {
    const b = block(
      "star",
      [0, 45, 90, 135].map((d, i) => patch(`star/s${i}`, "wedge-even", radial(4, d), [1])),
    );
    const { pieces, pieceOf } = piecesOf({
      ...INCH,
      blocks: [{ geometry: b, count: 7, fabricOf: all(b, "tide") }],
      extras: [],
      fabrics: FABRICS,
    });
    expect(pieces).toHaveLength(1);
    const [wedge] = pieces;
    expect(wedge).toMatchObject({
      letter: "A1",
      hand: "none",
      count: 28,
      setsSize: true,
      name: "wedge",
    });
    expect(wedge.perBlock).toEqual({ star: 4 });
    expect(Object.keys(pieceOf)).toHaveLength(4);
    // a = 4, seam 1/4: base as cut 4.0620, sharp strip 4.9033 (docs/geometry/allowance.md)
    expect(wedge.edges[0].cut).toBeCloseTo(4.062, 4);
    expect(Math.max(...wedge.cut.map((v) => v.y))).toBeCloseTo(4.9033, 4);
    expect(distance(wedge.cut[0], point(0, 0))).toBeLessThan(1e-12);
    expect(wedge.edges.map((e) => e.grainWord)).toEqual(["straight", "off-grain", "off-grain"]);
    expect(wedge.edges[1].grain).toBeCloseTo(22.5, 10);
    expect(wedge.edges.map((e) => e.outside)).toEqual([true, false, false]);
  });

  it("tells lefts from rights, and joins them on a fabric that is alike on both sides", () => {
    const left = patch("moat/s1/outer-1", "background-left", mirrored(deep(6, 4)), [1], "left");
    const right = patch("moat/s0/outer-1", "background-right", deep(6, 4), [1], "right");
    const b = block("moat", [right, left]);
    const run = (fabric: string) =>
      piecesOf({
        ...INCH,
        blocks: [{ geometry: b, count: 3, fabricOf: all(b, fabric) }],
        extras: [],
        fabrics: FABRICS,
      });
    const two = run("tide").pieces;
    expect(two.map((p) => [p.letter, p.hand, p.name]).sort()).toEqual([
      ["A1", "left", "left background"],
      ["A2", "right", "right background"],
    ]);
    expect(two[0].mirrorId).toBe(two[1].id);
    expect(two[1].mirrorId).toBe(two[0].id);
    const one = run("both").pieces;
    expect(one).toHaveLength(1);
    expect(one[0]).toMatchObject({ hand: "none", eitherWay: true, count: 6, name: "background" });
    expect(one[0].mirrorId).toBeUndefined();
  });

  it("lays the outside edge on the straight grain: corners on their legs, side triangles on the long side", () => {
    const leg = 2.25;
    const triangle = [point(0, 0), point(leg, 0), point(0, leg)];
    const b = block("both", [
      patch("both/legs", "corner", triangle, [0, 2]),
      patch("both/long", "patch", triangle, [1]),
    ]);
    const { pieces } = piecesOf({
      ...INCH,
      blocks: [{ geometry: b, count: 1, fabricOf: all(b, "tide") }],
      extras: [],
      fabrics: FABRICS,
    });
    expect(pieces).toHaveLength(2);
    for (const p of pieces)
      for (const e of p.edges) if (e.outside) expect(e.grainWord).toBe("straight");
    const corner = pieces.find((p) => p.roles[0] === "corner");
    expect(corner?.edges.filter((e) => e.grainWord === "bias")).toHaveLength(1);
  });

  it("keeps unequal allowances apart, and works in millimetres", () => {
    const square = [point(0, 0), point(50, 0), point(50, 50), point(0, 50)];
    const b = block("plain", [
      patch("plain/a", "patch", square),
      patch("plain/b", "patch", square),
    ]);
    const { pieces } = piecesOf({
      unit: "mm",
      seam: 7,
      blocks: [
        {
          geometry: b,
          count: 2,
          fabricOf: all(b, "tide"),
          allowances: { "plain/b": [7, 7, 12, 7] },
        },
      ],
      extras: [],
      fabrics: FABRICS,
    });
    expect(pieces.map((p) => area(p.cut)).sort()).toEqual([64 * 64, 64 * 69]);
    expect(pieces.find((p) => p.letter === "A1")?.patchIds).toEqual(["plain/b"]);
  });

  it("keeps the id when the block is turned, moved in the list or needed more often", () => {
    const one = block("one", [patch("one/x", "background-right", deep(5.5, 4), [1], "right")]);
    const turned = deep(5.5, 4).map((v) => point(-v.y, v.x));
    const two = block("two", [
      patch("two/w", "wedge-odd", radial(3, 90), [1]),
      patch("two/x", "background-right", turned, [1], "right"),
    ]);
    const ids = [one, two].map(
      (b) =>
        piecesOf({
          ...INCH,
          blocks: [{ geometry: b, count: 2, fabricOf: all(b, "tide") }],
          extras: [],
          fabrics: FABRICS,
        }).pieceOf[`${b.id}/x`],
    );
    expect(ids[0]).toBe(ids[1]);
  });

  it("says when the allowances are wider than the patch, and what to trim them to", () => {
    const bar = [point(0, 0), point(9, 0), point(9, 0.375), point(0, 0.375)];
    const b = block("thin", [patch("thin/bar", "bar", bar)]);
    const { pieces, findings } = piecesOf({
      ...INCH,
      blocks: [{ geometry: b, count: 1, fabricOf: all(b, "tide") }],
      extras: [],
      fabrics: FABRICS,
    });
    expect(findings).toEqual([
      {
        code: "allowances-overlap",
        severity: "advice",
        place: pieces[0].id,
        found: 0.375,
        needed: 0.1875,
      },
    ]);
  });

  it("lays each piece back on its patch, turned over only where the fabric allows it", () => {
    const polygons = [deep(6, 4), mirrored(deep(6, 4))];
    const b = block("moat", [
      patch("moat/r", "background-right", polygons[0], [1], "right"),
      patch("moat/l", "background-left", polygons[1], [1], "left"),
    ]);
    for (const fabric of ["tide", "both"]) {
      const { pieces, pieceOf } = piecesOf({
        ...INCH,
        blocks: [{ geometry: b, count: 1, fabricOf: all(b, fabric) }],
        extras: [],
        fabrics: FABRICS,
      });
      for (const p of b.patches) {
        const piece = pieces.find((q) => q.id === pieceOf[p.id])!;
        const motion = laidOn(piece, p.polygon, 1e-9);
        expect(motion).toBeDefined();
        const laid = applyToPolygon(motion!, piece.finished);
        expect(covers(p.polygon, laid, 1e-9)).toBe(true);
        expect(area(laid)).toBeCloseTo(area(p.polygon), 9);
      }
    }
  });

  it("trims each sharp point level with the ends of its seams, losing no allowance", () => {
    const b = block("star", [patch("star/s0", "wedge-even", radial(4, 0), [1])]);
    const [wedge] = piecesOf({
      ...INCH,
      blocks: [{ geometry: b, count: 1, fabricOf: all(b, "tide") }],
      extras: [],
      fabrics: FABRICS,
    }).pieces;
    expect(wedge.trims.map((t) => t.corner)).toEqual([0, 1, 2]);
    const tip = wedge.trims[2];
    // Square out from the finished point by 1/4 on both legs: 2 x 1/4 x cos 22.5 across.
    expect(Math.abs(tip.from.x - tip.to.x)).toBeCloseTo(0.5 * Math.cos(Math.PI / 8), 12);
    expect(tip.from.y).toBeCloseTo(tip.to.y, 12);
  });

  it("refuses a patch without a fabric and an allowance list of the wrong length", () => {
    const b = block("x", [patch("x/a", "patch", [point(0, 0), point(3, 0), point(0, 4)])]);
    const input = { ...INCH, extras: [], fabrics: FABRICS };
    expect(() => piecesOf({ ...input, blocks: [{ geometry: b, count: 1, fabricOf: {} }] })).toThrow(
      RangeError,
    );
    expect(() =>
      piecesOf({
        ...input,
        blocks: [
          { geometry: b, count: 1, fabricOf: all(b, "tide"), allowances: { "x/a": [0.25] } },
        ],
      }),
    ).toThrow(/3 allowances expected, got 1/);
  });
});
