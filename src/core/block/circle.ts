import {
  complement,
  depth,
  dot,
  edges,
  type HalfPlane,
  leftOf,
  normalized,
  type Point,
  type Polygon,
  subtract,
} from "../geometry/index.ts";
import { BIAS_DEGREES, type Length, toDegrees } from "../measure/index.ts";
import type { Plan } from "./plan.ts";
import { beforeSeam, type Circle, span } from "./sectors.ts";

/** How the sectors of one half are joined: 1 alone, 2 a pair, a bracket for a seam. */
export type Nest = 1 | 2 | readonly [Nest, Nest];

/** Pairs, then halves. An odd half keeps one sector alone, in each place it can stand. */
const NESTS: Readonly<Record<number, readonly Nest[]>> = {
  6: [
    [2, 1],
    [1, 2],
  ],
  8: [[2, 2]],
  10: [
    [[2, 2], 1],
    [[2, 1], 2],
    [1, [2, 2]],
  ],
  12: [[[2, 2], 2]],
  16: [
    [
      [2, 2],
      [2, 2],
    ],
  ],
};

/** One order for the circle: its last seam starts sector `start`; both halves are joined alike. */
export interface CircleOrder {
  readonly start: number;
  readonly nest: Nest;
  /** Sewn units with four square corners, the block not counted. */
  readonly rectangles: number;
  /** Edges off the thread by more than 30 degrees that units leave open until their next seam. */
  readonly biasEdges: number;
  readonly lastSeam: Length;
}

const size = (nest: Nest): number =>
  typeof nest === "number" ? nest : size(nest[0]) + size(nest[1]);

/** `2-1`, `2-2-1`: names an order where the halves are odd. */
const nestName = (nest: Nest): string =>
  typeof nest === "number" ? String(nest) : `${nestName(nest[0])}-${nestName(nest[1])}`;

export const orderName = (family: string, n: number, o: CircleOrder): string =>
  `${family}-from-${o.start}${NESTS[n].length > 1 ? `-${nestName(o.nest)}` : ""}`;

/** Where a half's units lie: [first sector, how many] for every unit of two sectors or more. */
function unitSpans(nest: Nest, start: number): [number, number][] {
  if (nest === 1) return [];
  if (nest === 2) return [[start, 2]];
  const [a, b] = nest;
  const all: [number, number] = [start, size(nest)];
  return [...unitSpans(a, start), ...unitSpans(b, start + size(a)), all];
}

/** A patch of a sector with the direction of its thread. */
export interface Threaded {
  readonly polygon: Polygon;
  readonly thread: Point;
}

/**
 * Every order of the circle with what decides between them. `within` is what the circle fills (the
 * block, or the octagon where corners come last); `patches(i)` are those of sector i.
 */
export function circleOrders(
  c: Circle,
  within: Polygon,
  patches: (sector: number) => readonly Threaded[],
  join: Length,
): CircleOrder[] {
  const mod = (i: number) => i % c.n;
  const biasAt = Array.from({ length: c.n }, (_, i) => ({
    first: biasOn(patches(i), beforeSeam(c, i), join),
    last: biasOn(patches(i), beforeSeam(c, i + 1), join),
  }));
  const rectangles = new Map<number, boolean>();
  const isRectangle = (start: number, count: number): boolean => {
    const key = mod(start) * c.n + count;
    let known = rectangles.get(key);
    if (known === undefined) {
      known = hasFourSquareCorners(span(within, c, start, count, join), join);
      rectangles.set(key, known);
    }
    return known;
  };
  const orders: CircleOrder[] = [];
  for (let start = 0; start < c.n / 2; start++) {
    const lastSeam = acrossCenter(within, c.seam(start));
    for (const nest of NESTS[c.n]) {
      const spans = [...unitSpans(nest, start), ...unitSpans(nest, start + c.n / 2)];
      orders.push({
        start,
        nest,
        lastSeam,
        rectangles: spans.filter(([s, count]) => isRectangle(s, count)).length,
        biasEdges: spans.reduce(
          (sum, [s, count]) => sum + biasAt[mod(s)].first + biasAt[mod(s + count - 1)].last,
          0,
        ),
      });
    }
  }
  return orders;
}

