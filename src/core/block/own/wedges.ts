import {
  direction,
  leftHalfPlane,
  normalized,
  type Point,
  point,
  subtract,
} from "../../geometry/index.ts";
import { type Degree, type Length, toRadians } from "../../measure/index.ts";
import { exitOf, type Part, split } from "./parts.ts";

const MOST = 60;

/** A round of wedges that closes, or why it does not. */
export type Round =
  | { readonly ok: true; readonly angles: readonly Degree[] }
  | { readonly ok: false; readonly found: Degree; readonly works: string };

/** The wedge angles once round: `count` of them, the list repeated; or as many as close the circle. */
export function roundOf(count: number | undefined, list: readonly Degree[] | undefined): Round {
  const each = list ?? [360 / (count ?? 8)];
  const sum = each.reduce((a, b) => a + b, 0);
  const times = count ?? Math.round(360 / sum) * each.length;
  const angles = Array.from({ length: Math.min(times, MOST + 1) }, (_, i) => each[i % each.length]);
  const found = angles.reduce((a, b) => a + b, 0);
  if (angles.length > MOST || angles.length < 4 || Math.abs(found - 360) > 1e-6) {
    const even = Math.max(4, 2 * Math.round((count ?? 360 / (sum / each.length)) / 2));
    return { ok: false, found, works: `${Math.min(even, MOST)} equal wedges close it.` };
  }
  return { ok: true, angles };
}

/** Unit vectors of the seams; exact where the wedges are equal and the first points along +x. */
export function rays(angles: readonly Degree[], first: Point): Point[] {
  const n = angles.length;
  const equal = angles.every((x) => x === angles[0]);
  const start = normalized(first);
  let turned = 0;
  return angles.map((_, i) => {
    const turn = equal ? direction(i, n) : unitAt(turned);
    turned += angles[i];
    return point(start.x * turn.x - start.y * turn.y, start.x * turn.y + start.y * turn.x);
  });
}

const unitAt = (degrees: Degree): Point =>
  point(Math.cos(toRadians(degrees)), Math.sin(toRadians(degrees)));

/** The first seam with one straight across from it, so that the round is two halves. */
export function straightThrough(angles: readonly Degree[]): readonly [number, number] | undefined {
  for (let i = 0; i < angles.length; i++) {
    let turned = 0;
    for (let k = 0; k < angles.length; k++) {
      if (Math.abs(turned - 180) <= 1e-6) return [i, (i + k) % angles.length];
      turned += angles[(i + k) % angles.length];
    }
  }
  return undefined;
}

/**
 * Cuts the part round `center`: the long seam from ray `i` to ray `j` across from it, then each half
 * into the largest power of two of wedges and the rest, down to pairs.
 */
export function cutRound(
  part: Part,
  center: Point,
  seams: readonly Point[],
  [i, j]: readonly [number, number],
  join: Length,
): void {
  const n = seams.length;
  const outward = (k: number) => exitOf(part.polygon, center, seams[k % n]);
  const back = (k: number) => leftHalfPlane(outward(k), center);
  const halve = (half: Part, start: number, count: number): void => {
    if (count === 1) return;
    const first = 2 ** Math.ceil(Math.log2(count) - 1);
    const [before, after] = split(half, back(start + first), join);
    halve(before, start, first);
    halve(after, start + first, count - first);
  };
  const count = (j - i + n) % n;
  const [left, right] = split(part, leftHalfPlane(center, outward(i)), join);
  halve(left, i, count);
  halve(right, j, n - count);
}

/** Direction of the first seam: toward a point, or straight right. */
export const firstRay = (center: Point, toward: Point | undefined): Point =>
  toward ? subtract(toward, center) : point(1, 0);
