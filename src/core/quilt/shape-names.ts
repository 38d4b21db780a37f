import {
  add,
  area,
  between,
  centroid,
  contains,
  cross,
  distance,
  edges,
  type Point,
  type Polygon,
  point,
  scale,
  subtract,
} from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";

/** A figure made of patches that are seen as one. */
export interface NamedShape {
  readonly shape: "ring" | "pinwheel" | "star" | "square" | "diamond" | "hexagon" | "octagon";
  /** Points of a star, blades of a pinwheel, corners of the others; 0 for a ring. */
  readonly points: number;
}

/**
 * What patches that run together look like, from their outline alone: a ring goes all round its own
 * empty middle; a pinwheel turns onto itself and has no mirror; a star has a mirror and
 * as many points as hollows between them;
 * what is not hollowed is named by its corners. Undefined for anything else.
 */
export function nameShape(parts: readonly Polygon[], slack: Length): NamedShape | undefined {
  const center = middleOf(parts);
  const hollow = !parts.some((p) => contains(p, center, slack));
  if (hollow && RAYS.every((angle) => parts.some((p) => meetsRay(p, center, angle))))
    return { shape: "ring", points: 0 };
  const points = cornersOf(parts, slack);
  const turns = TURNS.find((n) => unmoved(parts, turnedAbout(center, n), slack)) ?? 1;
  const mirrored = axesOf(points, center, slack).some((axis) =>
    unmoved(parts, mirroredIn(center, axis), slack),
  );
  if (!mirrored) return turns >= 3 ? { shape: "pinwheel", points: turns } : undefined;
  const hull = hullOf(points, slack);
  const filled = parts.reduce((sum, p) => sum + area(p), 0);
  if (filled > area(hull) * (1 - 1e-6)) return named(hull, slack);
  return turns >= 3 ? { shape: "star", points: hollowsOf(hull, parts, slack) } : undefined;
}

/** Sides of the hull that are no edge of a part: between two of them lies one point of the star. */
function hollowsOf(hull: readonly Point[], parts: readonly Polygon[], slack: Length): number {
  const own = parts.flatMap((p) => edges(p));
  const near = (a: Point, b: Point): boolean => distance(a, b) <= 4 * slack;
  return edges(hull).filter((h) => !own.some((e) => near(e.from, h.from) && near(e.to, h.to)))
    .length;
}

const RAYS = Array.from({ length: 48 }, (_, i) => ((i + 0.37) * Math.PI) / 24);
const TURNS = [16, 12, 10, 8, 6, 5, 4, 3, 2];

function middleOf(parts: readonly Polygon[]): Point {
  const total = parts.reduce((sum, p) => sum + area(p), 0);
  return parts
    .map((p) => scale(centroid(p), area(p) / total))
    .reduce((a, b) => add(a, b), point(0, 0));
}

function meetsRay(p: Polygon, from: Point, angle: number): boolean {
  const along = point(Math.cos(angle), Math.sin(angle));
  return edges(p).some((e) => {
    const [a, b] = [subtract(e.from, from), subtract(e.to, from)];
    const [sa, sb] = [cross(along, a), cross(along, b)];
    if (sa * sb > 0) return false;
    const k = sa / (sa - sb);
    return a.x * along.x + a.y * along.y + k * ((b.x - a.x) * along.x + (b.y - a.y) * along.y) > 0;
  });
}

/** Every corner of the parts, each place once. */
function cornersOf(parts: readonly Polygon[], slack: Length): Point[] {
  const out: Point[] = [];
  for (const v of parts.flat()) if (!out.some((o) => distance(o, v) <= slack)) out.push(v);
  return out;
}

/** Does the motion lay the figure on itself? Asked at points inside it, so it matters not how it is parted. */
const unmoved = (parts: readonly Polygon[], motion: (v: Point) => Point, slack: Length): boolean =>
  parts.every((part) => {
    const middle = centroid(part);
    const probes = [middle, ...part.map((v) => between(v, middle, 0.1))];
    return probes.every((v) => parts.some((p) => contains(p, motion(v), 8 * slack)));
  });

const turnedAbout = (c: Point, parts: number) => {
  const [cos, sin] = [Math.cos((2 * Math.PI) / parts), Math.sin((2 * Math.PI) / parts)];
  return (v: Point): Point => {
    const d = subtract(v, c);
    return add(c, point(d.x * cos - d.y * sin, d.x * sin + d.y * cos));
  };
};

/** A mirror takes the corner farthest out to one as far out: so it lies half way between the two. */
function axesOf(points: readonly Point[], c: Point, slack: Length): number[] {
  const out = points.map((v) => ({ far: distance(v, c), angle: Math.atan2(v.y - c.y, v.x - c.x) }));
  const first = out.reduce((a, b) => (b.far > a.far + slack ? b : a));
  return out
    .filter((v) => Math.abs(v.far - first.far) <= 8 * slack)
    .map((v) => (v.angle + first.angle) / 2);
}

const mirroredIn = (c: Point, axis: number) => {
  const [cos, sin] = [Math.cos(2 * axis), Math.sin(2 * axis)];
  return (v: Point): Point => {
    const d = subtract(v, c);
    return add(c, point(d.x * cos + d.y * sin, d.x * sin - d.y * cos));
  };
};

/** Convex hull, anticlockwise, without corners on its sides. */
function hullOf(points: readonly Point[], slack: Length): Point[] {
  const sorted = [...points].sort((a, b) => (Math.abs(a.x - b.x) > slack ? a.x - b.x : a.y - b.y));
  const half = (list: readonly Point[]): Point[] => {
    const out: Point[] = [];
    for (const v of list) {
      while (out.length > 1 && turnsRight(out[out.length - 2], out[out.length - 1], v, slack))
        out.pop();
      out.push(v);
    }
    return out.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.toReversed())];
}

const turnsRight = (a: Point, b: Point, c: Point, slack: Length): boolean =>
  cross(subtract(b, a), subtract(c, b)) <= slack * distance(a, c);

function named(hull: readonly Point[], slack: Length): NamedShape | undefined {
  const sides = edges(hull).map((e) => distance(e.from, e.to));
  const even = sides.every((s) => Math.abs(s - sides[0]) <= 8 * slack);
  if (hull.length === 4 && even) {
    const [a, b, c, d] = hull;
    const square = Math.abs(distance(a, c) - distance(b, d)) <= 8 * slack;
    return { shape: square ? "square" : "diamond", points: 4 };
  }
  if (hull.length === 6) return { shape: "hexagon", points: 6 };
  return hull.length === 8 ? { shape: "octagon", points: 8 } : undefined;
}
