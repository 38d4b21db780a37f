import {
  depth,
  dot,
  edgeLength,
  edges,
  halfPlanes,
  offset,
  type Polygon,
  subtract,
} from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import type { Measure } from "./types.ts";

const PARALLEL = 1e-9;

/** A width before it has a name: where the ruler lies, and how to read it on any outline of this form. */
interface Way {
  readonly kind: Measure["kind"];
  readonly edge: number;
  readonly to: number;
}

/** Reads one width of a polygon that has the same edges in the same order (raw, or sewn too wide). */
export function widthAt(p: Polygon, way: Pick<Measure, "kind" | "edge" | "to">): Length {
  const e = edges(p);
  if (way.kind === "along") return edgeLength(e[way.edge]);
  const h = halfPlanes(p)[way.edge];
  if (way.kind === "corner") return depth(h, p[way.to]);
  const { from, to } = e[way.to];
  return (depth(h, from) + depth(h, to)) / 2;
}

/** The edge that runs back beside edge i, where a ruler laid square on i meets it. */
function facing(p: Polygon, i: number): number | undefined {
  const all = edges(p);
  const e = all[i];
  const along = subtract(e.to, e.from);
  const length = edgeLength(e);
  const span = (q: { x: number; y: number }) => dot(subtract(q, e.from), along) / length;
  const j = all.findIndex((f, k) => {
    if (k === i) return false;
    const back = subtract(f.to, f.from);
    const sine = Math.abs(along.x * back.y - along.y * back.x) / (length * edgeLength(f));
    if (sine > PARALLEL || dot(along, back) >= 0) return false;
    const [lo, hi] = [span(f.to), span(f.from)];
    return Math.min(hi, length) - Math.max(lo, 0) > PARALLEL * length;
  });
  return j === -1 ? undefined : j;
}

function farthest(p: Polygon, i: number, near: Length): number {
  const h = halfPlanes(p)[i];
  return p.reduce((best, v, k) => (depth(h, v) > depth(h, p[best]) + near ? k : best), 0);
}

function waysOf(p: Polygon, near: Length): Way[] {
  const across: Way[] = [];
  const alone: number[] = [];
  edges(p).forEach((_, i) => {
    const j = facing(p, i);
    if (j === undefined) alone.push(i);
    else if (i < j) across.push({ kind: "across", edge: i, to: j });
  });
  const isRectangle = across.length === 2 && p.length === 4;
  if (isRectangle || alone.length === 0) return across;
  const corners = alone
    .filter((i) => across.length === 0 || !touches(p, i, across))
    .map((i): Way => ({ kind: "corner", edge: i, to: farthest(p, i, near) }));
  const longest = edges(p).reduce(
    (best, e, i) => (edgeLength(e) > edgeLength(edges(p)[best]) + near ? i : best),
    0,
  );
  return [...across, ...corners, { kind: "along", edge: longest, to: (longest + 1) % p.length }];
}

/** Is this edge's slant told already by the widths across? Then its own width adds nothing. */
function touches(p: Polygon, i: number, across: readonly Way[]): boolean {
  const used = new Set(across.flatMap((w) => [w.edge, w.to]));
  const before = (i + p.length - 1) % p.length;
  const after = (i + 1) % p.length;
  return used.has(before) && used.has(after) && across.length >= 2;
}

const NAMES = { across: "edge to edge", corner: "edge to corner", along: "along the long edge" };

/**
 * Every width of a finished outline that a ruler can measure on the raw unit: between parallel
 * edges; where an edge has none, from it to the farthest corner; and along the longest edge.
 * `spare[i]` is what the pieces leave beyond the allowance at edge i until it is trimmed. Equal
 * widths are listed once, with the number of ways; names are never used twice.
 */
export function measuresOf(
  finished: Polygon,
  seam: Length,
  spare: readonly Length[],
  near: Length,
): Measure[] {
  const raw = offset(
    finished,
    finished.map(() => seam),
  );
  const untrimmed = offset(
    finished,
    finished.map((_, i) => seam + spare[i]),
  );
  const found: Measure[] = [];
  for (const way of waysOf(finished, near)) {
    const made: Measure = {
      ...way,
      name: NAMES[way.kind],
      unfinished: widthAt(raw, way),
      finished: widthAt(finished, way),
      untrimmed: widthAt(untrimmed, way),
      ways: 1,
    };
    const same = found.findIndex((f) => f.kind === made.kind && sameWidth(f, made, near));
    if (same === -1) found.push(made);
    else found[same] = { ...found[same], ways: found[same].ways + 1 };
  }
  return numbered(bySides(found, finished));
}

const sameWidth = (a: Measure, b: Measure, near: Length): boolean =>
  Math.abs(a.unfinished - b.unfinished) <= near &&
  Math.abs(a.finished - b.finished) <= near &&
  Math.abs(a.untrimmed - b.untrimmed) <= near;

/** Trade names where all widths are between parallel edges: across, width and length, across flats. */
function bySides(found: readonly Measure[], p: Polygon): Measure[] {
  if (found.some((m) => m.kind !== "across")) return [...found];
  if (p.length !== 4) return found.map((m) => ({ ...m, name: "across flats" }));
  if (found.length === 1) return [{ ...found[0], name: "across" }];
  const short = Math.min(...found.map((m) => m.finished));
  return found.map((m) => ({ ...m, name: m.finished === short ? "width" : "length" }));
}

/** The second and third width of one name get a number, in their order round the unit. */
function numbered(found: readonly Measure[]): Measure[] {
  const used = new Map<string, number>();
  return found.map((m) => {
    const times = (used.get(m.name) ?? 0) + 1;
    used.set(m.name, times);
    return times === 1 ? m : { ...m, name: `${m.name} ${times}` };
  });
}
