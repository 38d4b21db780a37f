import { halfPlanes, moved, point } from "../geometry/index.ts";
import { type Length, roundDown, roundUp } from "../measure/index.ts";
import type { Piece } from "../piece/index.ts";
import {
  anglesOf,
  type Bench,
  blank,
  boxSides,
  type CutPlan,
  near,
  type RawPlane,
  rawFrom,
  sizeOf,
  spanOf,
  type Way,
} from "./plan.ts";
import type { RecipeKind } from "./types.ts";

const isRectangle = (p: Piece): boolean =>
  p.cut.length === 4 && anglesOf(p.cut).every((a) => near(a, 90));

/** Borders and sashes: long strips, joined where need be, cut to the length that is measured. */
const isMeasured = (p: Piece): boolean => p.roles.every((r) => r === "border" || r === "sash");

/** A rectangle from a strip: all four edges are set, so neither side may be rounded. */
export const rectangle: Way = {
  kind: "rectangle",
  fits: isRectangle,
  plan: (piece) => {
    const { width, height } = sizeOf(piece.cut);
    const long = Math.max(width, height);
    const short = Math.min(width, height);
    return {
      kind: "rectangle",
      cuts: [
        { op: "strip", lengths: [short], setEdges: [0, 2] },
        { op: "crosscut", lengths: [long], setEdges: [1, 3] },
      ],
      ...rawFrom(
        halfPlanes(piece.cut).map((plane) => ({ plane, set: true })),
        spanOf(piece.cut),
      ),
      finished: piece.finished,
      size: short,
      exactSize: short,
      enlargeable: false,
      setting: isMeasured(piece) ? [short] : [short, long],
      piecesEach: 1,
      hands: "as-piece",
      joinsAllowed: piece.roles.some((r) => r === "border" || r === "sash"),
      shape: blank({ width, height }),
      turned: 0,
    };
  },
};

/** Top edge of a piece that has two sides along the strip, or the point of one that has one. */
interface Along {
  readonly base: Length;
  readonly top: Length;
  readonly height: Length;
  readonly topEdge?: number;
}

function along(piece: Piece): Along | undefined {
  const { height } = sizeOf(piece.cut);
  const { top } = boxSides(piece.cut);
  // One edge up each side: a triangle, or a shape with two parallel sides.
  if (piece.cut.length !== (top === undefined ? 3 : 4)) return undefined;
  return {
    base: piece.edges[0].cut,
    top: top === undefined ? 0 : piece.edges[top].cut,
    height,
    ...(top === undefined ? {} : { topEdge: top }),
  };
}

const isTriangle = (p: Piece): boolean => p.cut.length === 3;

const isIsosceles = (p: Piece): boolean => {
  const angles = anglesOf(p.cut);
  return isTriangle(p) && near(angles[0], angles[1]);
};

/**
 * A wedge, or another triangle standing on one side, nested head to tail along a strip. A block's
 * wedge is cut by the maker's ruler, so its strip follows from the flat tip and is never rounded.
 * Any other triangle may lose some of its point, so a strip on the ruler's marks is taken where the
 * needle still finds its allowance.
 */
export const wedge: Way = {
  kind: "wedge",
  fits: isIsosceles,
  plan: (piece, bench, size) => {
    const { width, height } = sizeOf(piece.cut);
    const missing = missingTip(piece, bench, height, size);
    const strip = height - missing;
    const tip = (width * missing) / height;
    const planes: RawPlane[] = halfPlanes(piece.cut).map((plane) => ({ plane, set: true }));
    planes.push({ plane: { n: point(0, 1), c: strip }, set: false });
    const byRuler = piece.setsSize;
    return {
      kind: "wedge",
      cuts: [
        { op: "strip", lengths: [strip], setEdges: [0] },
        { op: byRuler ? "wedge" : "slant", lengths: [width, tip], setEdges: [1, 2] },
      ],
      ...rawFrom(planes, spanOf(piece.cut)),
      finished: piece.finished,
      size: strip,
      exactSize: byRuler ? strip : height,
      enlargeable: !byRuler,
      setting: byRuler ? [strip] : [],
      piecesEach: 1,
      hands: "as-piece",
      shape: nested(width, width, tip, strip, bench),
      turned: 0,
    };
  },
};

