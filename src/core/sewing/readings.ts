import type { BlockGeometry } from "../block/types.ts";
import type { Finding } from "../findings/index.ts";
import { inchToLength, type Length, MM_PER_INCH, type Unit } from "../measure/index.ts";

/** What can be measured on a sewn circle of wedges with a ruler and a straight edge. */
export const READINGS = [
  "acrossOne",
  "acrossTwo",
  "halfGap",
  "outerEdge",
  "centerOffset",
  "wedgeHeight",
  "wedgeBase",
] as const;
export type ReadingName = (typeof READINGS)[number];

/** How each reading is spoken of, on the page, on the command line and on the sewing card. */
export const READING_WORDS: Readonly<Record<ReadingName, string>> = {
  acrossOne: "unfinished width across flats, one way",
  acrossTwo: "unfinished width across flats, the other way",
  halfGap: "gap of the half against a straight edge",
  outerEdge: "ripple or gap along the outer edge",
  centerOffset: "how far the points miss at the center",
  wedgeHeight: "height of one unsewn wedge",
  wedgeBase: "base of one unsewn wedge",
};

/**
 * Readings in the document's unit, each may be left out. acrossOne, acrossTwo: raw, across flats, two
 * ways square to each other or nearly. halfGap: straight edge on the long raw edge of a half; the
 * light in the middle, or, negative, at each end. outerEdge: what lies in ripples along the outer
 * edge, or, negative, the gap that stays open when one seam is opened and the rest is patted flat.
 * centerOffset: how far apart the points miss one another. wedgeHeight, wedgeBase: one wedge cut like
 * the others and not yet sewn, square across and along its wide end, raw.
 */
export type Readings = Readonly<Partial<Record<ReadingName, Length>>>;

/** What was made: the circle as planned. */
export interface SewnCircle {
  readonly n: number;
  /** Half the finished width across flats. */
  readonly a: Length;
  readonly seam: Length;
  /** Height missing from the wedge's point as it is cut; 0 for a sharp point. */
  readonly missing: Length;
  readonly unit: Unit;
}

/** The circle of a block as it was planned; `missing` is the ruler's. Undefined without wedges. */
export const sewnCircleOf = (
  block: Pick<BlockGeometry, "radial">,
  seam: Length,
  missing: Length,
  unit: Unit,
): SewnCircle | undefined =>
  block.radial && { n: block.radial.n, a: block.radial.a, seam, missing, unit };

export interface ReadingError {
  /** Standard deviation of one reading. */
  readonly sd: Length;
  /** Readings are rounded to this. */
  readonly step: Length;
}

/** Careful hands and a ruler with 1/32 marks: an estimate, no source. */
export const usualError = (unit: Unit): ReadingError => ({
  sd: inchToLength(1 / 64, unit),
  step: inchToLength(1 / 32, unit),
});

/** Reading and rounding together. */
export const totalError = (e: ReadingError): Length => Math.sqrt(e.sd ** 2 + e.step ** 2 / 12);

/** What each should be with nothing wrong. */
export function planned(c: SewnCircle): Record<ReadingName, Length> {
  const half = Math.PI / c.n;
  const strip = c.a + c.seam + c.seam / Math.sin(half) - c.missing;
  const across = 2 * (c.a + c.seam);
  return {
    acrossOne: across,
    acrossTwo: across,
    halfGap: 0,
    outerEdge: 0,
    centerOffset: 0,
    wedgeHeight: strip,
    wedgeBase: 2 * Math.tan(half) * (strip + c.missing),
  };
}

export const given = (r: Readings): ReadingName[] =>
  READINGS.filter((name) => r[name] !== undefined && Number.isFinite(r[name]));

const SIZES: readonly ReadingName[] = ["acrossOne", "acrossTwo", "wedgeHeight", "wedgeBase"];
/** More than this share off is no sewing error. */
const FAR = 0.2;

/**
 * Readings that cannot be: negative sizes, a gap wider than the circle, sizes in another unit. Such a
 * block is not diagnosed. Sizes farther off than sewing can make them are told as drafts.
 */
export function readingFindings(c: SewnCircle, r: Readings): Finding[] {
  const plan = planned(c);
  const names = given(r);
  const found = (
    name: ReadingName,
    code: Finding["code"],
    severity: Finding["severity"],
  ): Finding => ({
    code,
    severity,
    place: name,
    needed: plan[name],
    found: r[name],
    unit: c.unit,
    words: { place: READING_WORDS[name] },
  });
  return names.flatMap((name): Finding[] => {
    const value = r[name] as Length;
    if (!SIZES.includes(name)) {
      const tooWide =
        Math.abs(value) > plan.acrossOne / 2 || (name === "centerOffset" && value < 0);
      return tooWide ? [found(name, "reading-impossible", "blocks")] : [];
    }
    if (value <= 0) return [found(name, "reading-impossible", "blocks")];
    const share = value / plan[name];
    if (otherUnits().some((k) => Math.abs(share / k - 1) < FAR))
      return [found(name, "reading-other-unit", "blocks")];
    return Math.abs(share - 1) > FAR ? [found(name, "reading-far", "draft")] : [];
  });
}

/** Inches for millimetres, centimetres for millimetres, centimetres for inches, and back. */
const otherUnits = (): number[] => [MM_PER_INCH, 10, MM_PER_INCH / 10].flatMap((k) => [k, 1 / k]);

/** Widths that were read twice and cannot both be of one circle: a half wider than the whole. */
export function contradicts(c: SewnCircle, r: Readings): Finding[] {
  const { acrossOne, acrossTwo } = r;
  if (acrossOne === undefined || acrossTwo === undefined) return [];
  const most = c.a / 2;
  if (Math.abs(acrossOne - acrossTwo) <= most) return [];
  return [
    {
      code: "reading-impossible",
      severity: "blocks",
      place: "acrossTwo",
      needed: acrossOne,
      found: acrossTwo,
      unit: c.unit,
      words: { place: READING_WORDS.acrossTwo },
    },
  ];
}
