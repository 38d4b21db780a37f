import type { Patch, SeamTree } from "../block/types.ts";
import {
  clip,
  complement,
  cross,
  depth,
  dot,
  type HalfPlane,
  halfPlanes,
  leftHalfPlane,
  leftOf,
  ORIGIN,
  offset,
  type Point,
  type Polygon,
  scale,
  subtract,
  unitVector,
} from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import { seamThroughCenter } from "./crossings.ts";
import { middleOf, type SeamNode } from "./tree.ts";
import type { Press } from "./types.ts";

export interface Plies {
  /** Thicknesses of fabric over one another, at their most, within one allowance of the center. */
  readonly most: number;
  /** How much of that circle (square units) has more than 6 plies: twice a plain pressed seam. */
  readonly thickArea: number;
}

export interface CenterPlies {
  /** The long seam pressed to one side from end to end. */
  readonly before: Plies;
  /** The long seam fanned: both arms the same way round. */
  readonly after: Plies;
  /** Every seam open. */
  readonly open: Plies;
}

const RINGS = 16;
const RAYS = 96;
/** Twice a plain pressed seam. */
const THICK = 6;
/** A thickness counts when it covers at least this share of the circle: not the tip of a point. */
const SMALLEST_SHARE = 0.01;

/**
 * How thick the center is, by folding every cut piece as it is really folded: each seam keeps both
 * allowances, turns one or both of them over, and folds with them whatever lies there already. The
 * model lets the allowance of the fanned seam part on the line square to it through the center.
 */
export function centerPlies(
  tree: SeamTree,
  pressed: Readonly<Record<string, Press>>,
  seam: Length,
  near: Length,
  cutOf: (patch: Patch) => Polygon = (p) =>
    offset(
      p.polygon,
      p.polygon.map(() => seam),
    ),
): CenterPlies | undefined {
  const long = seamThroughCenter(tree, near);
  if (!long) return undefined;
  const fold = (ofLong: Press, all?: Press) =>
    count(
      layersOf(tree, (id) => all ?? (id === long.id ? ofLong : pressed[id]), cutOf, near),
      seam,
    );
  const side = pressed[long.id];
  const straight = side === "first" || side === "second" ? side : "second";
  const round = side === "clockwise" ? side : "anticlockwise";
  return { before: fold(straight), after: fold(round), open: fold("open", "open") };
}

function layersOf(
  t: SeamTree,
  press: (id: string) => Press,
  cutOf: (patch: Patch) => Polygon,
  near: Length,
): Polygon[] {
  if (t.kind === "patch") return [cutOf(t.patch)];
  const [first, second] = t.parts.map((p) => layersOf(p, press, cutOf, near));
  const line = sideOfFirst(t);
  const p = press(t.id);
  const arms =
    p === "anticlockwise" || p === "clockwise" ? armsOf(t, p) : [{ within: [], press: p }];
  const fold = (layers: Polygon[], own: HalfPlane, turned: (p: Press) => boolean): Polygon[] =>
    layers.flatMap((layer) => {
      const stays = clip(layer, own, near);
      const beyond = clip(layer, complement(own), near);
      return [
        stays,
        ...arms.map(({ within, press: way }) => {
          const part = within.reduce<Polygon>((q, h) => (q.length ? clip(q, h, near) : q), beyond);
          return turned(way) ? reflected(part, own) : part;
        }),
      ].filter((q) => q.length > 2);
    });
  return [
    ...fold(first, line, (way) => way !== "second"),
    ...fold(second, complement(line), (way) => way !== "first"),
  ];
}

function sideOfFirst(t: SeamNode): HalfPlane {
  const h = leftHalfPlane(t.seam.from, t.seam.to);
  return depth(h, middleOf(t.parts[0])) > 0 ? h : complement(h);
}

/** The two halves of a seam through the center, each with the side that lies the wanted way round. */
function armsOf(t: SeamNode, way: "anticlockwise" | "clockwise") {
  return [t.seam.from, t.seam.to].map((end) => {
    const firstIsLeft = cross(end, middleOf(t.parts[0])) > 0;
    const press: Press = firstIsLeft === (way === "anticlockwise") ? "first" : "second";
    const out = leftHalfPlane(ORIGIN, scale(leftOf(end), -1));
    return { within: [out], press };
  });
}

/** Folded over the boundary of h; listed backwards, so that it stays anticlockwise. */
function reflected(p: Polygon, h: HalfPlane): Polygon {
  return p.map((v): Point => subtract(v, scale(h.n, 2 * (dot(h.n, v) - h.c)))).reverse();
}

function count(layers: readonly Polygon[], radius: Length): Plies {
  const close = layers
    .map(halfPlanes)
    .filter((planes) => planes.every((h) => depth(h, ORIGIN) > -radius));
  const samples: { plies: number; area: number }[] = [];
  for (let ray = 0; ray < RAYS; ray++) {
    const along = unitVector(((ray + 0.37) / RAYS) * 2 * Math.PI);
    // What begins at a ring, less what ended before it.
    const change = new Array<number>(RINGS + 1).fill(0);
    for (const planes of close) {
      const { from, to } = stretchOf(planes, along);
      const first = Math.ceil((from / radius) * RINGS - 0.5);
      const end = Math.min(RINGS, Math.floor((to / radius) * RINGS - 0.5) + 1);
      if (first >= end) continue;
      change[first]++;
      change[end]--;
    }
    let plies = 0;
    for (let ring = 0; ring < RINGS; ring++) {
      const r = ((ring + 0.5) / RINGS) * radius;
      plies += change[ring];
      samples.push({ plies, area: (2 * Math.PI * r * radius) / RINGS / RAYS });
    }
  }
  samples.sort((a, b) => b.plies - a.plies);
  const smallest = SMALLEST_SHARE * Math.PI * radius * radius;
  let seen = 0;
  const most = samples.find((s) => {
    seen += s.area;
    return seen >= smallest;
  });
  const thick = samples.filter((s) => s.plies > THICK);
  return {
    most: most?.plies ?? 0,
    thickArea: thick.reduce((sum, s) => sum + s.area, 0),
  };
}

/** From where to where a ray from the center runs inside a convex layer. */
function stretchOf(planes: readonly HalfPlane[], along: Point): { from: Length; to: Length } {
  let from = 0;
  let to = Number.POSITIVE_INFINITY;
  for (const h of planes) {
    const outward = dot(h.n, along);
    if (outward > 0) to = Math.min(to, h.c / outward);
    else if (outward < 0) from = Math.max(from, h.c / outward);
    else if (h.c < 0) to = Number.NEGATIVE_INFINITY;
  }
  return { from, to };
}
