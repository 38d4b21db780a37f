import type { SeamTree } from "../block/types.ts";
import {
  applyTo,
  cross,
  distance,
  dot,
  norm,
  normalized,
  ORIGIN,
  type Point,
  type Rigid,
  subtract,
} from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import { middleOf, type SeamNode, seamNodes } from "./tree.ts";
import type { Crossing } from "./types.ts";

/** A seam as it lies somewhere: in a block, or in a block turned and placed in the quilt. */
export interface LaidSeam {
  readonly id: string;
  readonly from: Point;
  readonly to: Point;
  /** A point on the side of its first part. */
  readonly first: Point;
}

/** A seam that ends on (or runs along and through) a point of a line that is to be sewn. */
export interface SeamEnd {
  readonly id: string;
  readonly at: Point;
  /** Away from the line, along the seam. */
  readonly direction: Point;
  /** Pressed toward its first part, does its allowance lie forward along the line? */
  readonly firstIsForward: boolean;
}

/** The two arms of a seam that runs through the center and is fanned there. */
export const armsOf = (seamId: string): readonly [string, string] => [
  `${seamId}@from`,
  `${seamId}@to`,
];

/** The seams of a tree where they lie; the one that `fanned` names as its two arms. */
export function laidSeams(tree: SeamTree, fanned?: string, at?: Rigid): LaidSeam[] {
  const move = (p: Point): Point => (at ? applyTo(at, p) : p);
  return seamNodes(tree).flatMap((node) => {
    const { from, to } = node.seam;
    const first = move(middleOf(node.parts[0]));
    if (node.id !== fanned) return [{ id: node.id, from: move(from), to: move(to), first }];
    const center = move(ORIGIN);
    const [a, b] = armsOf(node.id);
    return [
      { id: a, from: center, to: move(from), first },
      { id: b, from: center, to: move(to), first },
    ];
  });
}

/** The seam that runs through the block's center where others end on it, if there is one. */
export function seamThroughCenter(tree: SeamTree, near: Length): SeamNode | undefined {
  return seamNodes(tree).find((node) => {
    const { from, to } = node.seam;
    if (Math.min(norm(from), norm(to)) <= near) return false;
    const ends = node.parts.map((part) => endsOn(laidSeams(part), from, to, near));
    return ends.every((side) => side.some((e) => norm(e.at) <= near));
  });
}

/** Ends of the given seams on the line from a to b, the line's ends counted. */
export function endsOn(seams: readonly LaidSeam[], a: Point, b: Point, near: Length): SeamEnd[] {
  const along = normalized(subtract(b, a));
  const length = distance(a, b);
  const onLine = (p: Point): boolean => {
    const r = subtract(p, a);
    const forward = dot(r, along);
    return Math.abs(cross(along, r)) <= near && forward >= -near && forward <= length + near;
  };
  return seams.flatMap((s) =>
    [
      { at: s.from, other: s.to },
      { at: s.to, other: s.from },
    ]
      .filter(({ at, other }) => onLine(at) && !onLine(other))
      .map(({ at, other }): SeamEnd => {
        const direction = normalized(subtract(other, at));
        const firstIsLeft = cross(direction, subtract(s.first, at)) > 0;
        const leftIsForward = cross(direction, along) > 0;
        return { id: s.id, at, direction, firstIsForward: firstIsLeft === leftIsForward };
      }),
  );
}

/** Ends at one point, grouped: the points in their order along the line. */
function atPoints(ends: readonly SeamEnd[], near: Length): { at: Point; ends: SeamEnd[] }[] {
  const groups: { at: Point; ends: SeamEnd[] }[] = [];
  for (const e of ends) {
    const group = groups.find((g) => distance(g.at, e.at) <= near);
    if (group) group.ends.push(e);
    else groups.push({ at: e.at, ends: [e] });
  }
  return groups;
}

/**
 * Which seam of one unit meets which of the other at a point: ranked by their lean along the line,
 * first with first when there are equally many, else each of the fewer with the nearest in lean.
 */
function paired(one: SeamEnd[], other: SeamEnd[], along: Point): [SeamEnd, SeamEnd][] {
  const lean = (e: SeamEnd): number => dot(e.direction, along);
  const byLean = (a: SeamEnd, b: SeamEnd) => lean(a) - lean(b);
  const a = [...one].sort(byLean);
  const b = [...other].sort(byLean);
  if (a.length === b.length) return a.map((e, i) => [e, b[i]]);
  const [few, many] = a.length < b.length ? [a, b] : [b, a];
  return few.map((e) => {
    const mate = many.reduce((best, m) =>
      Math.abs(lean(m) - lean(e)) < Math.abs(lean(best) - lean(e)) - 1e-12 ? m : best,
    );
    return a.length < b.length ? [e, mate] : [mate, e];
  });
}

/** Where seams of one unit meet seams of another along the line from a to b that joins them. */
export function meetings(
  one: readonly SeamEnd[],
  other: readonly SeamEnd[],
  a: Point,
  b: Point,
  joinedBy: string,
  near: Length,
): Crossing[] {
  const along = normalized(subtract(b, a));
  const others = atPoints(other, near);
  return atPoints(one, near).flatMap((g) => {
    const facing = others.find((h) => distance(h.at, g.at) <= near);
    if (!facing) return [];
    return paired(g.ends, facing.ends, along).map(
      ([p, q]): Crossing => ({
        at: g.at,
        joinedBy,
        seams: [p.id, q.id],
        // Forward and backward is what nests: one firstIsForward as good as the other's second.
        differ: p.firstIsForward === q.firstIsForward,
        count: 1,
      }),
    );
  });
}

/** Every crossing inside one block. */
export function crossingsIn(tree: SeamTree, near: Length, fanned?: string): Crossing[] {
  return seamNodes(tree).flatMap((node) => {
    const { from, to } = node.seam;
    const ends = (part: SeamTree) => endsOn(laidSeams(part, fanned), from, to, near);
    return meetings(ends(node.parts[0]), ends(node.parts[1]), from, to, node.id, near);
  });
}
