/** Small blocks cut by hand, for tests of this folder: not used by anything else. */
import {
  type BlockGeometry,
  type Patch,
  type RadialSpec,
  radialBlock,
  type SeamTree,
} from "../block/index.ts";
import {
  applyToPolygon,
  boundingBox,
  clip,
  complement,
  distance,
  edges,
  type HalfPlane,
  leftHalfPlane,
  type Point,
  type Polygon,
  point,
} from "../geometry/index.ts";

import type { TopItem, TopRows } from "../quilt/index.ts";

type Plan = { name: string; role?: Patch["role"]; hand?: Patch["hand"] } | [HalfPlane, Plan, Plan];

/** Printed with every seeded law, so that a failure can be run again. */
export const SEED = 20260808;

export const square = (half: number): Polygon => [
  point(-half, -half),
  point(half, -half),
  point(half, half),
  point(-half, half),
];

/** The side to the left of the line from a to b. */
export const left = (a: Point, b: Point): HalfPlane => leftHalfPlane(a, b);

export function cutBlock(id: string, outline: Polygon, plan: Plan): BlockGeometry {
  const patches: Patch[] = [];
  const visit = (p: Plan, unit: Polygon, path: string): SeamTree => {
    if (!Array.isArray(p)) {
      const patch: Patch = {
        id: `${id}/${p.name}`,
        role: p.role ?? "patch",
        hand: p.hand ?? "none",
        polygon: unit,
        outside: unit.map(() => false),
      };
      patches.push(patch);
      return { kind: "patch", patch };
    }
    const [line, a, b] = p;
    const inside = clip(unit, line, 1e-9);
    const beyond = clip(unit, complement(line), 1e-9);
    const chord = edges(inside).find(
      ({ from, to }) =>
        Math.abs(line.n.x * from.x + line.n.y * from.y - line.c) < 1e-8 &&
        Math.abs(line.n.x * to.x + line.n.y * to.y - line.c) < 1e-8,
    );
    if (!chord) throw new RangeError("the line misses the unit");
    return {
      kind: "seam",
      id: `${id}/u${path}`,
      outline: unit,
      seam: { ...chord, length: distance(chord.from, chord.to) },
      parts: [visit(a, inside, `${path}0`), visit(b, beyond, `${path}1`)],
    };
  };
  const tree = visit(plan, outline, "");
  const box = boundingBox(outline);
  return {
    id,
    outline,
    width: box.right - box.left,
    height: box.top - box.bottom,
    patches,
    tree,
    choice: { name: "only", others: [], why: "only-one" },
  };
}

const across = (y: number) => left(point(-9, y), point(9, y));
const upAt = (x: number) => left(point(x, -9), point(x, 9));

export const fourPatch = (half: number): BlockGeometry =>
  cutBlock("four", square(half), [
    across(0),
    [upAt(0), { name: "a" }, { name: "b" }],
    [upAt(0), { name: "b2" }, { name: "a2" }],
  ]);

export const ninePatch = (third: number): BlockGeometry => {
  const row = (r: string): Plan => [
    upAt(third / 2),
    [upAt(-third / 2), { name: `${r}1` }, { name: `${r}2` }],
    { name: `${r}3` },
  ];
  return cutBlock("nine", square((3 * third) / 2), [
    across(third / 2),
    row("top"),
    [across(-third / 2), row("mid"), row("low")],
  ]);
};

/** Every setting the wedge block lives in, at sizes that are all different. */
export function settings(a = 4): Record<string, BlockGeometry> {
  const make = (id: string, spec: Omit<RadialSpec, "id" | "outline" | "a" | "join">) =>
    radialBlock({ id, outline: "square", a, join: 1e-9, ...spec });
  const circumradius = a / Math.cos(Math.PI / 8);
  return {
    plain: make("plain", { n: 8, turned: "flat", half: a, whole: [] }),
    first: make("first", { n: 8, turned: "flat", half: a, whole: [], tree: "corners-first" }),
    kites: make("kites", { n: 8, turned: "flat", half: a, whole: [1, 3, 5, 7] }),
    floating: make("floating", { n: 8, turned: "flat", half: a + 1.1, whole: [] }),
    framed: make("framed", { n: 8, turned: "flat", half: a, whole: [], frame: a + 1.3 }),
    deep: make("deep", { n: 8, turned: "corner", half: circumradius + 0.7, whole: [] }),
    six: make("six", { n: 6, turned: "flat", half: a * 1.3, whole: [] }),
    ten: make("ten", { n: 10, turned: "flat", half: a * 1.21, whole: [] }),
    twelve: make("twelve", { n: 12, turned: "corner", half: a * 1.17, whole: [] }),
    sixteen: make("sixteen", { n: 16, turned: "flat", half: a * 1.07, whole: [] }),
  };
}

/** Pieces by role alone, wedges all of one fabric: what most blocks are cut from. */
export const oneFabric = (
  b: BlockGeometry,
): BlockGeometry & { pieceOf: Record<string, string> } => ({
  ...b,
  pieceOf: Object.fromEntries(
    b.patches.map((p) => [
      p.id,
      p.role.startsWith("wedge") ? "wedge" : `${p.role}/${p.hand}/${p.polygon.length}`,
    ]),
  ),
});

/** A block as it lies in straight rows: turned by quarters anticlockwise after mirroring. */
export interface GridCell {
  readonly blockId: string;
  readonly quarters: number;
  readonly mirrored: boolean;
}

export interface Grid {
  readonly rows: number;
  readonly columns: number;
  readonly cell: (row: number, column: number) => GridCell;
}

/** Blocks edge to edge in straight rows, laid without the planner of quilts. */
export function gridRows(blocks: Readonly<Record<string, BlockGeometry>>, grid: Grid): TopRows {
  const rows = Array.from({ length: grid.rows }, (_, r) => ({
    kind: "blocks" as const,
    items: Array.from({ length: grid.columns }, (_, c): TopItem => {
      const { blockId, quarters, mirrored } = grid.cell(r, c);
      const block = blocks[blockId];
      const [x, y] = [c * block.width, -r * block.height];
      const at = { turn: (quarters * Math.PI) / 2, x, y, mirrored };
      const polygon = applyToPolygon(at, block.outline);
      return { id: `r${r + 1}c${c + 1}`, of: blockId, what: "block", at, polygon };
    }),
  }));
  return { along: point(1, 0), rows };
}
