import fc from "fast-check";
import { difference } from "polyclip-ts";
import { describe, expect, it } from "vitest";
import {
  type BlockGeometry,
  leastHalf,
  type Patch,
  type RadialSpec,
  radialBlock,
} from "../block/index.ts";
import { stepOf } from "../measure/index.ts";
import { type Piece, piecesOf } from "../piece/index.ts";
import { halfAcross, type Recipe, recipesOf, rulerOf } from "./index.ts";

/** Printed so that a failing run can be repeated. */
const SEED = 20261125;
const RUNS = 2000;

const FABRICS = {
  one: { name: "One", letter: "A", directional: false, reversible: false },
  two: { name: "Two", letter: "B", directional: true, reversible: true },
};

interface P {
  readonly x: number;
  readonly y: number;
}

interface Case {
  readonly geometry: BlockGeometry;
  readonly seam: number;
  readonly step: string;
  readonly point: "sharp" | { blunt: string } | { flat: string };
  readonly allowances?: Record<string, number[]>;
}

const sixteenths = (least: number, most: number) =>
  fc.integer({ min: least * 16, max: most * 16 }).map((k) => k / 16);

const radialCase: fc.Arbitrary<Case> = fc
  .record({
    n: fc.constantFrom(6, 8, 8, 8, 10, 12, 16) as fc.Arbitrary<RadialSpec["n"]>,
    turned: fc.constantFrom("flat", "corner") as fc.Arbitrary<RadialSpec["turned"]>,
    hexagon: fc.boolean(),
    strip: sixteenths(4, 11),
    seam: fc.constantFrom(0.25, 0.2362204724409449, 0.2755905511811024, 0.375),
    step: fc.constantFrom("1/8", "1/16", "1/4"),
    point: fc.constantFrom("sharp" as const, { blunt: "1/4 in" }, { flat: "3/16" }),
    wholes: fc.array(fc.integer({ min: 0, max: 15 }), { maxLength: 8 }),
    float: fc.oneof(fc.constant(0), sixteenths(0, 3)),
  })
  .map(({ n, turned, hexagon, strip, seam, step, point, wholes, float }) => {
    const a = halfAcross(rulerOf({ point }, n, "in"), strip, seam);
    const outline = hexagon && (n === 6 || n === 12) ? "hexagon" : "square";
    const whole = [...new Set(wholes.filter((w) => w < n))];
    const shape = { n, turned, a, outline, whole } as const;
    const half = Math.max(leastHalf(shape), a) + float;
    return {
      geometry: radialBlock({ ...shape, id: "block", half, join: 1e-9 }),
      seam,
      step,
      point,
    };
  });

/** Any convex shape with corners on a circle, some of its edges outside, allowances all different. */
const looseCase: fc.Arbitrary<Case> = fc
  .record({
    corners: fc.uniqueArray(fc.integer({ min: 0, max: 47 }), { minLength: 3, maxLength: 6 }),
    radius: sixteenths(2, 6),
    squash: sixteenths(1, 3),
    outside: fc.array(fc.boolean(), { minLength: 6, maxLength: 6 }),
    unequal: fc.boolean(),
    step: fc.constantFrom("1/8", "1/16"),
  })
  .filter(({ corners }) => {
    const sorted = [...corners].sort((a, b) => a - b);
    return sorted.every((c, i) => {
      const gap = (sorted[(i + 1) % sorted.length] - c + 48) % 48;
      return gap >= 4 && gap <= 24;
    });
  })
  .map(({ corners, radius, squash, outside, unequal, step }) => {
    const polygon = [...corners]
      .sort((a, b) => a - b)
      .map((c) => ({
        x: radius * Math.cos((c * Math.PI) / 24),
        y: (radius / squash) * Math.sin((c * Math.PI) / 24),
      }));
    return onePatch(polygon, outside, step, unequal);
  });

