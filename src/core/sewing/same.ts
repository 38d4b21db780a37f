import type { SeamTree } from "../block/types.ts";
import {
  angleOf,
  applyTo,
  distance,
  IDENTITY,
  type Point,
  type Polygon,
  type Rigid,
  subtract,
} from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import { outlineOf, patchesIn, seamNodes } from "./tree.ts";

/** Tells pieces apart: two patches are interchangeable when their keys are equal. */
export type PatchKey = (patchId: string) => string;

/** The motion with the given turn that carries p to q. */
function carrying(p: Point, q: Point, turn: number, mirrored: boolean): Rigid {
  const turned = applyTo({ ...IDENTITY, turn, mirrored }, p);
  return { turn, mirrored, x: q.x - turned.x, y: q.y - turned.y };
}

/** Rigid motions that lay outline a on outline b, corner on corner. */
function fits(a: Polygon, b: Polygon, mirrored: boolean, near: Length): Rigid[] {
  if (a.length !== b.length) return [];
  const heading = mirrored
    ? angleOf({ x: -(a[1].x - a[0].x), y: a[1].y - a[0].y })
    : angleOf(subtract(a[1], a[0]));
  const found: Rigid[] = [];
  b.forEach((to, k) => {
    const next = b[(k + (mirrored ? b.length - 1 : 1)) % b.length];
    if (Math.abs(distance(to, next) - distance(a[0], a[1])) > near) return;
    const t = carrying(a[0], to, angleOf(subtract(next, to)) - heading, mirrored);
    if (
      samePoints(
        a.map((v) => applyTo(t, v)),
        b,
        near,
      )
    )
      found.push(t);
  });
  return found;
}

const samePoints = (a: readonly Point[], b: readonly Point[], near: Length): boolean =>
  a.length === b.length && a.every((p) => b.some((q) => distance(p, q) <= near));

/**
 * The motion that lays unit a on unit b so that patches lie on patches of the same key and seams on
 * seams, or undefined. With `mirrored` the unit is turned over; then `keyA` must name a's patches as
 * they are called when turned over.
 */
export function layOn(
  a: SeamTree,
  b: SeamTree,
  keyA: PatchKey,
  keyB: PatchKey,
  near: Length,
  mirrored = false,
): Rigid | undefined {
  const patchesA = patchesIn(a);
  const patchesB = patchesIn(b);
  if (patchesA.length !== patchesB.length) return undefined;
  const seamsA = seamNodes(a).map((s) => s.seam);
  const seamsB = seamNodes(b).map((s) => s.seam);
  return fits(outlineOf(a), outlineOf(b), mirrored, near).find(
    (t) =>
      patchesA.every((p) => {
        const moved = p.polygon.map((v) => applyTo(t, v));
        return patchesB.some(
          (q) => keyA(p.id) === keyB(q.id) && samePoints(moved, q.polygon, near),
        );
      }) &&
      seamsA.every((s) => {
        const ends = [applyTo(t, s.from), applyTo(t, s.to)];
        return seamsB.some((u) => samePoints(ends, [u.from, u.to], near));
      }),
  );
}
