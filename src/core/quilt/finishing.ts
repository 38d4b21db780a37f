import { type Brief, seamOf, usableWidth } from "../brief/index.ts";
import {
  inchToLength,
  knownLength,
  type Length,
  roundUp,
  type Step,
  type Unit,
} from "../measure/index.ts";

/** Seam of joined backing panels: 1/2 in, selvages cut off first (longarm quilters' preparation pages). */
const BACKING_SEAM_INCH = 0.5;
/** Over the perimeter, for mitred corners and closing the ends: 10 in (a teacher's quilt maths page). */
const BINDING_SPARE_INCH = 10;

export interface BindingFacts {
  readonly fabricId: string;
  /** Width of the strip as cut, folded double over the edge. */
  readonly strip: Length;
  readonly cut: "straight" | "bias";
  readonly perimeter: Length;
  readonly spare: Length;
  /** Length the joined strip must have. */
  readonly length: Length;
  /** Length of strip used up by each join, for the way she joins. */
  readonly joinLoss: Length;
  /** Bias from one square: its side, on the step. */
  readonly square?: Length;
}

export interface BackingFacts {
  readonly fabricId: string;
  readonly width: Length;
  readonly height: Length;
  readonly overhang: Length;
  /** Panels as cut, and how the seams between them run; one panel has none. */
  readonly panels: number;
  readonly panelWidth: Length;
  readonly panelLength: Length;
  readonly seams: "none" | "upright" | "level";
  readonly seam: Length;
}

export interface BattingFacts {
  readonly width: Length;
  readonly height: Length;
  readonly overhang: Length;
}

export interface FinishingFacts {
  readonly binding?: BindingFacts;
  readonly backing?: BackingFacts;
  readonly batting?: BattingFacts;
}

interface Top {
  /** Unfinished: the raw edge that is bound. */
  readonly width: Length;
  readonly height: Length;
}

/**
 * Binding, backing and batting for a top whose raw edges measure `top`. `backingWidth` stands in for
 * the usable width of the backing fabric.
 */
export function finishingOf(
  brief: Brief,
  top: Top,
  step: Step,
  backingWidth?: Length,
): FinishingFacts {
  const { finishing, unit } = brief;
  return {
    ...(finishing?.binding && { binding: bindingOf(finishing.binding, brief, top, step) }),
    ...(finishing?.backing && { backing: backingOf(finishing.backing, brief, top, backingWidth) }),
    ...(finishing?.batting && {
      batting: battingOf(knownLength(finishing.batting.overhang, unit), top),
    }),
  };
}

type Binding = NonNullable<NonNullable<Brief["finishing"]>["binding"]>;

function bindingOf(b: Binding, brief: Brief, top: Top, step: Step): BindingFacts {
  const { unit } = brief;
  const strip = knownLength(b.width, unit);
  const spare =
    b.spare === undefined ? inchToLength(BINDING_SPARE_INCH, unit) : knownLength(b.spare, unit);
  const perimeter = 2 * (top.width + top.height);
  const length = perimeter + spare;
  return {
    fabricId: b.fabric,
    strip,
    cut: b.cut,
    perimeter,
    spare,
    length,
    joinLoss: joinLoss(b.join, strip, seamOf(brief)),
    ...(b.cut === "bias" && {
      square: biasSquare(length, strip, seamOf(brief), step),
    }),
  };
}

/**
 * Length of strip that one join uses up (docs/geometry/binding.md). slant: square ends laid at right
 * angles, sewn corner to corner across the overlap: one strip width. slant-cut: square ends first
 * cut at 45 degrees: the strip width and 2 SA / sin 45. straight: 2 SA.
 */
export function joinLoss(join: Binding["join"], strip: Length, seam: Length): Length {
  if (join === "slant") return strip;
  return join === "straight" ? 2 * seam : strip + 2 * seam * Math.SQRT2;
}

/**
 * Continuous bias from a square of side q gives (q^2 - 4 SA q) / strip: both seams of the tube take
 * two allowances over a side of the square. The side rounded up to the step.
 */
export function biasSquare(length: Length, strip: Length, seam: Length, step: Step): Length {
  const side = 2 * seam + Math.sqrt(4 * seam * seam + length * strip);
  return roundUp(side, step);
}

export const biasLength = (square: Length, strip: Length, seam: Length): Length =>
  (square * square - 4 * seam * square) / strip;

type Backing = NonNullable<NonNullable<Brief["finishing"]>["backing"]>;

/** One piece where the fabric is wide enough; else panels side by side or one above the other, whichever takes less. */
function backingOf(b: Backing, brief: Brief, top: Top, width?: Length): BackingFacts {
  const { unit } = brief;
  const overhang = knownLength(b.overhang, unit);
  const size = { width: top.width + 2 * overhang, height: top.height + 2 * overhang };
  const fabric = brief.fabrics.find((f) => f.id === b.fabric)!;
  const usable = width ?? usableWidth(brief, fabric);
  const upright = panelsAcross(size.width, size.height, usable, unit);
  const level = panelsAcross(size.height, size.width, usable, unit);
  const seamless = upright.panels === 1 || level.panels === 1;
  const best = (p: { panels: number; total: Length }): Length =>
    seamless && p.panels > 1 ? Number.POSITIVE_INFINITY : p.total;
  const sideBySide = best(upright) <= best(level);
  const plan = sideBySide ? upright : level;
  const seams = plan.panels === 1 ? "none" : sideBySide ? "upright" : "level";
  return {
    fabricId: b.fabric,
    ...size,
    overhang,
    panels: plan.panels,
    panelWidth: plan.width,
    panelLength: plan.length,
    seams,
    seam: plan.seam,
  };
}

function panelsAcross(across: Length, length: Length, usable: Length, unit: Unit) {
  const seam = inchToLength(BACKING_SEAM_INCH, unit);
  const panels = Math.max(1, Math.ceil((across - 2 * seam) / (usable - 2 * seam) - 1e-9));
  const width = (across + 2 * seam * (panels - 1)) / panels;
  return { panels, width, length, total: panels * length, seam };
}

const battingOf = (overhang: Length, top: Top): BattingFacts => ({
  width: top.width + 2 * overhang,
  height: top.height + 2 * overhang,
  overhang,
});
