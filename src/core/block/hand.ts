import {
  centroid,
  distance,
  dot,
  edges,
  middle,
  normalized,
  type Polygon,
  scale,
  subtract,
} from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import type { Hand } from "./types.ts";

/**
 * The hand of a patch that has no side of the block to tell it by. Seen on the right side, stand it
 * on its longest edge that meets a square corner (the longest edge of all when there is none): the
 * hand is the side toward which it leans. So a half-rectangle on its long leg is a right when its
 * square corner is at the right. Mirrored patches have opposite hands, turned ones the same; a patch
 * equal to its mirror image has none.
 */
export function handOf(p: Polygon, join: Length): Hand {
  if (hasMirror(p, join)) return "none";
  const all = edges(p);
  const square = p.map((_, i) => isSquareCorner(p, i));
  const length = all.map((e) => distance(e.from, e.to));
  const atSquare = all.map((_, i) => square[i] || square[(i + 1) % p.length]);
  const some = atSquare.some(Boolean);
  const longest = Math.max(...length.filter((_, i) => !some || atSquare[i]));
  const center = centroid(p);
  const leans = all
    .map((e) => dot(subtract(center, middle(e.from, e.to)), normalized(subtract(e.to, e.from))))
    .filter((_, i) => (!some || atSquare[i]) && length[i] >= longest - join);
  const right = Math.max(...leans);
  const left = -Math.min(...leans);
  if (Math.max(right, left) > join && Math.abs(right - left) > join)
    return right > left ? "right" : "left";
  return handByOrder(p, join);
}

function isSquareCorner(p: Polygon, i: number): boolean {
  const before = normalized(subtract(p[(i + p.length - 1) % p.length], p[i]));
  const after = normalized(subtract(p[(i + 1) % p.length], p[i]));
  return Math.abs(dot(before, after)) < 1e-9;
}

/** Is it its own mirror image, in any line? */
function hasMirror(p: Polygon, join: Length): boolean {
  const c = centroid(p);
  const candidates = [...p, ...edges(p).map((e) => middle(e.from, e.to))];
  return candidates.some((on) => {
    if (distance(on, c) <= join) return false;
    const axis = normalized(subtract(on, c));
    return p.every((v) => {
      const from = subtract(v, c);
      const image = subtract(scale(axis, 2 * dot(axis, from)), from);
      return p.some((w) => distance(subtract(w, c), image) <= 4 * join);
    });
  });
}

/**
 * A patch that leans neither way: of its sides and diagonals read round it anticlockwise and
 * clockwise, each from the place that puts the greatest first, the greater list decides.
 */
function handByOrder(p: Polygon, join: Length): "left" | "right" {
  const greatest = (q: Polygon): number[] =>
    q
      .map((_, start) =>
        q.flatMap((_, i) => {
          const at = (k: number) => q[(start + i + k) % q.length];
          return [distance(at(0), at(1)), distance(at(0), at(2))];
        }),
      )
      .reduce((best, list) => (compareLists(list, best, join) > 0 ? list : best));
  return compareLists(greatest(p), greatest([...p].reverse()), join) >= 0 ? "right" : "left";
}

function compareLists(a: readonly number[], b: readonly number[], join: Length): number {
  const at = a.findIndex((x, i) => Math.abs(x - b[i]) > 4 * join);
  return at === -1 ? 0 : a[at] - b[at];
}