/** Height of the point left off: the ruler's for a block's wedge, else down to a mark of the ruler. */
function missingTip(piece: Piece, bench: Bench, height: Length, size?: Length): Length {
  if (piece.setsSize) return size === undefined ? (bench.ruler?.missing ?? 0) : height - size;
  if (size !== undefined) return Math.max(0, height - size);
  const half = ((anglesOf(piece.cut)[2] / 2) * Math.PI) / 180;
  const seam = piece.edges[1].allowance;
  // The needle meets the tip from both legs: p / sin(half) must be a full allowance.
  const most = seam / Math.sin(half) - seam * Math.sin(half);
  const marked = roundDown(height, bench.step);
  return height - marked <= most ? height - marked : 0;
}

/**
 * Head to tail each further piece takes the mean of base and top; all one way up it takes the wider.
 * Bound for leaning shapes: docs/geometry/allowance.md.
 */
const nested = (first: Length, base: Length, top: Length, height: Length, bench: Bench) => ({
  kind: "nested" as const,
  first,
  pitch: bench.directional ? Math.max(base, top) : (base + top) / 2,
  height,
});

const parallelKind = (p: Piece): RecipeKind | undefined => {
  const a = along(p);
  if (!a || isRectangle(p)) return undefined;
  if (a.topEdge === undefined) return isIsosceles(p) ? undefined : "parallel";
  if (!near(a.base, a.top)) return "trapezoid";
  const rhombus = p.edges.every((e) => near(e.cut, p.edges[0].cut));
  return rhombus ? "diamond" : "parallel";
};

/** A strip with slanting ends: trapezoids, diamonds, other pieces with two sides along the strip. */
const slanted = (kind: RecipeKind): Way => ({
  kind,
  fits: (piece) => parallelKind(piece) === kind,
  plan: (piece, bench, size) => slantedPlan(kind, piece, bench, size),
});

export const trapezoid = slanted("trapezoid");
export const diamond = slanted("diamond");
export const parallel = slanted("parallel");

/**
 * The surplus of a strip rounded up lies on an edge that is on the outside of the block, where it is
 * trimmed; where neither long side is, the strip sets the patch and is exact.
 */
function slantedPlan(kind: RecipeKind, piece: Piece, bench: Bench, size?: Length): CutPlan {
  const a = along(piece);
  if (!a) throw new RangeError(`${piece.id}: two sides along the strip expected`);
  const loose = [0, a.topEdge].find((e) => e !== undefined && piece.edges[e].outside);
  const strip = loose === undefined ? a.height : (size ?? roundUp(a.height, bench.step));
  const surplus = strip - a.height;
  const planes = halfPlanes(piece.cut).map((plane, i) =>
    i === loose ? { plane: moved(plane, surplus), set: false } : { plane, set: true },
  );
  const made = rawFrom(planes, spanOf(piece.cut, strip));
  const { width } = sizeOf(made.raw);
  const along0 = lengthAlong(made.raw, -1);
  const alongTop = lengthAlong(made.raw, 1);
  return {
    kind,
    cuts: [
      { op: "strip", lengths: [strip], setEdges: loose === undefined ? [0] : [] },
      { op: "slant", lengths: [along0, alongTop], setEdges: [] },
    ],
    ...made,
    finished: piece.finished,
    size: strip,
    exactSize: a.height,
    enlargeable: loose !== undefined,
    setting: loose === undefined ? [strip] : [],
    piecesEach: 1,
    hands: "as-piece",
    shape: nested(width, along0, alongTop, strip, bench),
    turned: 0,
  };
}

/** Length of the raw edge at the bottom (-1) or top (1) of the strip, 0 when a corner is there. */
function lengthAlong(raw: readonly { x: Length; y: Length }[], sign: 1 | -1): Length {
  const level = Math.max(...raw.map((v) => v.y * sign));
  const xs = raw.filter((v) => near(v.y * sign, level)).map((v) => v.x);
  return Math.max(...xs) - Math.min(...xs);
}
