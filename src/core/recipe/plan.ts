import {
  boundingBox,
  crossing,
  depth,
  distance,
  edges,
  type HalfPlane,
  halfPlanes,
  intersect,
  type Point,
  type Polygon,
  point,
} from "../geometry/index.ts";
import type { Degree, Length, Step, Unit } from "../measure/index.ts";
import type { Piece } from "../piece/index.ts";
import type { DemandShape } from "./demand-types.ts";
import type { Ruler } from "./ruler.ts";
import type { Cut, RecipeKind } from "./types.ts";

/** What a way of cutting may look at. */
export interface Bench {
  readonly unit: Unit;
  readonly step: Step;
  /** The maker's wedge ruler for a piece of this angle; undefined when the point is no wedge's. */
  readonly ruler?: Ruler;
  readonly directional: boolean;
}

/**
 * One way to cut one piece: the cuts, and what they really yield (`raw`) over the finished patch, in
 * the frame in which the blank lies on the fabric with x along the strip. Proved elsewhere.
 */
export interface CutPlan {
  readonly kind: RecipeKind;
  readonly cuts: readonly Cut[];
  readonly raw: Polygon;
  readonly setEdges: readonly number[];
  readonly finished: Polygon;
  /** The length the maker may enlarge or that sets the size, as planned and as geometry wants it. */
  readonly size: Length;
  readonly exactSize: Length;
  /** May `size` be chosen? Not where it sets the finished size. */
  readonly enlargeable: boolean;
  /** Lengths that set the patch and must not be rounded: strip, width, side ... */
  readonly setting: readonly Length[];
  readonly piecesEach: number;
  /** One go of the cuts gives lefts only, rights only, or either as the slice is laid. */
  readonly hands: "as-piece" | "either";
  readonly shape: DemandShape;
  /** May it be sewn together from several widths of the fabric? */
  readonly joinsAllowed?: boolean;
  /** Angle by which the blank is turned against the piece's own frame. */
  readonly turned: Degree;
}

export interface Way {
  readonly kind: RecipeKind;
  /** Can the piece be cut like this at all? */
  readonly fits: (piece: Piece, bench: Bench) => boolean;
  /** The plan at a size, or at the size it would take by itself. */
  readonly plan: (piece: Piece, bench: Bench, size?: Length) => CutPlan;
}

/** A raw edge to be: where it runs, and whether the maker lines it up. */
export interface RawPlane {
  readonly plane: HalfPlane;
  readonly set: boolean;
}

/**
 * The polygon the cuts leave of a blank no longer than `size`, and which of its edges are set. Planes
 * that cut nothing leave none.
 */
export function rawFrom(
  planes: readonly RawPlane[],
  size: Length,
): { raw: Polygon; setEdges: number[] } {
  const raw = withoutSplinters(
    intersect(
      planes.map((p) => p.plane),
      // Well outside any point a blank of this size can have, or sharp corners would be clipped.
      FAR * size,
      size * 1e-12,
    ),
    size * 1e-10,
  );
  const on = (h: HalfPlane, p: Point) => Math.abs(depth(h, p)) < size * 1e-9;
  const setEdges = edges(raw).flatMap((e, i) =>
    planes.some(({ plane, set }) => set && on(plane, e.from) && on(plane, e.to)) ? [i] : [],
  );
  return { raw, setEdges };
}

const FAR = 16;

/** Two planes that meet on a third leave an edge of no length: take one of its ends out. */
const withoutSplinters = (p: Polygon, shortest: Length): Polygon =>
  p.filter((v, i) => distance(v, p[(i + 1) % p.length]) > shortest);

export interface Size {
  readonly width: Length;
  readonly height: Length;
}

/** Longest way across the blank of a piece: its box, and the size asked for when that is more. */
export const spanOf = (p: Polygon, size: Length = 0): Length => {
  const { width, height } = sizeOf(p);
  return width + height + size;
};

export const sizeOf = (p: Polygon): Size => {
  const b = boundingBox(p);
  return { width: b.right - b.left, height: b.top - b.bottom };
};

/** Inner angle at each vertex, in degrees. */
export function anglesOf(p: Polygon): Degree[] {
  return p.map((v, i) => {
    const a = p[(i + p.length - 1) % p.length];
    const b = p[(i + 1) % p.length];
    const turn = Math.atan2(a.y - v.y, a.x - v.x) - Math.atan2(b.y - v.y, b.x - v.x);
    return ((((turn * 180) / Math.PI) % 360) + 360) % 360;
  });
}

/** Two angles, or lengths of one piece, that are meant to be equal. */
export const near = (a: number, b: number, slack = 1e-6): boolean => Math.abs(a - b) <= slack;

/** Edges of the cut piece that lie along a side of its box, by side; undefined where none does. */
export interface BoxSides {
  readonly bottom?: number;
  readonly right?: number;
  readonly top?: number;
  readonly left?: number;
}

export function boxSides(p: Polygon): BoxSides {
  const planes = halfPlanes(p);
  const find = (n: Point) => {
    const at = planes.findIndex((h) => near(h.n.x, n.x, 1e-9) && near(h.n.y, n.y, 1e-9));
    return at < 0 ? undefined : at;
  };
  const found = {
    bottom: find(point(0, -1)),
    right: find(point(1, 0)),
    top: find(point(0, 1)),
    left: find(point(-1, 0)),
  };
  return Object.fromEntries(Object.entries(found).filter(([, v]) => v !== undefined));
}

/** Corner of two planes that are known to meet. */
export function corner(a: HalfPlane, b: HalfPlane): Point {
  const at = crossing(a, b);
  if (!at) throw new RangeError("corner: two lines that meet expected, got parallel ones");
  return at;
}

/** The demand of a blank that is not nested. */
export const blank = ({ width, height }: Size): DemandShape => ({
  kind: "rect",
  first: width,
  pitch: width,
  height,
});
