import fc from "fast-check";
import { setPrecision, union } from "polyclip-ts";
import { expect, test } from "vitest";
import { type BlockGeometry, halveBlock, layOutBlock } from "../block/index.ts";
import { type Brief, smallBrief } from "../brief/sample.ts";
import { applyToPolygon, area, edges, type Polygon } from "../geometry/index.ts";
import { type LaidOutQuilt, layOutQuilt, placedPatches, placements } from "./index.ts";

const SEED = 20261125;
const RUNS = 100;

const plan = fc.array(
  fc.array(
    fc.oneof(
      fc.constantFrom("star", "wheel"),
      fc.record({
        block: fc.constantFrom("star", "wheel"),
        quarters: fc.integer({ min: 0, max: 3 }),
        mirrored: fc.boolean(),
      }),
    ),
    { minLength: 1, maxLength: 3 },
  ),
  { minLength: 1, maxLength: 3 },
);

const borders = fc.array(
  fc.record({
    width: fc.constantFrom("1", "2 1/2", "3"),
    fabric: fc.constant("sand"),
    join: fc.constantFrom("butted", "mitred"),
    cornerstone: fc.constantFrom(undefined, "red"),
    cut: fc.constant("across"),
  }),
  { maxLength: 3 },
);

const quilts = fc.record({
  arrangement: fc.constantFrom("rows", "on-point", "hexagon-rows"),
  rows: fc.integer({ min: 1, max: 9 }),
  columns: fc.integer({ min: 1, max: 9 }),
  plan,
  borders,
  edges: fc.constantFrom("triangles", "halves"),
  offset: fc.boolean(),
  sashing: fc.constantFrom(
    undefined,
    { width: "1 1/2", fabric: "red" },
    { width: "3/4", fabric: "red", cornerstone: "sand" },
  ),
});

type AnyQuilt = typeof quilts extends fc.Arbitrary<infer Q> ? Q : never;

/** Hexagons turn by halves only. */
const halfTurns = (p: AnyQuilt["plan"]): AnyQuilt["plan"] =>
  p.map((row) =>
    row.map((cell) =>
      typeof cell === "string" ? cell : { ...cell, quarters: cell.quarters - (cell.quarters % 2) },
    ),
  );

/** Square blocks for squares, hexagons of 12 wedges for hexagon rows; sashing wherever it may be. */
function briefOf(q: AnyQuilt): Brief {
  const hexagons = q.arrangement === "hexagon-rows";
  const sashed = q.arrangement === "on-point" || (q.arrangement === "rows" && !q.offset);
  const common = { kind: "wedges", strip: "4 1/2", fabric: { wedge: "red", background: "sand" } };
  const block = (id: string, setting: string) =>
    hexagons
      ? { ...common, id, n: 12, outline: "hexagon", setting: "sectors", turned: "flat", side: "9" }
      : { ...common, id, n: 8, setting };
  return smallBrief({
    blocks: [block("star", "kites"), block("wheel", "plain")],
    quilt: {
      ...q,
      plan: hexagons ? halfTurns(q.plan) : q.plan,
      sashing: sashed ? q.sashing : undefined,
    },
  });
}

function laidOut(brief: Brief): { blocks: BlockGeometry[]; quilt: LaidOutQuilt } {
  const blocks = brief.blocks.flatMap(
    (b) => layOutBlock(b, "in", 0.25, b.kind === "wedges" && b.n === 12 ? 3.3 : 4).geometry ?? [],
  );
  return { blocks, quilt: layOutQuilt(brief, blocks) };
}

/** Every block of the quilt as its outline in the quilt's frame. */
function outlines(brief: Brief, blocks: readonly BlockGeometry[], quilt: LaidOutQuilt): Polygon[] {
  const geometry = quilt.geometry!;
  const all = new Map(blocks.map((b) => [b.id, b]));
  for (const half of geometry.halves) {
    let part = all.get(half.of)!;
    for (const keep of half.keep) part = halveBlock(part, keep, half.id, 1e-9).geometry;
    all.set(half.id, part);
  }
  return [...placements(brief, geometry)].map((p) =>
    applyToPolygon(p.at, all.get(p.blockId)!.outline),
  );
}

