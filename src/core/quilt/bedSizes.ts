import type { Unit } from "../measure/index.ts";

/** A size as it was published, in the unit it was published in. */
export interface PublishedSize {
  readonly name: string;
  readonly width: number;
  readonly length: number;
}

export interface SizeList {
  readonly of: "mattresses" | "quilts" | "packaged batting";
  readonly where?: "US" | "UK" | "Europe";
  readonly unit: Unit;
  /** Who published it, as far as it was read. */
  readonly source: string;
  readonly sizes: readonly PublishedSize[];
}

const size = (name: string, width: number, length: number): PublishedSize => ({
  name,
  width,
  length,
});
const BED_PAGE = "gnomon.org.uk, bed sizes page (UK, Europe, US)";

/** Mattresses as published; makers differ, and no depth is standard (7 to 22 in were seen). */
export const MATTRESSES: readonly SizeList[] = [
  {
    of: "mattresses",
    where: "US",
    unit: "in",
    source: `${BED_PAGE}, and many pages that agree`,
    sizes: [
      size("crib", 28, 52),
      size("twin", 39, 75),
      size("twin long", 39, 80),
      size("full", 54, 75),
      size("queen", 60, 80),
      size("king", 76, 80),
      size("California king", 72, 84),
    ],
  },
  {
    of: "mattresses",
    where: "UK",
    unit: "mm",
    source: BED_PAGE,
    sizes: [
      size("small single", 750, 1900),
      size("single", 900, 1900),
      size("small double", 1200, 1900),
      size("double", 1350, 1900),
      size("king", 1500, 2000),
      size("super king", 1800, 2000),
    ],
  },
  {
    of: "mattresses",
    where: "Europe",
    unit: "mm",
    source: BED_PAGE,
    sizes: [
      size("small single", 800, 2000),
      size("single", 900, 2000),
      size("large single", 1000, 2000),
      size("double", 1400, 2000),
      size("king", 1600, 2000),
      size("super king", 1800, 2000),
    ],
  },
];

/** Finished quilts as two charts print them (common practice: they differ by up to 10 in). */
export const QUILTS: readonly SizeList[] = [
  {
    of: "quilts",
    where: "US",
    unit: "in",
    source: "C. Watson, quilt maths page",
    sizes: [
      size("crib", 40, 55),
      size("twin", 65, 88),
      size("queen", 86, 95),
      size("king", 105, 95),
    ],
  },
  {
    of: "quilts",
    where: "US",
    unit: "in",
    source: "a second chart of common practice, without a named author",
    sizes: [
      size("crib", 36, 60),
      size("throw", 50, 60),
      size("twin", 70, 90),
      size("full", 86, 90),
      size("queen", 90, 95),
      size("king", 108, 95),
    ],
  },
];

/** Batting as it is packaged: four charts agree, save 84 x 96 for full and 124 x 120 for king in one each. */
export const BATTINGS: SizeList = {
  of: "packaged batting",
  where: "US",
  unit: "in",
  source:
    "The Quilting Garden, quilt size reference, 2010-07-08; Project 12 Quilts, batting sizes, 2012-01-06",
  sizes: [
    size("crib", 45, 60),
    size("throw", 60, 60),
    size("twin", 72, 90),
    size("full", 81, 96),
    size("queen", 90, 108),
    size("king", 120, 120),
  ],
};

/**
 * A quilt for a mattress: the drop on both sides and at the foot, and a tuck for the pillows where one
 * is wanted (10 to 14 in is common practice; two quilters' blogs).
 */
export const quiltForBed = (
  bed: PublishedSize,
  drop: number,
  tuck = 0,
): { readonly width: number; readonly length: number } => ({
  width: bed.width + 2 * drop,
  length: bed.length + drop + tuck,
});

/** The smallest packaged batting that holds this, either way round; undefined when none does. */
export function packagedBatting(width: number, length: number): PublishedSize | undefined {
  const holds = (b: PublishedSize): boolean =>
    (b.width >= width && b.length >= length) || (b.length >= width && b.width >= length);
  return BATTINGS.sizes.filter(holds).sort((a, b) => a.width * a.length - b.width * b.length)[0];
}
