import { add, type Point, type Polygon, point, scale } from "../../geometry/index.ts";
import type { Length, Unit } from "../../measure/index.ts";
import {
  halfAcross,
  type Proof,
  pastCenter,
  prove,
  type Ruler,
  wedgeBase,
} from "../../recipe/index.ts";

/** A circle of wedges as it is cut now. */
export interface CutCircle {
  readonly ruler: Ruler;
  readonly strip: Length;
  readonly seam: Length;
  readonly unit: Unit;
}

/** The same circle with its points left off, and a patch of n sides in the middle. */
export interface CenterHole {
  readonly n: number;
  /** Finished, across flats. */
  readonly hole: Length;
  readonly circle: Length;
  /** Strip for the shortened wedges: both edges of it set the patch. */
  readonly strip: Length;
  /** Widths of the shortened wedge along the two edges of the strip, as cut. */
  readonly wide: Length;
  readonly narrow: Length;
  /** Lines of her ruler that lie on the two edges; the lower one absent where the ruler has none. */
  readonly wideLine: Length;
  readonly narrowLine?: Length;
  /** The patch in the middle, as cut, across flats. */
  readonly patch: Length;
  /** What is cut off each corner of a square of that size, along its sides; eight sides only. */
  readonly corner?: Length;
  /** Across a finished round patch that is stitched over the opening and hides its corners. */
  readonly round: Length;
  readonly proof: Proof;
}

/**
 * Wedges shortened by the hole: with b half the hole across flats and S the seam, the strip is
 * a - b + 2 S, the wedge (b - S) 2 tan(A/2) + 2 S / cos(A/2) wide at its narrow edge, and the ruler's
 * line there is b - S + S / sin(A/2) - D (docs/geometry/rulers.md). The polygon is built from those
 * lines as the ruler cuts them and proved against the finished patch. Undefined where no hole of that
 * size leaves a ring at least a seam wide.
 */
export function centerHole(
  { ruler, strip, seam, unit }: CutCircle,
  hole: Length,
): CenterHole | undefined {
  const half = ruler.angle / 2;
  const a = halfAcross(ruler, strip, seam);
  const b = hole / 2;
  if (!(b > 0) || a - b < seam) return undefined;
  const height = a - b + 2 * seam;
  const narrowLine = b - seam + pastCenter(ruler, seam);
  const wide = wedgeBase(ruler, strip);
  const narrow = wedgeBase(ruler, narrowLine);
  const raw: Polygon = trapezoid(wide, narrow, height);
  const finished: Polygon = trapezoid(2 * a * Math.tan(half), 2 * b * Math.tan(half), a - b).map(
    (v) => add(v, point(0, seam)),
  );
  const patch = hole + 2 * seam;
  return {
    n: ruler.n,
    hole,
    circle: 2 * a,
    strip: height,
    wide,
    narrow,
    wideLine: strip,
    ...(narrowLine > 0 && { narrowLine }),
    patch,
    ...(ruler.n === 8 && { corner: patch * (1 - Math.SQRT1_2) }),
    round: hole / Math.cos(half),
    // No edge is taken for granted: the patch slides freely, and still has its seam on all four.
    proof: prove({ finished, allowances: finished.map(() => seam), raw, setEdges: [] }, unit),
  };
}

/** Wide edge below, from the origin up; anticlockwise. */
const trapezoid = (wide: Length, narrow: Length, height: Length): Point[] => [
  scale(point(-wide, 0), 1 / 2),
  scale(point(wide, 0), 1 / 2),
  point(narrow / 2, height),
  point(-narrow / 2, height),
];
