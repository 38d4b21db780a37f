import { inchToLength, type Length, toRadians } from "../measure/index.ts";
import type { ReadingName, SewnCircle } from "./readings.ts";

/** What can be wrong with a circle of wedges. Seam width and turn of the fabric are one cause. */
export const CAUSES = ["seam", "strip", "angle", "drift", "slip", "odd-piece", "point"] as const;
export type Cause = (typeof CAUSES)[number];

/** How each cause is spoken of. */
export const CAUSE_WORDS: Readonly<Record<Cause, string>> = {
  seam: "the width of the seams",
  strip: "the width of the strip",
  angle: "the angle of the wedges",
  drift: "seams that wander",
  slip: "a slip at the center",
  "odd-piece": "one odd wedge",
  point: "the cut of the point",
};

/** How much each reading moves for one unit of the cause's size. */
export type Effect = Readonly<Partial<Record<ReadingName, number>>>;

/** A number that a cause leaves open, with where it may lie: bumps, one an octave, either sign. */
export interface Unknown {
  readonly effect: Effect;
  readonly bumps: readonly {
    readonly mean: number;
    readonly sd: number;
    readonly weight: number;
  }[];
}

/** One way a cause can show: its unknowns, and what it does whatever their size. */
export interface Way {
  readonly weight: number;
  readonly fixed: Effect;
  readonly unknowns: readonly Unknown[];
}

export interface Suspect {
  readonly cause: Cause | "none";
  /** Chance before anything is measured. */
  readonly before: number;
  /** The size that is reported is that of the first unknown. */
  readonly unit: "length" | "degrees";
  readonly ways: readonly Way[];
}

const SMALLER = 0.25;
const LARGER = 0.3;
const OCTAVES_ABOVE = 4;

/**
 * Sizes worth naming lie from `low` to `high`; smaller and larger ones are less likely the farther
 * off they are. A bump at every octave, as wide as a third of its size, on either side of nothing.
 */
export function bumpsBetween(low: number, high: number, bothSigns = true): Unknown["bumps"] {
  const octaves = Math.round(Math.log2(high / low));
  const raw = Array.from({ length: octaves + 2 + OCTAVES_ABOVE }, (_, i) => {
    const k = i - 1;
    const weight = k < 0 ? SMALLER : k <= octaves ? 1 : LARGER ** (k - octaves);
    const mean = low * 2 ** k;
    return { mean, sd: 0.35 * mean, weight };
  });
  const total = raw.reduce((sum, b) => sum + b.weight, 0);
  const signs = bothSigns ? [1, -1] : [1];
  return raw.flatMap((b) =>
    signs.map((s) => ({ mean: s * b.mean, sd: b.sd, weight: b.weight / total / signs.length })),
  );
}

const PIVOTS = 11;

/**
 * Every suspect with what it does to the readings, to first order; the laws behind each line and the
 * sizes taken as likely stand in docs/geometry/error-laws.md.
 */
