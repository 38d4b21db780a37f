import { type PublishedSize, type SizeList, size } from "./bedSizes.ts";

/* What published sizes of quilts are held against. Nothing that is shipped asks for mattresses. */

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