const sum = (xs: readonly number[]): number => xs.reduce((a, b) => a + b, 0);

test("blocks, setting, sashing and borders fill the finished top exactly, and none leaves it", () => {
  fc.assert(
    fc.property(quilts, (q) => {
      const brief = briefOf(q);
      const { blocks, quilt } = laidOut(brief);
      expect(
        quilt.findings.filter(
          (f) => f.code !== "border-wider-than-quilt" && f.severity === "blocks",
        ),
      ).toEqual([]);
      const g = quilt.geometry!;
      const polygons = [
        ...outlines(brief, blocks, quilt),
        ...[...placedPatches(brief, g)].map((p) => p.polygon),
      ];
      for (const p of polygons) {
        expect(area(p)).toBeGreaterThan(0);
        for (const v of p) {
          expect(Math.abs(v.x)).toBeLessThanOrEqual(g.width / 2 + 1e-9);
          expect(Math.abs(v.y)).toBeLessThanOrEqual(g.height / 2 + 1e-9);
        }
      }
      expect(sum(polygons.map(area)) / (g.width * g.height)).toBeCloseTo(1, 11);
    }),
    { seed: SEED, numRuns: RUNS },
  );
});

test("counts of blocks and of patches outside them equal a walk over all that is placed", () => {
  fc.assert(
    fc.property(quilts, (q) => {
      const brief = briefOf(q);
      const { quilt } = laidOut(brief);
      const g = quilt.geometry!;
      const walked: Record<string, number> = {};
      for (const p of placements(brief, g)) walked[p.blockId] = (walked[p.blockId] ?? 0) + 1;
      expect(g.counts).toEqual(walked);
      const placed = [...placedPatches(brief, g)];
      const byRole = (role: string) => placed.filter((p) => p.role === role).length;
      for (const role of ["sash", "cornerstone", "border", "setting-triangle", "corner-triangle"])
        expect(sum(g.extras.filter((e) => e.role === role).map((e) => e.count)), role).toBe(
          byRole(role),
        );
    }),
    { seed: SEED + 1, numRuns: RUNS },
  );
});

test("counts carried on by whole repeats equal a walk on quilts far larger than the repeat", () => {
  fc.assert(
    fc.property(
      quilts,
      fc.integer({ min: 20, max: 41 }),
      fc.integer({ min: 20, max: 33 }),
      (q, rows, columns) => {
        const brief = briefOf({ ...q, rows, columns });
        const g = laidOut(brief).quilt.geometry!;
        const walked: Record<string, number> = {};
        for (const p of placements(brief, g)) walked[p.blockId] = (walked[p.blockId] ?? 0) + 1;
        expect(g.counts).toEqual(walked);
      },
    ),
    { seed: SEED + 2, numRuns: 60 },
  );
});

/** Stretches of one line, touching ones run together. */
function runTogether(stretches: readonly (readonly [number, number])[]): [number, number][] {
  const out: [number, number][] = [];
  for (const [from, to] of [...stretches].sort((a, b) => a[0] - b[0])) {
    const last = out[out.length - 1];
    if (last && from <= last[1] + NEAR) last[1] = Math.max(last[1], to);
    else out.push([from, to]);
  }
  return out;
}
const NEAR = 1e-7;

