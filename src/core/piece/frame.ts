import type { Role } from "../block/types.ts";
import {
  add,
  angleOf,
  applyToPolygon,
  distance,
  edges,
  offset,
  type Polygon,
  subtract,
  turning,
} from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import { grainOf, grainWord } from "./grain.ts";
import { atOrigin, type Shape, startingAt, turnedOver } from "./shape.ts";

/**
 * The grain rule: how a piece lies on the fabric. One edge runs along the strip, at the bottom:
 * 1. a wedge stands on the edge opposite its point, because that is how strips and rulers work;
 * 2. else the edge that puts the greatest length of outside edges on the straight grain;
 * 3. else the edge that puts the greatest length on the straight grain, where two edges or more are;
 * 4. else an edge the shape is symmetrical about, an outside edge, one with a parallel opposite, the
 *    longest.
 * Choices that are still equal give the same shape, or are told apart by their outline.
 */
export function framed(s: Shape, role: Role, slack: Length): Shape {
  const all = s.finished.map((_, i) => lying(s, i));
  const best = isWedge(role, s) ? [all[OPPOSITE_THE_POINT]] : preferred(all, slack);
  return best.reduce((a, b) => (outlineCompare(a.finished, b.finished, slack) <= 0 ? a : b));
}

export const isWedge = (role: Role, s: Shape): boolean =>
  (role === "wedge-even" || role === "wedge-odd") && s.finished.length === 3;

/** Vertex 0 of a patch is nearest the center, so edge 1 is the outer edge. */
const OPPOSITE_THE_POINT = 1;

/** The shape turned so that edge `i` is edge 0 and runs along the bottom, its cut box at the origin. */
function lying(s: Shape, i: number): Shape {
  const start = startingAt(s, i);
  const [from, to] = start.finished;
  const flat = applyToPolygon(turning(-angleOf(subtract(to, from))), start.finished);
  return standing({ ...start, finished: flat });
}

/** Moved so that the box of the cut piece has its lower left corner at the origin. */
function standing(s: Shape): Shape {
  const cut = offset(s.finished, s.allowances);
  const shift = subtract(atOrigin(cut)[0], cut[0]);
  return { ...s, finished: s.finished.map((v) => add(v, shift)) };
}

/** The one of a shape and its mirror image that stands for both, where a fabric has no wrong side. */
export function eitherWay(s: Shape, slack: Length): Shape {
  const over = standing(turnedOver(s));
  return outlineCompare(s.finished, over.finished, slack) <= 0 ? s : over;
}

function preferred(all: readonly Shape[], slack: Length): Shape[] {
  let left = [...all];
  for (const score of SCORES) {
    const most = Math.max(...left.map(score));
    left = left.filter((s) => score(s) >= most - 4 * slack);
  }
  return left;
}

const straightEdges = (s: Shape) => {
  const grain = grainOf(s.finished);
  return edges(s.finished)
    .map((e, i) => ({ length: distance(e.from, e.to), outside: s.outside[i], grain: grain[i] }))
    .filter((e) => grainWord(e.grain) === "straight");
};

const total = (list: readonly { readonly length: Length }[]): Length =>
  list.reduce((sum, e) => sum + e.length, 0);

const SCORES: readonly ((s: Shape) => number)[] = [
  (s) => total(straightEdges(s).filter((e) => e.outside)),
  (s) => {
    const straight = straightEdges(s);
    return straight.length >= 2 ? total(straight) : 0;
  },
  (s) => (symmetricalAboutBase(s.finished) ? 1 : 0),
  (s) => (s.outside[0] ? 1 : 0),
  (s) => (hasParallelTop(s.finished) ? 1 : 0),
  (s) => distance(s.finished[0], s.finished[1]),
];

function symmetricalAboutBase(p: Polygon): boolean {
  const n = p.length;
  const axis = (p[0].x + p[1].x) / 2;
  return p.every((v, i) => {
    const twin = p[(n + 1 - i) % n];
    return Math.abs(v.x + twin.x - 2 * axis) < 1e-6 && Math.abs(v.y - twin.y) < 1e-6;
  });
}

function hasParallelTop(p: Polygon): boolean {
  const top = Math.max(...p.map((v) => v.y));
  return p.filter((v) => top - v.y < 1e-6).length === 2;
}

/** Order of two outlines in the same kind of frame, for choosing one of equals the same way always. */
function outlineCompare(a: Polygon, b: Polygon, slack: Length): number {
  for (let i = 0; i < a.length; i++) {
    if (Math.abs(a[i].x - b[i].x) > slack) return a[i].x - b[i].x;
    if (Math.abs(a[i].y - b[i].y) > slack) return a[i].y - b[i].y;
  }
  return 0;
}