function onePatch(
  polygon: readonly P[],
  outside: readonly boolean[],
  step: string,
  unequal: boolean,
): Case {
  const patch: Patch = {
    id: "loose/a",
    role: "patch",
    hand: "none",
    polygon,
    outside: polygon.map((_, i) => outside[i]),
  };
  const geometry: BlockGeometry = {
    id: "loose",
    outline: polygon,
    width: 12,
    height: 12,
    patches: [patch],
    tree: { kind: "patch", patch },
    choice: { name: "one patch", others: [], why: "only" },
  };
  const allowances = { "loose/a": polygon.map((_, i) => 0.25 + i / 32) };
  return { geometry, seam: 0.25, step, point: "sharp", ...(unequal ? { allowances } : {}) };
}

/** Shapes the trade has names for, at any size, turned by any angle. */
const tradeCase: fc.Arbitrary<Case> = fc
  .record({
    shape: fc.constantFrom("half", "rectangle", "diamond", "trapezoid", "snipped"),
    w: sixteenths(2, 7),
    h: sixteenths(1, 5),
    k: sixteenths(0, 1),
    turn: fc.integer({ min: 0, max: 359 }),
    outside: fc.array(fc.boolean(), { minLength: 6, maxLength: 6 }),
    step: fc.constantFrom("1/8", "1/16"),
  })
  .map(({ shape, w, h, k, turn, outside, step }) => {
    const c = 0.2 + 0.7 * k;
    const shapes: Record<string, [number, number][]> = {
      half: [
        [0, 0],
        [w, 0],
        [0, k > 0.5 ? w : h],
      ],
      rectangle: [
        [0, 0],
        [w, 0],
        [w, h],
        [0, h],
      ],
      diamond: [
        [0, 0],
        [w, 0],
        [w * (1 + Math.SQRT1_2), w * Math.SQRT1_2],
        [w * Math.SQRT1_2, w * Math.SQRT1_2],
      ],
      trapezoid: [
        [0, 0],
        [w, 0],
        [w * 0.9, h],
        [w * c * 0.5, h],
      ],
      snipped: [
        [0, 0],
        [w, 0],
        [w, h * c],
        [w * c, h],
        [0, h],
      ],
    };
    const t = (turn * Math.PI) / 180;
    const polygon = shapes[shape].map(([x, y]) => ({
      x: x * Math.cos(t) - y * Math.sin(t),
      y: x * Math.sin(t) + y * Math.cos(t),
    }));
    return onePatch(polygon, outside, step, false);
  });

const anyCase = fc.oneof(
  { weight: 3, arbitrary: radialCase },
  { weight: 1, arbitrary: looseCase },
  { weight: 1, arbitrary: tradeCase },
);

function cutAll(c: Case): { piece: Piece; recipe: Recipe; patches: Patch[] }[] {
  const fabricOf = Object.fromEntries(
    c.geometry.patches.map((p, i) => [p.id, i % 3 === 2 ? "two" : "one"]),
  );
  const { pieces, pieceOf } = piecesOf({
    unit: "in",
    seam: c.seam,
    blocks: [{ geometry: c.geometry, count: 2, fabricOf, allowances: c.allowances }],
    extras: [],
    fabrics: FABRICS,
  });
  const { recipes } = recipesOf({
    pieces,
    ruler: { point: c.point },
    seam: c.seam,
    step: stepOf(c.step, "in"),
    unit: "in",
    fabrics: FABRICS,
  });
  return recipes.map((recipe) => ({
    recipe,
    piece: pieces.find((p) => p.id === recipe.pieceId)!,
    patches: c.geometry.patches.filter((p) => pieceOf[p.id] === recipe.pieceId),
  }));
}

// The second method: plain numbers, rays against the raw outline's segments, no half-planes.

/** How far a ray from p in direction d runs before it leaves the outline; 0 or less when p is out. */
function rayOut(outline: readonly P[], p: P, d: P): number {
  let out = Number.POSITIVE_INFINITY;
  for (let i = 0; i < outline.length; i++) {
    const a = outline[i];
    const b = outline[(i + 1) % outline.length];
    const ex = b.x - a.x;
    const ey = b.y - a.y;
    const den = d.x * ey - d.y * ex;
    if (Math.abs(den) < 1e-12) continue;
    const s = ((a.x - p.x) * ey - (a.y - p.y) * ex) / den;
    const u = ((a.x - p.x) * d.y - (a.y - p.y) * d.x) / den;
    if (u < -1e-7 || u > 1 + 1e-7) continue;
    if (s > -1e-9) out = Math.min(out, s);
  }
  return out;
}

