import { describe, expect, test } from "vitest";
import { type BlockGeometry, halveBlock, layOutBlock } from "../block/index.ts";
import { type Brief, smallBrief } from "../brief/sample.ts";
import { layOutQuilt, placedPatches, placements } from "../quilt/index.ts";
import { pressFor } from "./pressFor.ts";
import type { Pressing } from "./pressing.ts";
import { rowPressingOf } from "./rowPressing.ts";
import { keyOf } from "./units.ts";

/*
 * A second method for quilts whose rows are not straight: every seam is a segment in the plane, every
 * join of rows a line, and a ridge is a point set beside a seam's end. Pressings are tried one by one.
 */
type XY = readonly [number, number];
interface Segment {
  readonly id: string;
  readonly ends: readonly [XY, XY];
  /** A point of its first part. */
  readonly first: XY;
}

const NEAR = 1e-6;
const apart = (a: XY, b: XY): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

function quiltOf(block: object, quilt: object) {
  const brief = smallBrief({
    blocks: [block],
    quilt: { plan: [["b"]], setting: "sand", ...quilt },
  });
  const hexagon = brief.quilt.arrangement === "hexagon-rows";
  const [whole] = brief.blocks.flatMap(
    (b) => layOutBlock(b, "in", 0.25, hexagon ? 3.3 : 4).geometry ?? [],
  );
  const g = layOutQuilt(brief, [whole]).geometry!;
  const halves = g.halves.map((h) =>
    h.keep.reduce((b, keep) => halveBlock(b, keep, h.id, 1e-9).geometry, whole),
  );
  const blocks = [whole, ...halves].filter((b) => (g.counts[b.id] ?? 0) > 0);
  return { brief, g, whole, blocks };
}

type Tree = BlockGeometry["tree"];
const middle = (t: Tree): XY => {
  const p = t.kind === "patch" ? t.patch.polygon : t.outline;
  return [p.reduce((n, v) => n + v.x, 0) / p.length, p.reduce((n, v) => n + v.y, 0) / p.length];
};

/** Seams of a block; one that others meet half way, at the center, as two. */
function segmentsIn(t: Tree): Segment[] {
  if (t.kind === "patch") return [];
  const { from, to } = t.seam;
  const [a, b]: XY[] = [
    [from.x, from.y],
    [to.x, to.y],
  ];
  const first = middle(t.parts[0]);
  const below = t.parts.map(segmentsIn);
  const atCenter = below.every((side) =>
    side.some((s) => s.ends.some((e) => Math.hypot(...e) < NEAR)),
  );
  const through = atCenter && Math.hypot(...a) > NEAR && Math.hypot(...b) > NEAR;
  const own: Segment[] = through
    ? [
        { id: `${t.id}@from`, ends: [[0, 0], a], first },
        { id: `${t.id}@to`, ends: [[0, 0], b], first },
      ]
    : [{ id: t.id, ends: [a, b], first }];
  return [...below.flat(), ...own];
}

/** All of it, the rows turned level: segments with the row they lie in, rows from the top. */
function laid({ brief, g, blocks }: ReturnType<typeof quiltOf>) {
  const turn = g.arrangement === "on-point" ? -Math.PI / 4 : 0;
  const level = ([x, y]: XY): XY => [
    x * Math.cos(turn) - y * Math.sin(turn),
    x * Math.sin(turn) + y * Math.cos(turn),
  ];
  const cells: { shape: XY[]; segments: Segment[] }[] = [];
  for (const { blockId, at } of placements(brief, g)) {
    const block = blocks.find((b) => b.id === blockId)!;
    const put = ([x, y]: XY): XY => {
      const mx = at.mirrored ? -x : x;
      return level([
        mx * Math.cos(at.turn) - y * Math.sin(at.turn) + at.x,
        mx * Math.sin(at.turn) + y * Math.cos(at.turn) + at.y,
      ]);
    };
    cells.push({
      shape: block.outline.map((v) => put([v.x, v.y])),
      segments: segmentsIn(block.tree).map((s) => ({
        ...s,
        ends: [put(s.ends[0]), put(s.ends[1])],
        first: put(s.first),
      })),
    });
  }
  for (const p of placedPatches({ ...brief, quilt: { ...brief.quilt, borders: [] } }, g))
    cells.push({ shape: p.polygon.map((v) => level([v.x, v.y])), segments: [] });
  const top = (c: { shape: XY[] }) => Math.max(...c.shape.map((v) => v[1]));
  const left = (c: { shape: XY[] }) => c.shape.reduce((n, v) => n + v[0], 0) / c.shape.length;
  const bottom = (c: { shape: XY[] }) => Math.min(...c.shape.map((v) => v[1]));
  const mid = (c: { shape: XY[] }) => Math.round(((top(c) + bottom(c)) / 2) * 1e4) / 1e4 || 0;
  const levels = [...new Set(cells.map(mid))].sort((a, b) => b - a);
  let nth = 0;
  return levels.map((y) => {
    const row = cells.filter((c) => mid(c) === y).sort((a, b) => left(a) - left(b));
    const id = row.some((c) => c.segments.length > 0) && nth++ % 2 === 0 ? "odd" : "even";
    const between = row.slice(1).map((c, i): Segment => {
      // What two neighbors have in common is the stretch between the corners they share.
      const shared = c.shape.filter((v) => row[i].shape.some((w) => apart(v, w) < NEAR));
      return {
        id: `rows/${id}`,
        ends: [shared[0], shared[1]],
        first: [left(row[i]), y],
      };
    });
    return {
      cells: row,
      between,
      segments: [...row.flatMap((c) => c.segments), ...between],
      line: Math.max(...row.map(top)),
    };
  });
}

