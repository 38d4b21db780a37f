import {
  add,
  cross,
  dot,
  edges,
  type HalfPlane,
  halfPlanes,
  norm,
  normalized,
  type Point,
  type Polygon,
  point,
  subtract,
} from "../geometry/index.ts";
import { type Length, tolerances, type Unit } from "../measure/index.ts";
import { type Constraint, highest } from "./linear.ts";
import type { SpareAt, Verdict } from "./types.ts";

/**
 * What a cut really yields, laid over the patch it is for: `raw` and `finished` in one frame, every
 * edge of `setEdges` (indices of raw) standing exactly its allowance outside its seam.
 */
export interface Laid {
  readonly finished: Polygon;
  /** One an edge of `finished`. */
  readonly allowances: readonly Length[];
  readonly raw: Polygon;
  readonly setEdges: readonly number[];
}

export interface Proof {
  /** How far the patch slides from where it was laid to its best place. */
  readonly shift: Point;
  /** Least allowance over the free raw edges, as the needle meets it; the seam when none is free. */
  readonly w: Length;
  /** Least w minus the allowance wanted there. */
  readonly spare: Length;
  /** Least plain distance from patch to free raw edge. */
  readonly reach: Length;
  readonly spareBySide: readonly SpareAt[];
  readonly spareByCorner: readonly SpareAt[];
  readonly offCenter: Length;
  readonly verdict: Verdict;
  readonly thin: readonly { readonly edge: number; readonly over: Length }[];
}

/** One raw edge as the needle meets it from one seam: the end of the seam where it lies nearest. */
interface Meeting {
  readonly raw: HalfPlane;
  readonly allowance: Length;
  /** n . m: how squarely the raw edge faces the seam, more than 0. */
  readonly facing: number;
  readonly at: Point;
}

/** Raw edges that face a seam less squarely than this are never met by its needle. */
const FACING = 1e-9;

/**
 * Proof of cover (docs/geometry/proof-of-cover.md). The patch may slide along one set edge, freely
 * when none is set, not at all when two that are not parallel are; of these places the one with the
 * most spare is taken. Verdict: proved when every stitch has its allowance; thin when it has at least
 * half; blocked when it has less or the patch runs off the fabric.
 */
export function prove(laid: Laid, unit: Unit): Proof {
  if (laid.raw.length < 3) return nothingLeft(laid);
  const slack = tolerances(unit).cover;
  const planes = halfPlanes(laid.raw);
  const free = planes.filter((_, k) => !laid.setEdges.includes(k));
  const directions = slides(laid);
  const meetings = meet(laid, free);
  const shift = bestShift(meetings, directions, reachOf(laid.raw));
  const finished = laid.finished.map((v) => add(v, shift));
  const placed = { ...laid, finished };
  const facingAll = meet(placed, planes);
  const facingFree = meet(placed, free);
  const seamSpares = spares(placed, planes, slack);
  const narrowest = Math.min(...laid.allowances);
  const w = Math.min(...facingFree.map(needle), ...(free.length === 0 ? [narrowest] : []));
  const spare = Math.min(
    ...facingFree.map((m) => needle(m) - m.allowance),
    ...(free.length ? [] : [0]),
  );
  const reach = Math.min(
    ...free.flatMap((h) => finished.map((v) => h.c - dot(h.n, v))),
    ...(free.length === 0 ? [narrowest] : []),
  );
  const half = facingFree.every((m) => needle(m) >= m.allowance / 2 - slack);
  const verdict = spare >= -slack ? "proved" : half && reach >= -slack ? "thin" : "blocked";
  return {
    shift,
    w,
    spare: calm(spare, slack),
    reach,
    spareBySide: bySide(seamSpares),
    spareByCorner: byCorner(seamSpares),
    offCenter: playOf(facingAll, facingFree, directions, slack),
    verdict,
    thin: verdict === "proved" ? [] : thinPlaces(placed, planes, slack),
  };
}

/** Cuts that take the whole blank away, as from one much too small: no allowance anywhere. */
function nothingLeft({ finished, allowances }: Laid): Proof {
  const bare = allowances.map((a, index) => ({ index, spare: -a }));
  return {
    shift: point(0, 0),
    w: 0,
    spare: -Math.min(...allowances),
    reach: 0,
    spareBySide: bare,
    spareByCorner: bare,
    offCenter: 0,
    verdict: "blocked",
    thin: edges(finished).map(({ from, to }, edge) => ({ edge, over: norm(subtract(to, from)) })),
  };
}

const calm = (x: Length, slack: Length): Length => (Math.abs(x) <= slack ? 0 : x);
const needle = (m: Meeting): Length => (m.raw.c - dot(m.raw.n, m.at)) / m.facing;
const reachOf = (p: Polygon): Length => 2 * p.reduce((s, v) => s + norm(subtract(v, p[0])), 0);

