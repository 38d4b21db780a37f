import type { RulerText } from "../brief/schema.ts";
import { knownLength, type Length, parseLength, type Radian, type Unit } from "../measure/index.ts";

/**
 * A wedge ruler, known by what is fixed on it: its angle and `missing`, the height that lacks from
 * its tip (0 when it runs to a sharp point). Where the finished center falls is an answer, not a
 * fact: it moves with the seam (docs/geometry/rulers.md).
 */
export interface Ruler {
  readonly n: number;
  readonly angle: Radian;
  readonly missing: Length;
  readonly point: "sharp" | "blunt" | "flat";
  readonly shortest?: Length;
  readonly longest?: Length;
}

/** The seam a blunt ruler was made for, unless the maker says another: 1/4 in, common practice. */
export const MADE_FOR = "1/4 in";

/**
 * The ruler for wedges of which n fill the circle, read from a brief. Lengths without a unit are in
 * the document's. "Blunt p past the center" cannot lie past the sharp point; it is then sharp.
 */
export function rulerOf(text: RulerText, n: number, unit: Unit): Ruler {
  const angle = (2 * Math.PI) / n;
  const length = (s: string | undefined) => (s === undefined ? undefined : knownLength(s, unit));
  return {
    n,
    angle,
    ...pointFacts(text.point, angle, unit),
    ...(text.shortest === undefined ? {} : { shortest: length(text.shortest) }),
    ...(text.longest === undefined ? {} : { longest: length(text.longest) }),
  };
}

function pointFacts(
  point: RulerText["point"],
  angle: Radian,
  unit: Unit,
): Pick<Ruler, "missing" | "point"> {
  if (point === "sharp") return { missing: 0, point: "sharp" };
  if ("flat" in point) {
    const tip = knownLength(point.flat, unit);
    return { missing: tip / (2 * Math.tan(angle / 2)), point: "flat" };
  }
  const seam = knownLength(point.seam ?? MADE_FOR, unit);
  const past = knownLength(point.blunt, unit);
  return { missing: Math.max(0, seam / Math.sin(angle / 2) - past), point: "blunt" };
}

/** `sharp`, `blunt`, `blunt:3/16`, `flat:3/8` as typed on a command line; undefined when neither. */
export function readPoint(text: string, unit: Unit): RulerText["point"] | undefined {
  const [kind, size, ...more] = text.trim().split(":");
  if (more.length > 0) return undefined;
  if (kind === "sharp") return size === undefined ? "sharp" : undefined;
  if (kind === "blunt" && size === undefined) return { blunt: "1/4 in" };
  if (size === undefined || !parseLength(size, unit).ok) return undefined;
  if (kind === "blunt") return { blunt: size };
  return kind === "flat" ? { flat: size } : undefined;
}

/** Width of the ruler's flat tip, 0 when it is sharp. */
export const flatTip = (r: Ruler): Length => 2 * r.missing * Math.tan(r.angle / 2);

/** What the seams take from strip to finished octagon: one at the outer edge, two at the point. */
const taken = (r: Ruler, seam: Length): Length => seam + seam / Math.sin(r.angle / 2);

/** Half the finished width across flats, a = W + D - SA - SA / sin(A/2). */
export const halfAcross = (r: Ruler, strip: Length, seam: Length): Length =>
  strip + r.missing - taken(r, seam);

/** The strip that finishes `a` from center to flat: halfAcross turned round. */
export const stripFor = (r: Ruler, a: Length, seam: Length): Length =>
  a - r.missing + taken(r, seam);

/** How far past the finished center the wedge is cut: p = SA / sin(A/2) - D. */
export const pastCenter = (r: Ruler, seam: Length): Length =>
  seam / Math.sin(r.angle / 2) - r.missing;

/** Width of the wedge as cut along the strip's lower edge. */
export const wedgeBase = (r: Ruler, strip: Length): Length =>
  2 * (strip + r.missing) * Math.tan(r.angle / 2);