interface Meeting {
  readonly u: string;
  readonly v: string;
  /** Do they nest when both are pressed toward their first part? */
  readonly nestsAlike: boolean;
}

/** Where ends of segments of one side meet ends of the other on the line from p to q. */
function meetingsOn(p: XY, q: XY, one: readonly Segment[], other: readonly Segment[]): Meeting[] {
  const length = apart(p, q);
  const u: XY = [(q[0] - p[0]) / length, (q[1] - p[1]) / length];
  const ahead = (v: XY): number => (v[0] - p[0]) * u[0] + (v[1] - p[1]) * u[1];
  const off = (v: XY): number => Math.abs((v[0] - p[0]) * u[1] - (v[1] - p[1]) * u[0]);
  const on = (v: XY): boolean => off(v) < NEAR && ahead(v) > -NEAR && ahead(v) < length + NEAR;
  const ends = (all: readonly Segment[]) =>
    all.flatMap((s) =>
      s.ends.flatMap((e, i) => {
        const far = s.ends[1 - i];
        if (!on(e) || on(far)) return [];
        // Beside the end, on the side of its first part: farther along the line, or less far?
        const n: XY = [-(far[1] - e[1]), far[0] - e[0]];
        const side = Math.sign((s.first[0] - e[0]) * n[0] + (s.first[1] - e[1]) * n[1]);
        const forward = side * (n[0] * u[0] + n[1] * u[1]) > 0;
        const lean = ((far[0] - e[0]) * u[0] + (far[1] - e[1]) * u[1]) / apart(e, far);
        return [{ id: s.id, at: ahead(e), forward, lean }];
      }),
    );
  const others = ends(other);
  const places = [...new Set(ends(one).map((e) => Math.round(e.at * 1e4)))];
  return places.flatMap((at) => {
    const here = (e: { at: number }) => Math.abs(e.at * 1e4 - at) < 2;
    const a = ends(one)
      .filter(here)
      .sort((x, y) => x.lean - y.lean);
    const b = others.filter(here).sort((x, y) => x.lean - y.lean);
    const few = a.length <= b.length ? a : b;
    const many = a.length <= b.length ? b : a;
    return few.map((x, i) => {
      const y =
        few.length === many.length
          ? many[i]
          : many.reduce((best, m) =>
              Math.abs(m.lean - x.lean) < Math.abs(best.lean - x.lean) - 1e-9 ? m : best,
            );
      return { u: x.id, v: y.id, nestsAlike: x.forward !== y.forward };
    });
  });
}

function everyMeeting(q: ReturnType<typeof quiltOf>) {
  const rows = laid(q);
  const joins: Meeting[] = [];
  const inside: Meeting[] = [];
  rows.forEach((row, r) => {
    row.between.forEach((s, i) => {
      inside.push(...meetingsOn(...s.ends, row.cells[i].segments, row.cells[i + 1].segments));
    });
    const above = rows[r - 1];
    if (!above) return;
    const xs = row.cells.flatMap((c) => c.shape).filter((v) => Math.abs(v[1] - row.line) < NEAR);
    const reach = xs.map((v) => v[0]);
    const [p, w]: XY[] = [
      [Math.min(...reach), row.line],
      [Math.max(...reach), row.line],
    ];
    joins.push(...meetingsOn(p, w, above.segments, row.segments));
  });
  return { joins, inside };
}

/** The most that nest, by trying every way of pressing every seam. */
function most(all: readonly Meeting[]): number {
  const ids = [...new Set(all.flatMap((m) => [m.u, m.v]))];
  if (ids.length > 20) throw new RangeError(`20 seams at most expected, got ${ids.length}`);
  const at = all.map((m) => ({ u: ids.indexOf(m.u), v: ids.indexOf(m.v), same: m.nestsAlike }));
  let best = 0;
  for (let bits = 0; bits < 2 ** ids.length; bits++) {
    let nests = 0;
    for (const m of at) if ((((bits >> m.u) ^ (bits >> m.v)) & 1) === (m.same ? 0 : 1)) nests++;
    best = Math.max(best, nests);
  }
  return best;
}

/**
 * Rounds of meetings that share none and cannot all nest, however their seams are pressed: going round,
 * the seams would have to change sides an odd number of times. So many at least must miss. Shortest first.
 */
function oddRounds(left: Meeting[]): number {
  const ids = [...new Set(left.flatMap((m) => [m.u, m.v]))];
  for (let found = 0; ; found++) {
    const rounds = ids.flatMap((id) => oddRoundAt(id, left) ?? []);
    if (rounds.length === 0) return found;
    const shortest = rounds.reduce((a, b) => (b.length < a.length ? b : a));
    for (const m of shortest) left.splice(left.indexOf(m), 1);
  }
}

