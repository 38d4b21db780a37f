/**
 * Sewn circles with a planted fault, and what careful hands would read on them. For tests and the
 * bench only: built piece by piece by `sewn.testing.ts`, with none of the laws that diagnosis uses.
 */
import type { Readings, SewnCircle } from "./readings.ts";
import { reachOf, sewRound, sewSector, TRUE } from "./sewn.testing.ts";

export interface Plant {
  readonly cause: "none" | "seam" | "strip" | "angle" | "drift";
  /** Seam too wide; strip too wide; degrees too wide; wider at the outer edge. */
  readonly size: number;
  /** For drift: where along the leg the allowance is right, 0 at the center. */
  readonly pivot: number;
}

/** What a perfect ruler would read. The wedges have sharp points. */
export function trueReadings(c: SewnCircle, p: Plant): Required<Readings> {
  const a = p.cause === "strip" ? c.a + p.size : c.a;
  const leg = c.a / Math.cos(Math.PI / c.n);
  const wide = p.cause === "seam" ? p.size : 0;
  const errors = {
    ...TRUE,
    inner: wide - (p.cause === "drift" ? p.size * p.pivot : 0),
    outer: wide + (p.cause === "drift" ? p.size * (1 - p.pivot) : 0),
    angle: p.cause === "angle" ? p.size : 0,
  };
  // A wedge is cut from its strip: the raw height is the strip, so the true point moves with the angle.
  const cutAngle = (2 * Math.PI) / c.n + (errors.angle * Math.PI) / 180;
  const height = a + c.seam + c.seam / Math.sin(Math.PI / c.n);
  const far = height - c.seam / Math.sin(cutAngle / 2);
  const across = 2 * reachOf(c.n, c.a, far, 0, c.seam, errors, "to-center");
  const { open } = sewRound(c.n, c.a, leg, c.seam, errors);
  const [start, stop] = sewSector(c.n, c.a, leg, c.seam, errors).stitches;
  const finished = Math.PI - Math.acos(start.d[0] * stop.d[0] + start.d[1] * stop.d[1]);
  // A half: its wedges at their finished angles, but its two long raw legs as they were cut.
  const wedges = c.n / 2;
  const halfAngle = wedges * finished + (cutAngle - finished);
  return {
    acrossOne: across,
    acrossTwo: across,
    halfGap: leg * Math.sin((halfAngle - Math.PI) / 2),
    outerEdge: -open * leg,
    centerOffset: 0,
    wedgeHeight: height,
    wedgeBase: 2 * Math.tan(cutAngle / 2) * height,
  };
}

/** Read by hand: a normal error on each, rounded to the ruler's marks. */
export function readByHand(
  truth: Required<Readings>,
  sd: number,
  step: number,
  normal: () => number,
): Required<Readings> {
  const read = (x: number) => Math.round((x + sd * normal()) / step) * step;
  // How far points miss has no sign.
  return Object.fromEntries(
    Object.entries(truth).map(([k, v]) => [k, k === "centerOffset" ? Math.abs(read(v)) : read(v)]),
  ) as Required<Readings>;
}
