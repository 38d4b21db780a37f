import { colorDifference, type Lab } from "./lab.ts";

/**
 * Assumptions, not published limits (none were found): from 10 steps of L* apart two fabrics part at
 * arm's length and in a gray print; under 5 they do not; CIEDE2000 from 20 parts them by color even
 * so, but not on a gray print. docs/geometry/stripes.md says where they come from.
 */
export const PARTS_FROM_LIGHTNESS = 10;
export const BARELY_FROM_LIGHTNESS = 5;
export const PARTS_FROM_DIFFERENCE = 20;

export type Eye = "parts" | "barely" | "by-color-only" | "will-not";

export interface ValueGap {
  /** Difference of L*, without sign. */
  readonly lightness: number;
  /** CIEDE2000. */
  readonly difference: number;
  readonly eye: Eye;
}

/** Will the eye part two neighbors? */
export function valueGap(p: Lab, q: Lab): ValueGap {
  const lightness = Math.abs(p.l - q.l);
  const difference = colorDifference(p, q);
  return { lightness, difference, eye: eyeOf(lightness, difference) };
}

function eyeOf(lightness: number, difference: number): Eye {
  if (lightness >= PARTS_FROM_LIGHTNESS) return "parts";
  if (difference >= PARTS_FROM_DIFFERENCE) return "by-color-only";
  return lightness >= BARELY_FROM_LIGHTNESS ? "barely" : "will-not";
}

export type Value = "light" | "medium" | "dark";

/** Thirds of L*: an assumption of ours, only to name a fabric's value. */
export const valueWord = (lab: Lab): Value =>
  lab.l >= 200 / 3 ? "light" : lab.l >= 100 / 3 ? "medium" : "dark";
