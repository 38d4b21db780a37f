import { inchToLength, type Length, type Unit } from "../measure/index.ts";
import type { SeamFound } from "./seamTest.ts";

/** How well one maker cuts and sews. Lengths in the document's unit; scatters are standard deviations. */
export interface Maker {
  /** Each raw edge, outward: too large on the whole, and how much it varies. */
  readonly cutBias: Length;
  readonly cutScatter: Length;
  /** Each seam's allowance, too wide on the whole, and how much it varies from seam to seam. */
  readonly seamBias: Length;
  readonly seamScatter: Length;
  /** Length lost in the fold of a pressed seam, both sides together ("turn of cloth"). */
  readonly turn: Length;
  /** Allowance wider at the outer edge than at the center by this much along a leg. */
  readonly driftBias: Length;
  readonly driftScatter: Length;
  /** Where along the leg, from the center (0) to the outer edge (1), a drifting seam is right. */
  readonly driftPivot: number;
}

/**
 * A maker whose seams have not been tested, presumed to sew a scant seam: narrower by just what the
 * fold takes, so that test strips come out right. Cutting and scatter are estimates without a source;
 * the fold is the 1/32 in that a blog measured once (Adonising, turn of the cloth, 2019).
 */
export const untestedMaker = (unit: Unit): Maker => {
  const inch = (x: number): Length => inchToLength(x, unit);
  return {
    cutBias: 0,
    cutScatter: inch(1 / 128),
    seamBias: inch(-1 / 64),
    seamScatter: inch(1 / 128),
    turn: inch(1 / 32),
    driftBias: 0,
    driftScatter: inch(1 / 128),
    driftPivot: 0.5,
  };
};

/**
 * The same maker after a seam test: what it measured counts the turn already. Her scatter stays the
 * estimate: two or three tests that happen to agree do not show that her seams never vary.
 */
export const testedMaker = (maker: Maker, found: SeamFound): Maker => ({
  ...maker,
  turn: 0,
  seamBias: found.wider,
  seamScatter: Math.max(maker.seamScatter, found.scatter ?? 0),
});

/** How much too wide her seams are on the whole, from each side: half of the turn counts as width. */
export const widerOnTheWhole = (m: Maker): Length => m.seamBias + m.turn / 2;