/** Every edge on its line, by the side of the line its polygon lies on. */
function byLine(polygons: readonly Polygon[]) {
  const lines = new Map<string, { over: [number, number][]; under: [number, number][] }>();
  for (const { from, to } of polygons.flatMap((p) => edges(p))) {
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
    // One direction for each line: to the right, or straight up.
    const forward = ux > NEAR || (Math.abs(ux) <= NEAR && uy > 0);
    const [dx, dy] = forward ? [ux, uy] : [-ux, -uy];
    const at = (v: { x: number; y: number }) => v.x * dx + v.y * dy;
    const off = from.y * dx - from.x * dy;
    const key = [Math.atan2(dy, dx), off].map((x) => Math.round(x / 1e-5) || 0).join(" ");
    const line = lines.get(key) ?? { over: [], under: [] };
    lines.set(key, line);
    const stretch: [number, number] = [at(from), at(to)].sort((a, b) => a - b) as [number, number];
    (forward ? line.over : line.under).push(stretch);
  }
  return [...lines.values()].map(({ over, under }) => ({
    over: runTogether(over),
    under: runTogether(under),
  }));
}

test("every edge joins edges of the same length, stretch by stretch; only the four sides of the top join none", () => {
  fc.assert(
    fc.property(quilts, (q) => {
      const brief = briefOf({ ...q, rows: Math.min(q.rows, 4), columns: Math.min(q.columns, 4) });
      const { blocks, quilt } = laidOut(brief);
      const g = quilt.geometry!;
      const lines = byLine([
        ...outlines(brief, blocks, quilt),
        ...[...placedPatches(brief, g)].map((p) => p.polygon),
      ]);
      const open = lines.filter((l) => l.over.length === 0 || l.under.length === 0);
      const sides = open.flatMap((l) => [...l.over, ...l.under]).map(([from, to]) => to - from);
      const sorted = (xs: readonly number[]) => [...xs].sort((a, b) => a - b);
      expect(sides).toHaveLength(4);
      sorted([g.width, g.width, g.height, g.height]).forEach((side, i) => {
        expect(sorted(sides)[i]).toBeCloseTo(side, 7);
      });
      for (const { over, under } of lines.filter((l) => !open.includes(l))) {
        expect(over).toHaveLength(under.length);
        over.forEach(([from, to], i) => {
          expect(from).toBeCloseTo(under[i][0], 7);
          expect(to).toBeCloseTo(under[i][1], 7);
        });
      }
    }),
    { seed: SEED + 3, numRuns: 60 },
  );
});

test("sashed on point: no two patches overlap and all of them together are the top (clipped by another program)", () => {
  fc.assert(
    fc.property(
      quilts,
      fc.integer({ min: 1, max: 3 }),
      fc.integer({ min: 1, max: 3 }),
      fc.constantFrom(
        { width: "1 1/2", fabric: "red" },
        { width: "3", fabric: "red", cornerstone: "sand" },
      ),
      (q, rows, columns, sashing) => {
        const on = { ...q, arrangement: "on-point", rows, columns, sashing } as AnyQuilt;
        const brief = briefOf(on);
        const { blocks, quilt } = laidOut(brief);
        const g = quilt.geometry!;
        const all = [
          ...outlines(brief, blocks, quilt),
          ...[...placedPatches(brief, g)].map((p) => p.polygon),
        ].map(ring);
        const covered = flatArea(union(all[0], ...all.slice(1)));
        expect(covered / (g.width * g.height)).toBeCloseTo(1, 9);
        // As much as their areas together: none lies on another.
        expect(covered / sum(all.map((p) => flatArea([p])))).toBeCloseTo(1, 9);
      },
    ),
    { seed: SEED + 4, numRuns: 8 },
  );
});

/** Corners this near are one to the clipping program; without it noise breaks its rings. */
setPrecision(1e-9);
const ring = (p: Polygon): [number, number][][] => [
  [...p, p[0]].map(({ x, y }): [number, number] => [x, y]),
];

/** Shoelace over outer rings and holes. */
function flatArea(geom: ReturnType<typeof union>): number {
  return Math.abs(
    sum(
      geom.flat().map((ring) =>
        sum(
          ring.map(([x, y], i) => {
            const [nx, ny] = ring[(i + 1) % ring.length];
            return (x * ny - nx * y) / 2;
          }),
        ),
      ),
    ),
  );
}