export function suspectsFor(c: SewnCircle): Suspect[] {
  const half = Math.PI / c.n;
  const s = Math.sin(half);
  const leg = c.a / Math.cos(half);
  const inch = (x: number): Length => inchToLength(x, c.unit);
  const height = c.a + c.seam + c.seam / s;
  const one = (
    cause: Cause,
    before: number,
    effect: Effect,
    low: number,
    high: number,
  ): Suspect => ({
    cause,
    before,
    unit: "length",
    ways: [
      { weight: 1, fixed: {}, unknowns: [{ effect, bumps: bumpsBetween(inch(low), inch(high)) }] },
    ],
  });
  const degree = toRadians(1);
  // A wedge one degree wider: its point allowance is shorter, its base longer, its leg swings out.
  const angleAcross = (c.seam * Math.cos(half) * degree) / (s * s);
  const angleBase = (height * degree) / Math.cos(half) ** 2;
  const degrees = bumpsBetween(1 / 8, 1 / 2);
  return [
    { cause: "none", before: 0.22, unit: "length", ways: [{ weight: 1, fixed: {}, unknowns: [] }] },
    one("seam", 0.17, { acrossOne: -2 / s, acrossTwo: -2 / s }, 1 / 64, 1 / 16),
    one(
      "strip",
      0.17,
      { acrossOne: 2, acrossTwo: 2, wedgeHeight: 1, wedgeBase: 2 * Math.tan(half) },
      1 / 32,
      1 / 8,
    ),
    {
      cause: "angle",
      before: 0.17,
      unit: "degrees",
      ways: [
        {
          weight: 1,
          fixed: {},
          unknowns: [
            {
              effect: {
                acrossOne: angleAcross,
                acrossTwo: angleAcross,
                wedgeBase: angleBase,
                outerEdge: c.n * degree * leg,
                halfGap: (c.n * degree * leg) / 4,
              },
              bumps: degrees,
            },
          ],
        },
      ],
    },
    {
      cause: "drift",
      before: 0.17,
      unit: "length",
      ways: Array.from({ length: PIVOTS }, (_, i): Way => {
        const pivot = (i + 0.5) / PIVOTS;
        return {
          weight: 1 / PIVOTS,
          fixed: {},
          unknowns: [
            {
              effect: {
                acrossOne: (2 * pivot) / s,
                acrossTwo: (2 * pivot) / s,
                outerEdge: -2 * c.n,
                halfGap: -(c.n / 2 - 1),
              },
              bumps: bumpsBetween(inch(1 / 128), inch(1 / 32)),
            },
          ],
        };
      }),
    },
    {
      cause: "slip",
      before: 0.04,
      unit: "length",
      ways: [
        {
          weight: 1,
          fixed: {},
          unknowns: [
            { effect: { centerOffset: 1 }, bumps: bumpsBetween(inch(1 / 16), inch(1 / 4), false) },
          ],
        },
      ],
    },
    oddPiece(c, leg, angleAcross, degree),
    point(c, s, half),
  ];
}

/** One wedge of another height or angle than the rest: it may lie on either way across, or on none. */
function oddPiece(c: SewnCircle, leg: Length, angleAcross: number, degree: number): Suspect {
  const inch = (x: number): Length => inchToLength(x, c.unit);
  const onWays: (ReadingName | undefined)[] = ["acrossOne", "acrossTwo", undefined];
  const chance = (way: ReadingName | undefined) => (way ? 2 / c.n : 1 - 4 / c.n);
  return {
    cause: "odd-piece",
    before: 0.04,
    unit: "length",
    ways: onWays.flatMap((way) =>
      [0, 1].flatMap((inHalf) => {
        const tall: Unknown = {
          effect: way ? { [way]: 1 } : {},
          bumps: bumpsBetween(inch(1 / 16), inch(1 / 4)),
        };
        const wide: Unknown = {
          effect: {
            ...(way && { [way]: angleAcross / 2 }),
            outerEdge: degree * leg,
            halfGap: (inHalf * degree * leg) / 2,
          },
          bumps: bumpsBetween(1, 4),
        };
        const weight = chance(way) / 4;
        return [
          { weight, fixed: {}, unknowns: [tall] },
          { weight, fixed: {}, unknowns: [wide] },
        ];
      }),
    ),
  };
}

/** Wedges cut blunt from numbers meant for a sharp point, or the other way about. */
function point(c: SewnCircle, s: number, half: number): Suspect {
  const blunt = c.seam / s - c.seam;
  const by = c.missing > 0 ? -c.missing : blunt;
  return {
    cause: "point",
    before: 0.02,
    unit: "length",
    ways: [
      {
        weight: 1,
        fixed: { acrossOne: 2 * by, acrossTwo: 2 * by, wedgeBase: 2 * Math.tan(half) * by },
        unknowns: [],
      },
    ],
  };
}
