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

/** One line of a published list. */
export const size = (name: string, width: number, length: number): PublishedSize => ({
  name,
  width,
  length,
});
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

/** The smallest packaged batting that holds this, either way round; undefined when none does. */
export function packagedBatting(width: number, length: number): PublishedSize | undefined {
  const holds = (b: PublishedSize): boolean =>
    (b.width >= width && b.length >= length) || (b.length >= width && b.width >= length);
  return BATTINGS.sizes.filter(holds).sort((a, b) => a.width * a.length - b.width * b.length)[0];
}