/** Least allowance minus what is wanted, looked for along every seam of a patch at (dx, dy). */
function leastSpare(r: Recipe, allowances: readonly number[], dx = 0, dy = 0): number {
  let least = Number.POSITIVE_INFINITY;
  const p = r.patch.map((v) => ({ x: v.x + dx, y: v.y + dy }));
  for (let i = 0; i < p.length; i++) {
    const a = p[i];
    const b = p[(i + 1) % p.length];
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const out = { x: (b.y - a.y) / length, y: -(b.x - a.x) / length };
    for (const k of [0, 0.03, 0.25, 0.5, 0.81, 1]) {
      const at = { x: a.x + (b.x - a.x) * k, y: a.y + (b.y - a.y) * k };
      const far = rayOut(r.polygon, at, out);
      least = Math.min(
        least,
        (Number.isFinite(far) ? far : -1) - wanted(p, allowances, at, out, i),
      );
    }
  }
  return least;
}

/**
 * What the needle may want at a place on seam i: its own allowance, or where a neighboring seam's
 * narrower allowance begins first, as much as the exact cut piece has there.
 */
function wanted(p: readonly P[], allowances: readonly number[], at: P, out: P, i: number): number {
  let least = allowances[i];
  for (let k = 0; k < p.length; k++) {
    const a = p[k];
    const b = p[(k + 1) % p.length];
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const n = { x: (b.y - a.y) / length, y: -(b.x - a.x) / length };
    const facing = n.x * out.x + n.y * out.y;
    if (facing < 1e-9) continue;
    const inside = n.x * (a.x - at.x) + n.y * (a.y - at.y);
    least = Math.min(least, (inside + allowances[k]) / facing);
  }
  return least;
}

const sideLengths = (p: readonly P[]): number[] =>
  p.map((v, i) => {
    const w = p[(i + 1) % p.length];
    return Math.hypot(w.x - v.x, w.y - v.y);
  });
const areaOf = (p: readonly P[]): number =>
  p.reduce((s, v, i) => {
    const w = p[(i + 1) % p.length];
    return s + (v.x * w.y - w.x * v.y) / 2;
  }, 0);

describe(`laws of recipes, seed ${SEED}, ${RUNS} blocks`, () => {
  it("no recipe changes a finished size; set edges stand exactly their allowance away; what is proved covers, by rays along every seam, and what is not does not", () => {
    const kinds = new Set<string>();
    fc.assert(
      fc.property(anyCase, (c) => {
        const cuts = cutAll(c);
        for (const { recipe } of cuts) kinds.add(recipe.kind);
        expect(cuts.flatMap(faultsOf)).toEqual([]);
      }),
      { seed: SEED, numRuns: RUNS },
    );
    expect([...kinds].sort()).toEqual(
      "corner-off diamond half-rectangle half-square-sliced kite parallel rectangle square-once square-twice trapezoid two-marks wedge".split(
        " ",
      ),
    );
  });

  it("no other place along the set edge has more to spare than the one the proof takes", () => {
    fc.assert(
      fc.property(anyCase, (c) => {
        for (const { piece, recipe } of cutAll(c)) {
          if (recipe.setEdges.length !== 1) continue;
          const allowances = piece.edges.map((e) => e.allowance);
          const [k] = recipe.setEdges;
          const a = recipe.polygon[k];
          const b = recipe.polygon[(k + 1) % recipe.polygon.length];
          const length = Math.hypot(b.x - a.x, b.y - a.y);
          const best = leastFree(recipe, allowances, 0);
          for (let t = -0.6; t <= 0.6; t += 0.06) {
            const there = leastFree(
              recipe,
              allowances,
              t,
              (b.x - a.x) / length,
              (b.y - a.y) / length,
            );
            if (there > best + 1e-7)
              throw new Error(`${recipe.kind}: ${there} beats ${best} at ${t}`);
          }
        }
      }),
      { seed: SEED + 2, numRuns: 300 },
    );
  });

  it("the cut holds the finished shape, by a library that clips polygons", () => {
    const ring = (p: readonly P[]): [number, number][] => [...p, p[0]].map((v) => [v.x, v.y]);
    fc.assert(
      fc.property(anyCase, (c) => {
        for (const { recipe } of cutAll(c)) {
          if (recipe.verdict === "blocked") continue;
          const left = difference([ring(recipe.patch)], [ring(recipe.polygon)]);
          const size = left.reduce(
            (sum, poly) => sum + Math.abs(areaOf(poly[0].slice(0, -1).map(([x, y]) => ({ x, y })))),
            0,
          );
          expect(size).toBeLessThan(1e-9);
        }
      }),
      { seed: SEED + 3, numRuns: 200 },
    );
  });
});

