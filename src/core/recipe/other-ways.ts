import {
  add,
  crossing,
  distance,
  type HalfPlane,
  halfPlanes,
  intersect,
  leftHalfPlane,
  moved,
  type Point,
  type Polygon,
  point,
  scale,
} from "../geometry/index.ts";
import { type Degree, type Length, toDegrees, type Unit } from "../measure/index.ts";
import { type Proof, prove } from "./proof.ts";
import { slipOf } from "./read-ruler.ts";
import { flatTip, halfAcross, type Ruler, wedgeBase } from "./ruler.ts";

export type OtherWayKind =
  | "ruler"
  | "extended"
  | "two-passes"
  | "two-marks"
  | "folded-square"
  | "template";

/** What one slip of 1/32 in does, when every wedge of the circle has it. */
export interface SlipCost {
  readonly slip: Length;
  /** Change of the finished octagon across flats (hexagon ...). */
  readonly across: Length;
  /** All angles of the circle together too wide (more than 0) or too narrow. */
  readonly misfit: Degree;
  /** Outer edge too much (more than 0: ruffles) or too little (cups), all round. */
  readonly outerEdge: Length;
}

/** One way to cut the same wedge, with what to measure for it, its own proof, and what a slip costs. */
export interface OtherWay {
  readonly kind: OtherWayKind;
  /** Named lengths the maker needs: base, tip, height, square ... */
  readonly lengths: Readonly<Record<string, Length>>;
  readonly polygon: Polygon;
  readonly proof: Proof;
  readonly cost: SlipCost;
}

/** The wedge to be cut: by a ruler, or none; the frame has the base's middle at the origin, y up. */
export interface WedgeToCut {
  readonly ruler: Ruler;
  readonly strip: Length;
  readonly seam: Length;
  readonly unit: Unit;
  /** False when the maker has no wedge ruler and only the point style is wanted. */
  readonly hasRuler: boolean;
}

interface Built {
  readonly kind: OtherWayKind;
  readonly lengths: Readonly<Record<string, Length>>;
  /** Right leg, left leg, base and tip as cut. */
  readonly lines: Lines;
  readonly slipped: Lines;
}

interface Lines {
  readonly right: HalfPlane;
  readonly left: HalfPlane;
  readonly base: HalfPlane;
  readonly tip: HalfPlane;
}

/**
 * The same wedge by any ruler, or none (docs/geometry/rulers.md). Each way builds its polygon by its
 * own construction, so that the proofs say that they agree. Ways that need a ruler are left out when
 * there is none; a ruler long enough needs no lengthening; folding a square gives only the angles
 * 45 and 22.5.
 */
export function otherWays(w: WedgeToCut): OtherWay[] {
  const { ruler, strip } = w;
  const short = w.hasRuler && ruler.longest !== undefined && ruler.longest < strip - 1e-9;
  const built = [
    ...(w.hasRuler && !short ? [byRuler(w)] : []),
    ...(short ? [extended(w, ruler.longest!), twoPasses(w, ruler.longest!)] : []),
    twoMarks(w),
    ...(ruler.n === 8 || ruler.n === 16 ? [foldedSquare(w)] : []),
    byTemplate(w),
  ];
  return built.map((b) => finish(b, w));
}

function finish(b: Built, w: WedgeToCut): OtherWay {
  const polygon = polygonOf(b.lines, w.strip);
  const { finished, allowances } = finishedWedge(w);
  const setEdges = halfPlanes(polygon).flatMap((h, i) => (h.n.y > 0.99 ? [] : [i]));
  return {
    kind: b.kind,
    lengths: b.lengths,
    polygon,
    proof: prove({ finished, allowances, raw: polygon, setEdges }, w.unit),
    cost: costOf(b.slipped, w),
  };
}

const polygonOf = (l: Lines, size: Length): Polygon =>
  intersect([l.base, l.right, l.tip, l.left], 8 * size, size * 1e-12);

function finishedWedge({ ruler, strip, seam }: WedgeToCut) {
  const a = halfAcross(ruler, strip, seam);
  const half = a * Math.tan(ruler.angle / 2);
  return {
    finished: [point(-half, seam), point(half, seam), point(0, seam + a)],
    allowances: [seam, seam, seam],
  };
}

/** Base and tip at their heights, legs through the given points, each from the base up. */
function linesBetween(strip: Length, right: [Point, Point], left: [Point, Point]): Lines {
  return {
    base: leftHalfPlane(point(0, 0), point(1, 0)),
    tip: { n: point(0, 1), c: strip },
    right: leftHalfPlane(...right),
    left: leftHalfPlane(left[1], left[0]),
  };
}

const corners = ({ ruler, strip }: WedgeToCut) => ({
  base: wedgeBase(ruler, strip) / 2,
  tip: flatTip(ruler) / 2,
});

/** By the ruler itself: its line on the strip's edge. A slip is the whole ruler laid too high. */
function byRuler(w: WedgeToCut): Built {
  const t = Math.tan(w.ruler.angle / 2);
  const peak = point(0, w.strip + w.ruler.missing);
  const legs = (top: Point) =>
    linesBetween(w.strip, [point(top.y * t, 0), top], [point(-top.y * t, 0), top]);
  return {
    kind: "ruler",
    lengths: { line: w.strip },
    lines: legs(peak),
    slipped: legs(add(peak, point(0, slipOf(w.unit)))),
  };
}

