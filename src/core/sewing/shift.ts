import type { SeamTree } from "../block/types.ts";
import {
  add,
  crossing,
  depth,
  dot,
  edges,
  type HalfPlane,
  halfPlanes,
  leftHalfPlane,
  middle,
  moved,
  norm,
  ORIGIN,
  type Point,
  type Polygon,
  point,
  scale,
  subtract,
} from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import type { SpareOf } from "./spare.ts";
import { middleOf, outlineOf, patchesIn, type SeamNode } from "./tree.ts";

/** Which raw edge a seam follows where the two pieces of a unit do not end level. */
export type Follow = "outer" | "inner";

/** How everything is sewn: a true allowance, and by how much each seam is really wider. */
export interface Sewn {
  readonly seam: Length;
  readonly wider: (seamId: string) => Length;
  readonly follow: Follow;
  readonly spareOf: SpareOf;
  readonly near: Length;
}

/**
 * How far each patch lies from its true place in a unit sewn with wrong seams, its first patch held
 * still. Raw edges are laid on raw edges and every patch keeps its directions, so a seam wider by e
 * draws its two sides together by 2 e, square to it, and nothing else moves
 * (docs/geometry/error-laws.md).
 */
export function shiftsOf(t: SeamTree, sewn: Sewn): Map<string, Point> {
  if (t.kind === "patch") return new Map([[t.patch.id, point(0, 0)]]);
  const [first, second] = t.parts.map((p) => shiftsOf(p, sewn));
  const across = towardSecond(t);
  const mine = rawEdge(t.parts[0], first, t, across, sewn);
  const its = rawEdge(t.parts[1], second, t, scale(across, -1), sewn);
  const closer = mine.reach + its.reach - 2 * sewn.wider(t.id);
  const slid = subtract(mine.shift, its.shift);
  const apart = add(scale(across, closer - dot(slid, across)), slid);
  const all = new Map(first);
  for (const [id, s] of second) all.set(id, add(s, apart));
  return all;
}

function towardSecond(t: SeamNode): Point {
  const h = leftHalfPlane(t.seam.from, t.seam.to);
  return depth(h, middleOf(t.parts[0])) > 0 ? h.n : scale(h.n, -1);
}

/**
 * The raw edge of one part that is laid on the other's. Along a seam that points at the center the
 * chosen piece is followed: the outermost or the innermost. Elsewhere the edge is straight by then:
 * trimmed to the piece that reaches least far, spare first.
 */
function rawEdge(
  part: SeamTree,
  shifts: ReadonlyMap<string, Point>,
  t: SeamNode,
  outward: Point,
  { follow, near, spareOf }: Sewn,
): { readonly reach: Length; readonly shift: Point } {
  const { from, to } = t.seam;
  const line = leftHalfPlane(from, to);
  // A seam through the center has two arms; both parts are laid by the same one.
  const arm = norm(from) <= norm(to) + near ? to : from;
  const on = patchesIn(part).flatMap((patch) =>
    edges(patch.polygon).flatMap((e, i) => {
      if (!onLine(line, e.from, near) || !onLine(line, e.to, near)) return [];
      const shift = shifts.get(patch.id) ?? point(0, 0);
      const reach = dot(shift, outward);
      const spare = spareOf(patch, i);
      const trimmed = spare > 0 ? Math.min(0, reach + spare) : reach;
      const mid = middle(e.from, e.to);
      return [{ shift, reach, trimmed, out: norm(mid), sameArm: dot(mid, arm) > 0 }];
    }),
  );
  if (on.length === 0) throw new RangeError(`${t.id}: no patch lies on its seam`);
  const inFirst = [...on].sort((a, b) => a.out - b.out);
  const oneArm = inFirst.filter((e) => e.sameArm);
  // One piece that lies across the center belongs to no arm: its edge is straight.
  if (onLine(line, ORIGIN, near) && oneArm.length > 0) {
    return oneArm[follow === "inner" ? 0 : oneArm.length - 1];
  }
  return { shift: inFirst[0].shift, reach: Math.min(...on.map((e) => e.trimmed)) };
}

/**
 * The raw outline of a unit as it really comes: each raw edge where the piece that reaches least far
 * ends, corners where those lines meet. Same edges, same order as the finished outline.
 */
export function rawOutline(t: SeamTree, sewn: Sewn): Polygon {
  const shifts = shiftsOf(t, sewn);
  const patches = patchesIn(t);
  const planes = halfPlanes(outlineOf(t)).map((side) => {
    const reaches = patches.flatMap((patch) =>
      edges(patch.polygon).flatMap((e, i) =>
        onLine(side, e.from, sewn.near) && onLine(side, e.to, sewn.near)
          ? [dot(shifts.get(patch.id) ?? point(0, 0), side.n) + sewn.spareOf(patch, i)]
          : [],
      ),
    );
    return moved(side, sewn.seam + (reaches.length > 0 ? Math.min(...reaches) : 0));
  });
  return planes.map((plane, i) => {
    const before = planes[(i + planes.length - 1) % planes.length];
    const at = crossing(before, plane);
    if (!at) throw new RangeError("rawOutline: neighboring edges are parallel");
    return at;
  });
}

const onLine = (h: HalfPlane, p: Point, near: Length): boolean => Math.abs(depth(h, p)) <= near;