/** A shortest way from a seam back to itself over an odd number of changes. */
function oddRoundAt(start: string, meetings: readonly Meeting[]): Meeting[][] | undefined {
  const came = new Map<string, { from: string; by: Meeting } | null>([[`${start} 0`, null]]);
  for (const at of came.keys()) {
    const [id, side] = at.split(" ");
    for (const by of meetings) {
      if (by.u !== id && by.v !== id) continue;
      const next = `${by.u === id ? by.v : by.u} ${by.nestsAlike ? side : 1 - Number(side)}`;
      if (!came.has(next)) came.set(next, { from: at, by });
    }
  }
  const round: Meeting[] = [];
  for (let at = came.get(`${start} 1`); at; at = came.get(at.from)) round.push(at.by);
  return round.length > 0 ? [round] : undefined;
}

const pressed = ({ brief, blocks, whole }: ReturnType<typeof quiltOf>): Pressing => {
  const all = [whole, ...blocks.filter((b) => b !== whole)];
  const keys = new Map(all.flatMap((b) => b.patches.map((p) => [p.id, keyOf(b)(p.id)])));
  return pressFor(all, brief, (id) => keys.get(id) ?? id, NEAR);
};

const wedges = (more: object) => ({
  kind: "wedges",
  id: "b",
  strip: "4 1/2",
  fabric: { wedge: "red", background: "sand" },
  ...more,
});
const hexagon = (n: number, turned: string) =>
  wedges({ n, outline: "hexagon", setting: "sectors", turned, side: "9" });

const QUILTS: readonly (readonly [string, object, Partial<Brief["quilt"]> | object])[] = [
  [
    "kites on point, 2 by 2",
    wedges({ setting: "kites" }),
    { arrangement: "on-point", rows: 2, columns: 2 },
  ],
  [
    "plain corners on point, 3 by 2",
    wedges({ setting: "plain" }),
    { arrangement: "on-point", rows: 3, columns: 2 },
  ],
  [
    "deep on point, 2 by 3",
    wedges({ setting: "deep", side: "10" }),
    { arrangement: "on-point", rows: 2, columns: 3 },
  ],
  ["hexagons of 6, flat", hexagon(6, "flat"), { arrangement: "hexagon-rows", rows: 2, columns: 3 }],
  [
    "hexagons of 6, corner",
    hexagon(6, "corner"),
    { arrangement: "hexagon-rows", rows: 2, columns: 2 },
  ],
  ["kites in shifted rows", wedges({ setting: "kites" }), { offset: true, rows: 1, columns: 3 }],
];

describe.each(QUILTS)("%s", (_, block, quilt) => {
  const q = quiltOf(block, quilt);
  const p = pressed(q);
  const { joins, inside } = everyMeeting(q);

  test("as many crossings as segments of the plane that end at one point", () => {
    const found = (id: (x: string) => boolean) =>
      p.crossings.filter((x) => id(x.joinedBy)).reduce((n, x) => n + x.count, 0);
    expect(found((id) => id === "rows/join")).toBe(joins.length);
    expect(found((id) => /^rows\/(odd|even)$/.test(id))).toBe(inside.length);
    expect(joins.length + inside.length).toBeGreaterThan(0);
  });

  test("between blocks and rows as many nest as any pressing allows", () => {
    const r = rowPressingOf(p);
    expect(r.crossings).toBe(joins.length + inside.length);
    expect(r.nesting).toBe(most([...joins, ...inside]));
  });
});

test("deep blocks in shifted rows cannot all nest: what misses is told; inside and between blocks together it is the fewest", () => {
  const q = quiltOf(wedges({ setting: "deep", side: "10" }), { offset: true, rows: 4, columns: 3 });
  const p = pressed(q);
  const r = rowPressingOf(p);
  expect(r.crossings - r.nesting).toBeGreaterThan(0);
  expect(r.misses.length).toBeGreaterThan(0);
  for (const m of r.misses) expect(m.joinedBy).toMatch(/^rows\//);
  const all = p.crossings.flatMap(({ seams: [u, v], differ, count }) =>
    Array.from({ length: count }, (): Meeting => ({ u, v, nestsAlike: !differ })),
  );
  expect(p.total - p.nesting).toBe(oddRounds([...all]));
});

test("sashed quilts: pressed to the sashes, every meeting at a cornerstone nests", () => {
  const sashing = { width: "1", fabric: "red", cornerstone: "sand" };
  for (const arrangement of ["rows", "on-point"]) {
    const q = quiltOf(wedges({ setting: "kites" }), { arrangement, rows: 3, columns: 3, sashing });
    const r = rowPressingOf(pressed(q));
    expect(r.sashes).toEqual({ blocks: "sash", cornerstones: "sash" });
    // At each corner of a cornerstone one crossing; of half a one only its inner corner is left.
    expect(r.crossings).toBe(arrangement === "rows" ? 4 * 4 : 4 * 12 + 12);
    expect(r.nesting).toBe(r.crossings);
  }
});