/**
 * A ruler that ends too soon, lengthened by a straight edge laid along it: the ruler's own tip on
 * the strip's far edge, its legs drawn as far as they go, then on to the near edge. A slip of the
 * straight edge at the ruler's lower end grows with the length beyond it.
 */
function extended(w: WedgeToCut, longest: Length): Built {
  const t = Math.tan(w.ruler.angle / 2);
  const { tip } = corners(w);
  const low = w.strip - longest;
  const end = tip + longest * t;
  const leg = (slip: Length): [Point, Point] => [point(end + slip, low), point(tip, w.strip)];
  const left: [Point, Point] = [point(-end, low), point(-tip, w.strip)];
  return {
    kind: "extended",
    lengths: { ruler: longest, beyond: low / Math.cos(w.ruler.angle / 2) },
    lines: linesBetween(w.strip, leg(0), left),
    slipped: linesBetween(w.strip, leg(slipOf(w.unit)), left),
  };
}

/**
 * A ruler that ends too soon, used twice on each leg: from a mark on the base, then slid up along the
 * edge just cut. A slip moves the leg sideways; taken over its whole length, the most it can do.
 */
function twoPasses(w: WedgeToCut, longest: Length): Built {
  const { base, tip } = corners(w);
  const t = Math.tan(w.ruler.angle / 2);
  const right: [Point, Point] = [point(base, 0), point(base - longest * t, longest)];
  const left: [Point, Point] = [point(-base, 0), point(-base + longest * t, longest)];
  const lines = linesBetween(w.strip, right, left);
  return {
    kind: "two-passes",
    lengths: { base: 2 * base, tip: 2 * tip, first: longest, second: w.strip - longest },
    lines,
    slipped: { ...lines, right: moved(lines.right, -slipOf(w.unit)) },
  };
}

/**
 * A plain ruler and marks: half the base to each side of a center line on the near edge, half the
 * tip on the far edge. A slip is one base mark too far out.
 */
function twoMarks(w: WedgeToCut): Built {
  const { base, tip } = corners(w);
  const leg = (slip: Length): [Point, Point] => [point(base + slip, 0), point(tip, w.strip)];
  const left: [Point, Point] = [point(-base, 0), point(-tip, w.strip)];
  return {
    kind: "two-marks",
    lengths: { height: w.strip, base: 2 * base, tip: 2 * tip },
    lines: linesBetween(w.strip, leg(0), left),
    slipped: linesBetween(w.strip, leg(slipOf(w.unit)), left),
  };
}

/**
 * A paper square folded corner to corner: its corner becomes 45 degrees (22.5 when folded again),
 * the last fold halves it, and the wedge's height is marked along that fold. The side must be as long
 * as the wedge's leg. A slip is the fold ending that far off the square's corner.
 */
function foldedSquare(w: WedgeToCut): Built {
  const full = w.strip + w.ruler.missing;
  const side = full / Math.cos(w.ruler.angle / 2);
  const folds = w.ruler.n === 8 ? 1 : 2;
  const angle = Math.PI / 2 / 2 ** folds;
  const peak = point(0, full);
  const far = (half: number) => add(peak, scale(point(Math.sin(half), -Math.cos(half)), side));
  const error = slipOf(w.unit) / side;
  const left: [Point, Point] = [far(-angle / 2), peak];
  return {
    kind: "folded-square",
    lengths: { square: side, folds: folds + 1, height: full, tip: flatTip(w.ruler) },
    lines: linesBetween(w.strip, [far(angle / 2), peak], left),
    slipped: linesBetween(w.strip, [far(angle / 2 + error), peak], left),
  };
}

/** Round a true-scale template: a slip is the line drawn, and cut, that far outside it all round. */
function byTemplate(w: WedgeToCut): Built {
  const { base, tip } = corners(w);
  const lines = linesBetween(
    w.strip,
    [point(base, 0), point(tip, w.strip)],
    [point(-base, 0), point(-tip, w.strip)],
  );
  const slip = slipOf(w.unit);
  return {
    kind: "template",
    lengths: { height: w.strip, base: 2 * base, tip: 2 * tip },
    lines,
    slipped: {
      base: moved(lines.base, slip),
      tip: moved(lines.tip, slip),
      right: moved(lines.right, slip),
      left: moved(lines.left, slip),
    },
  };
}

/** Sews the slipped wedge, every seam its allowance inside the raw edge, and compares. */
function costOf(l: Lines, { ruler, strip, seam, unit }: WedgeToCut): SlipCost {
  const [right, left, base] = [l.right, l.left, l.base].map((h) => moved(h, -seam));
  const peak = meeting(right, left);
  const from = meeting(left, base);
  const to = meeting(base, right);
  const high = base.c - (base.n.x * peak.x + base.n.y * peak.y);
  const angle = Math.PI - Math.acos(right.n.x * left.n.x + right.n.y * left.n.y);
  const wanted = 2 * high * Math.tan(ruler.angle / 2);
  return {
    slip: slipOf(unit),
    across: 2 * (high - halfAcross(ruler, strip, seam)),
    misfit: ruler.n * (toDegrees(angle) - toDegrees(ruler.angle)),
    outerEdge: ruler.n * (distance(from, to) - wanted),
  };
}

function meeting(a: HalfPlane, b: HalfPlane): Point {
  const at = crossing(a, b);
  if (!at) throw new RangeError("a wedge's edges meet; these are parallel");
  return at;
}