function meet(laid: Laid, raws: readonly HalfPlane[]): Meeting[] {
  const seams = halfPlanes(laid.finished);
  return raws.flatMap((raw) =>
    edges(laid.finished).flatMap(({ from, to }, j) => {
      const facing = dot(raw.n, seams[j].n);
      if (facing <= FACING) return [];
      const at = dot(raw.n, from) > dot(raw.n, to) ? from : to;
      return [{ raw, allowance: laid.allowances[j], facing, at }];
    }),
  );
}

/** Directions in which the patch may slide without any set edge losing its place. */
function slides(laid: Laid): Point[] {
  const set = edges(laid.raw)
    .filter((_, k) => laid.setEdges.includes(k))
    .map((e) => normalized(subtract(e.to, e.from)));
  if (set.length === 0) return [point(1, 0), point(0, 1)];
  return set.some((d) => Math.abs(cross(d, set[0])) > 1e-9) ? [] : [set[0]];
}

/** The linear program: most spare over the slides. Nothing to do when nothing slides or is free. */
function bestShift(meetings: readonly Meeting[], along: readonly Point[], far: Length): Point {
  if (along.length === 0 || meetings.length === 0) return point(0, 0);
  const fit: Constraint[] = meetings.map((m) => ({
    a: [...along.map((d) => dot(m.raw.n, d)), m.facing],
    b: m.raw.c - dot(m.raw.n, m.at) - m.allowance * m.facing,
  }));
  const box = along.flatMap((_, i) =>
    [1, -1].map((sign) => ({
      a: [...along.map((__, j) => (i === j ? sign : 0)), 0],
      b: far,
    })),
  );
  const best = highest([...fit, ...box], along.length + 1);
  if (!best) return point(0, 0);
  return along.reduce(
    (sum, d, i) => point(sum.x + d.x * best[i], sum.y + d.y * best[i]),
    point(0, 0),
  );
}

/** Spare of one seam at its two ends: out square to it to the nearest raw edge, less its allowance. */
interface SeamSpare {
  readonly from: Length;
  readonly to: Length;
}

function spares(laid: Laid, planes: readonly HalfPlane[], slack: Length): SeamSpare[] {
  const seams = halfPlanes(laid.finished);
  return edges(laid.finished).map(({ from, to }, j) => {
    const facing = planes
      .map((h) => ({ h, k: dot(h.n, seams[j].n) }))
      .filter(({ k }) => k > FACING);
    const out = (at: Point) => Math.min(...facing.map(({ h, k }) => (h.c - dot(h.n, at)) / k));
    return {
      from: calm(out(from) - laid.allowances[j], slack),
      to: calm(out(to) - laid.allowances[j], slack),
    };
  });
}

const bySide = (list: readonly SeamSpare[]): SpareAt[] =>
  list.map((s, index) => ({ index, spare: Math.min(s.from, s.to) }));

/** At each corner the seam that ends there and the seam that starts there. */
const byCorner = (list: readonly SeamSpare[]): SpareAt[] =>
  list.map((s, index) => {
    const before = list[(index + list.length - 1) % list.length];
    return { index, spare: Math.min(before.to, s.from) };
  });

/**
 * How far the piece may be sewn from its best place before a stitch lacks its allowance: along the
 * set edge where it slides; in any direction, over the free edges, where it does not. 0 when all
 * edges are set, or when the spare is gone already.
 */
function playOf(
  all: readonly Meeting[],
  free: readonly Meeting[],
  along: readonly Point[],
  slack: Length,
): Length {
  const room = (m: Meeting) => m.raw.c - dot(m.raw.n, m.at) - m.allowance * m.facing;
  const list = along.length === 1 ? all : free;
  const plays = list.flatMap((m) => {
    const speed = along.length === 1 ? Math.abs(dot(m.raw.n, along[0])) : 1;
    return speed > FACING ? [room(m) / speed] : [];
  });
  if (plays.length === 0) return 0;
  return Math.max(0, calm(Math.min(...plays), slack));
}

function thinPlaces(laid: Laid, planes: readonly HalfPlane[], slack: Length): Proof["thin"] {
  const seams = halfPlanes(laid.finished);
  return edges(laid.finished).flatMap(({ from, to }, edge) => {
    const length = norm(subtract(to, from));
    const wanted = laid.allowances[edge] - slack;
    let start = 0;
    let end = length;
    for (const h of planes) {
      const facing = dot(h.n, seams[edge].n);
      if (facing <= FACING) continue;
      const a = (h.c - dot(h.n, from)) / facing - wanted;
      const b = (h.c - dot(h.n, to)) / facing - wanted;
      if (a < 0 && b < 0) start = length;
      else if (a < 0) start = Math.max(start, (length * -a) / (b - a));
      else if (b < 0) end = Math.min(end, (length * a) / (a - b));
    }
    const over = Math.min(length, start + (length - end));
    return over > slack ? [{ edge, over }] : [];
  });
}