export type Reason =
  | "only-one"
  | "alike"
  | "more-rectangles"
  | "fewer-bias-edges"
  | "shorter-last-seam";

/** Negative when a is to be preferred, with the reason that decided. */
function compare(a: CircleOrder, b: CircleOrder, join: Length): { by: number; why: Reason } {
  if (a.rectangles !== b.rectangles)
    return { by: b.rectangles - a.rectangles, why: "more-rectangles" };
  if (a.biasEdges !== b.biasEdges)
    return { by: a.biasEdges - b.biasEdges, why: "fewer-bias-edges" };
  if (Math.abs(a.lastSeam - b.lastSeam) > join)
    return { by: a.lastSeam - b.lastSeam, why: "shorter-last-seam" };
  return { by: 0, why: "alike" };
}

/**
 * The order to take: units that are rectangles, then fewest bias edges left open, then the shortest
 * last seam, then the first. `others` has one of each kind that differs from it; `why` is what sets
 * it before the best of them.
 */
export function preferred(orders: readonly CircleOrder[], join: Length) {
  const sorted = [...orders].sort((a, b) => compare(a, b, join).by);
  const kinds = sorted.filter((o, i) => i === 0 || compare(sorted[i - 1], o, join).by !== 0);
  const why: Reason =
    kinds.length > 1
      ? compare(kinds[0], kinds[1], join).why
      : orders.length > 1
        ? "alike"
        : "only-one";
  return { best: kinds[0], others: kinds.slice(1), why };
}

/** The circle as a plan: the long seam, each half by its nest, each sector by `sector`. */
export function circlePlan<Leaf>(
  c: Circle,
  order: Pick<CircleOrder, "start" | "nest">,
  sector: (i: number) => Plan<Leaf>,
): Plan<Leaf> {
  const part = (nest: Nest, start: number): Plan<Leaf> => {
    if (nest === 1) return sector(start % c.n);
    const [a, b]: readonly [Nest, Nest] = nest === 2 ? [1, 1] : nest;
    const middleSeam = start + size(a);
    return {
      line: beforeSeam(c, middleSeam),
      first: part(a, start),
      second: part(b, middleSeam),
    };
  };
  const opposite = order.start + c.n / 2;
  return {
    line: complement(beforeSeam(c, order.start)),
    first: part(order.nest, order.start),
    second: part(order.nest, opposite),
  };
}

function acrossCenter(p: Polygon, along: Point): Length {
  let forth = Number.POSITIVE_INFINITY;
  let back = Number.POSITIVE_INFINITY;
  for (const e of edges(p)) {
    const n = leftOf(subtract(e.to, e.from));
    const speed = dot(n, along);
    const away = -dot(n, e.from);
    if (speed < 0) forth = Math.min(forth, away / -speed);
    else if (speed > 0) back = Math.min(back, away / speed);
  }
  return forth + back;
}

const SQUARE_SINE = 1e-9;

function hasFourSquareCorners(p: Polygon, join: Length): boolean {
  if (p.length !== 4) return false;
  return edges(p).every((e, i) => {
    const next = edges(p)[(i + 1) % 4];
    const u = subtract(e.to, e.from);
    const v = subtract(next.to, next.from);
    const long = Math.hypot(u.x, u.y) * Math.hypot(v.x, v.y);
    return Math.abs(dot(u, v)) <= Math.max(SQUARE_SINE * long, join * join);
  });
}

/** How many edges of these patches lie on the line and off their thread by more than 30 degrees. */
function biasOn(patches: readonly Threaded[], line: HalfPlane, join: Length): number {
  let count = 0;
  for (const { polygon, thread } of patches) {
    for (const e of edges(polygon)) {
      if (Math.abs(depth(line, e.from)) > join || Math.abs(depth(line, e.to)) > join) continue;
      if (angleToThread(subtract(e.to, e.from), thread) > BIAS_DEGREES + 1e-9) count++;
    }
  }
  return count;
}

/** Degrees between an edge and the nearer of the two threads, 0 to 45. */
function angleToThread(edge: Point, thread: Point): number {
  const u = normalized(edge);
  const along = Math.abs(dot(u, thread));
  const across = Math.abs(dot(u, leftOf(thread)));
  return toDegrees(Math.atan2(Math.min(along, across), Math.max(along, across)));
}
