/**
 * A second way to sew a block, for tests only: every piece is cut as a raw polygon, its stitches are
 * drawn on it, and the pieces are laid one against the other by their stitches, as hands do it. It
 * shares no code with the laws, with the shifts or with the core's geometry.
 */
export type XY = readonly [number, number];

export interface Line {
  /** A point of the line and its direction, both in the piece's own frame. */
  readonly p: XY;
  readonly d: XY;
}

const unit = ([x, y]: XY): XY => [x / Math.hypot(x, y), y / Math.hypot(x, y)];

/** The line through a and b, moved to its left by `left0` at a and by `left1` at b. */
export function stitched(a: XY, b: XY, left0: number, left1: number): Line {
  const [dx, dy] = unit([b[0] - a[0], b[1] - a[1]]);
  const p: XY = [a[0] - dy * left0, a[1] + dx * left0];
  const q: XY = [b[0] - dy * left1, b[1] + dx * left1];
  return { p, d: unit([q[0] - p[0], q[1] - p[1]]) };
}

export function meet(l: Line, m: Line): XY {
  const det = l.d[0] * m.d[1] - l.d[1] * m.d[0];
  const k = ((m.p[0] - l.p[0]) * m.d[1] - (m.p[1] - l.p[1]) * m.d[0]) / det;
  return [l.p[0] + k * l.d[0], l.p[1] + k * l.d[1]];
}

/** Distance of q to the left of the line. */
export const toLeft = (l: Line, q: XY): number =>
  l.d[0] * (q[1] - l.p[1]) - l.d[1] * (q[0] - l.p[0]);

/** Turns a frame so that `point` goes to the origin and `along` to the direction `angle`. */
export function layAt(point: XY, along: XY, angle: number): (q: XY) => XY {
  const turn = angle - Math.atan2(along[1], along[0]);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return ([x, y]) => {
    const [u, v] = [x - point[0], y - point[1]];
    return [c * u - s * v, s * u + c * v];
  };
}

export interface SectorErrors {
  /** Allowance too wide at the center end and at the outer end of each leg. */
  readonly inner: number;
  readonly outer: number;
  /** Wedge cut too wide, in degrees. */
  readonly angle: number;
  /** Cross seam too wide. */
  readonly cross: number;
  /** Whose raw edge the long seams follow. */
  readonly follow: "outer" | "inner";
}

export const TRUE: SectorErrors = { inner: 0, outer: 0, angle: 0, cross: 0, follow: "outer" };

const shifted = (l: Line, by: number): Line => ({ p: [l.p[0] + by, l.p[1]], d: l.d });

/**
 * One sector: a wedge whose raw outer edge lies a + seam from its sharp finished point, and an outer
 * piece whose raw inner edge lies a - seam from it, both in a frame with the center line along +x.
 * The two are laid raw edge on raw edge and stitched `cross` too wide.
 */
export function sewSector(n: number, a: number, leg: number, seam: number, e: SectorErrors) {
  const half = Math.PI / n + (e.angle * Math.PI) / 360;
  const end = (sign: 1 | -1): XY => [leg * Math.cos(half), sign * leg * Math.sin(half)];
  const cutStart = stitched([0, 0], end(-1), -seam, -seam);
  const cutEnd = stitched(end(1), [0, 0], -seam, -seam);
  // Stitches of the cross seam as they lie on each of the two pieces; sewn, they are one line.
  const onWedge = a + seam - (seam + e.cross);
  const onOuter = a - seam + (seam + e.cross);
  const outerMoves = onWedge - onOuter;
  const outerStart = shifted(cutStart, outerMoves);
  const outerEnd = shifted(cutEnd, outerMoves);
  const [start, stop] = e.follow === "outer" ? [outerStart, outerEnd] : [cutStart, cutEnd];
  const along = (l: Line, k: number): XY => [l.p[0] + k * l.d[0], l.p[1] + k * l.d[1]];
  const stitches = [
    stitched(along(start, 0), along(start, leg), seam + e.inner, seam + e.outer),
    stitched(along(stop, 0), along(stop, leg), seam + e.outer, seam + e.inner),
  ] as const;
  return { stitches, outerMoves, stepBetweenEdges: -toLeft(cutStart, outerStart.p) };
}

/**
 * Sews n equal sectors round, point on point. Gives the map that lays the outer piece of each on the
 * table, and the angle left open (negative: too much).
 */
export function sewRound(n: number, a: number, leg: number, seam: number, e: SectorErrors) {
  const { stitches, outerMoves } = sewSector(n, a, leg, seam, e);
  const [start, stop] = stitches;
  const apex = meet(start, stop);
  const finished = Math.PI - Math.acos(start.d[0] * stop.d[0] + start.d[1] * stop.d[1]);
  const layOuter = Array.from({ length: n }, (_, i) => {
    const lay = layAt(apex, start.d, i * finished - Math.PI / n);
    return ([x, y]: XY) => lay([x + outerMoves, y]);
  });
  const layWedge = Array.from({ length: n }, (_, i) =>
    layAt(apex, start.d, i * finished - Math.PI / n),
  );
  return { layOuter, layWedge, open: 2 * Math.PI - n * finished };
}

/**
 * How far from the center the raw edge comes that should lie `far` from it, square to a direction
 * `delta` radians from the center line of its sector. A piece that reaches in to the center (a wedge,
 * a kite) has no cross seam.
 */
export function reachOf(
  n: number,
  a: number,
  far: number,
  delta: number,
  seam: number,
  e: SectorErrors,
  piece: "outer" | "to-center",
): number {
  const alone = piece === "to-center" ? { ...e, cross: 0 } : e;
  const { layOuter, layWedge } = sewRound(n, a, a / Math.cos(Math.PI / n), seam, alone);
  const foot: XY = [far * Math.cos(delta), far * Math.sin(delta)];
  const beside: XY = [foot[0] - Math.sin(delta), foot[1] + Math.cos(delta)];
  const [lay] = piece === "outer" ? layOuter : layWedge;
  return toLeft(stitched(lay(foot), lay(beside), 0, 0), [0, 0]);
}