function faultsOf({ piece, recipe, patches }: ReturnType<typeof cutAll>[number]): string[] {
  const faults: string[] = [];
  const fault = (what: string, by: number) => faults.push(`${recipe.kind}: ${what} by ${by}`);
  for (const patch of patches) {
    const gap = Math.abs(areaOf(recipe.patch) - areaOf(patch.polygon));
    if (gap > 1e-8) fault("the recipe's patch is not the block's", gap);
  }
  sideLengths(recipe.patch).forEach((s, i) => {
    const gap = Math.abs(s - piece.edges[i].finished);
    if (gap > 1e-8) fault(`side ${i} changed`, gap);
  });
  for (const k of recipe.setEdges) {
    const gap = setGap(recipe, piece, k);
    if (gap > 1e-8) fault(`set edge ${k} is off`, gap);
  }
  if (recipe.setEdges.length === recipe.polygon.length) {
    const gap = Math.abs(areaOf(recipe.polygon) - areaOf(piece.cut));
    if (gap > 1e-7) fault("all edges are set, and the cut is not the exact piece", gap);
  }
  const allowances = piece.edges.map((e) => e.allowance);
  const spare = leastSpare(recipe, allowances);
  if (recipe.verdict === "proved" && spare < -1e-6) fault("proved, and does not cover", spare);
  if (recipe.verdict !== "proved" && spare > -1e-8) fault("covers, and is not proved", spare);
  return faults;
}

/** As leastSpare, slid by t along (ux, uy), over the free raw edges only: the set one is passed over. */
function leastFree(r: Recipe, allowances: readonly number[], t: number, ux = 0, uy = 0): number {
  const [k] = r.setEdges;
  const a = r.polygon[k];
  const b = r.polygon[(k + 1) % r.polygon.length];
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const n = { x: (b.y - a.y) / length, y: -(b.x - a.x) / length };
  // The set edge pushed far out, so that only the free edges can be met.
  const far = 50;
  const outline = r.polygon.flatMap((v, i) => {
    if (i !== k && i !== (k + 1) % r.polygon.length) return [v];
    const other = r.polygon[(i === k ? i + r.polygon.length - 1 : i + 1) % r.polygon.length];
    const d = { x: v.x - other.x, y: v.y - other.y };
    const speed = d.x * n.x + d.y * n.y;
    return [{ x: v.x + (d.x / speed) * far, y: v.y + (d.y / speed) * far }];
  });
  return leastSpare({ ...r, polygon: outline }, allowances, ux * t, uy * t);
}

/** How far the raw edge k misses standing exactly its allowance outside a parallel edge. */
function setGap(r: Recipe, piece: Piece, k: number): number {
  const a = r.polygon[k];
  const b = r.polygon[(k + 1) % r.polygon.length];
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const n = { x: (b.y - a.y) / length, y: -(b.x - a.x) / length };
  const gaps = r.patch.map((v, i) => {
    const w = r.patch[(i + 1) % r.patch.length];
    const distances = [v, w].map((q) => n.x * (a.x - q.x) + n.y * (a.y - q.y));
    return Math.max(...distances.map((d) => Math.abs(d - piece.edges[i].allowance)));
  });
  return Math.min(...gaps);
}
