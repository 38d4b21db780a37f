import { dot, type HalfPlane, halfPlanes, moved, type Point, point } from "../geometry/index.ts";
import { type Length, liesOnStep, roundUp } from "../measure/index.ts";
import type { Piece } from "../piece/index.ts";
import {
  anglesOf,
  type Bench,
  type BoxSides,
  blank,
  boxSides,
  type CutPlan,
  corner,
  near,
  type RawPlane,
  rawFrom,
  sizeOf,
  spanOf,
  type Way,
} from "./plan.ts";
import type { Cut, Mark, RecipeKind } from "./types.ts";

/** How one side of the blank stands to the piece: an edge sewn, an edge trimmed, or only a point. */
type SideUse = "sewn" | "trimmed" | "point";

interface BlankSides {
  readonly x: readonly [SideUse, SideUse];
  readonly y: readonly [SideUse, SideUse];
}

function usesOf(piece: Piece, box: BoxSides): BlankSides {
  const use = (edge: number | undefined): SideUse => {
    if (edge === undefined) return "point";
    return piece.edges[edge].outside ? "trimmed" : "sewn";
  };
  return { x: [use(box.left), use(box.right)], y: [use(box.bottom), use(box.top)] };
}

type Loose = "low" | "high" | undefined;

/**
 * Which side of an axis takes what the blank has too much or too little: `first` says whether an edge
 * that is trimmed or a side that only a point reaches is taken before the other. `ties` decides
 * between two alike. Undefined when both sides hold an edge that is sewn: the axis is exact.
 */
function looseSide(
  [low, high]: readonly [SideUse, SideUse],
  first: "point" | "trimmed",
  ties: "low" | "high",
): Loose {
  const order =
    first === "point" ? (["point", "trimmed"] as const) : (["trimmed", "point"] as const);
  for (const use of order) {
    if (low === use && high === use) return ties;
    if (low === use) return "low";
    if (high === use) return "high";
  }
  return undefined;
}

/** Of two sides alike, the one whose point stands higher: the same for a piece and its mirror image. */
function higherEnd(piece: Piece): "low" | "high" {
  const height = (sign: 1 | -1) => {
    const end = Math.max(...piece.cut.map((v) => sign * v.x));
    return Math.max(...piece.cut.filter((v) => near(sign * v.x, end)).map((v) => v.y));
  };
  return height(-1) > height(1) + 1e-9 ? "low" : "high";
}

/** A kite's point takes what its square has over or under; elsewhere a surplus is best trimmed off. */
function looseSides(kind: RecipeKind, piece: Piece, uses: BlankSides, more: Point) {
  const first = (over: Length) => (kind !== "kite" && over > 0 ? "trimmed" : "point");
  return {
    x: looseSide(uses.x, first(more.x), higherEnd(piece)),
    y: looseSide(uses.y, first(more.y), "high"),
  };
}

/**
 * A blank square or rectangle, straight with the grain, sliced along every edge of the piece that is
 * not on a side of the blank. The slices are measured from the sides that hold an edge, so they are
 * set; a side that only the point of the piece reaches is free and may even be cut short of it.
 */
function slicedPlan(kind: RecipeKind, piece: Piece, width: Length, height: Length): CutPlan {
  const box = boxSides(piece.cut);
  const exact = sizeOf(piece.cut);
  const uses = usesOf(piece, box);
  const more = point(width - exact.width, height - exact.height);
  const { x, y } = looseSides(kind, piece, uses, more);
  const by = {
    left: x === "low" ? more.x : 0,
    right: x === "high" ? more.x : 0,
    bottom: y === "low" ? more.y : 0,
    top: y === "high" ? more.y : 0,
  };
  const planes: RawPlane[] = halfPlanes(piece.cut).map((plane, i) => {
    const side = (["left", "right", "bottom", "top"] as const).find((s) => box[s] === i);
    const out = side === undefined ? 0 : by[side];
    return { plane: moved(plane, out), set: out === 0 };
  });
  if (box.left === undefined) planes.push({ plane: { n: point(-1, 0), c: by.left }, set: false });
  if (box.bottom === undefined)
    planes.push({ plane: { n: point(0, -1), c: by.bottom }, set: false });
  if (box.right === undefined)
    planes.push({ plane: { n: point(1, 0), c: exact.width + by.right }, set: false });
  if (box.top === undefined)
    planes.push({ plane: { n: point(0, 1), c: exact.height + by.top }, set: false });
  const made = rawFrom(planes, spanOf(piece.cut, width + height));
  return {
    kind,
    cuts: [
      { op: near(width, height) ? "square" : "rectangle", lengths: [width, height], setEdges: [] },
      ...slices(piece, box, {
        low: point(-by.left, -by.bottom),
        high: point(exact.width + by.right, exact.height + by.top),
        from: point(x === "low" ? exact.width : 0, y === "low" ? exact.height : 0),
      }),
    ],
    ...made,
    finished: piece.finished,
    size: height,
    exactSize: exact.height,
    enlargeable: x !== undefined && y !== undefined,
    setting: [...(x === undefined ? [width] : []), ...(y === undefined ? [height] : [])],
    piecesEach: 1,
    hands: "as-piece",
    shape: blank({ width, height }),
    turned: 0,
  };
}

/** The blank as it lies: two opposite corners, and the corner all marks are measured from. */
interface Blank {
  readonly low: Point;
  readonly high: Point;
  readonly from: Point;
}

/** Each slice by two marks, one on each of the two sides of the blank where it starts and ends. */
function slices(piece: Piece, box: BoxSides, blankBox: Blank): Cut[] {
  const onBlank = Object.values(box);
  return halfPlanes(piece.cut).flatMap((plane, i) => {
    if (onBlank.includes(i)) return [];
    const marks = marksOf(plane, blankBox);
    return [{ op: "slice", lengths: marks.map((m) => m.at), setEdges: [i], marks }];
  });
}

/** Where a slanting line crosses the sides of the blank, measured from the blank's own corner. */
function marksOf({ n, c }: HalfPlane, { low, high, from }: Blank): Mark[] {
  const slack = 1e-9;
  const within = (v: Length, a: Length, b: Length) => v >= a - slack && v <= b + slack;
  const marks: Mark[] = [];
  for (const [side, y] of [
    ["bottom", low.y],
    ["top", high.y],
  ] as const) {
    const x = (c - n.y * y) / n.x;
    if (within(x, low.x, high.x)) marks.push({ side, at: Math.abs(x - from.x) });
  }
  for (const [side, x] of [
    ["left", low.x],
    ["right", high.x],
  ] as const) {
    const y = (c - n.x * x) / n.y;
    if (y > low.y + slack && y < high.y - slack) marks.push({ side, at: Math.abs(y - from.y) });
  }
  return marks;
}

/** A four-sided piece with a square corner, symmetrical about the line through it. */
function isKite(piece: Piece): boolean {
  if (piece.cut.length !== 4) return false;
  const angles = anglesOf(piece.cut);
  const right = angles.findIndex((a) => near(a, 90));
  if (right < 0 || angles.every((a) => near(a, 90))) return false;
  const { width, height } = sizeOf(piece.cut);
  return near(angles[(right + 1) % 4], angles[(right + 3) % 4]) && near(width, height);
}

/** Kite sliced from a square: the outer edges and both slices are set, the inner sides are free. */
export const kite: Way = {
  kind: "kite",
  fits: isKite,
  plan: (piece, bench, size) => {
    const full = sizeOf(piece.cut).height;
    const least = leastSquare(piece, full);
    const side = size ?? roundUp(least, bench.step);
    return { ...slicedPlan("kite", piece, side, side), exactSize: least };
  },
};

/**
 * The least square in which every stitch has its allowance: the needle goes out from the kite's
 * point square to its long sides, and is met by the square's inner sides.
 */
function leastSquare(piece: Piece, full: Length): Length {
  const box = boxSides(piece.cut);
  const free: HalfPlane[] = [];
  if (box.left === undefined) free.push({ n: point(-1, 0), c: 0 });
  if (box.right === undefined) free.push({ n: point(1, 0), c: full });
  if (box.bottom === undefined) free.push({ n: point(0, -1), c: 0 });
  if (box.top === undefined) free.push({ n: point(0, 1), c: full });
  const spare = free.flatMap((h) =>
    halfPlanes(piece.finished).flatMap((seam, j) => {
      const facing = h.n.x * seam.n.x + h.n.y * seam.n.y;
      if (facing <= 1e-9) return [];
      return [j, (j + 1) % piece.finished.length].map((v) => {
        const at = piece.finished[v];
        return h.c - h.n.x * at.x - h.n.y * at.y - piece.edges[j].allowance * facing;
      });
    }),
  );
  return full - Math.min(...spare);
}

const straightSides = (piece: Piece): number => Object.keys(boxSides(piece.cut)).length;

/** A square or rectangle with corners sliced off: all four sides of the blank hold an edge. */
export const cornerOff: Way = {
  kind: "corner-off",
  fits: (piece) => piece.cut.length > 4 && straightSides(piece) === 4,
  plan: (piece, bench, size) => roundedBlank("corner-off", piece, bench, size),
};

/** Slices by two marks from a blank that has at least one of the piece's edges on it. */
export const twoMarks: Way = {
  kind: "two-marks",
  fits: (piece) => straightSides(piece) >= 1 && straightSides(piece) < piece.cut.length,
  plan: (piece, bench, size) => roundedBlank("two-marks", piece, bench, size),
};

/** Sides of the blank that set the patch stay exact; the others go up to the maker's step. */
function roundedBlank(kind: RecipeKind, piece: Piece, bench: Bench, size?: Length): CutPlan {
  const exact = sizeOf(piece.cut);
  const uses = usesOf(piece, boxSides(piece.cut));
  const up = (length: Length, pair: readonly [SideUse, SideUse]) =>
    pair.every((use) => use === "sewn") || liesOnStep(length, bench.step)
      ? length
      : roundUp(length, bench.step);
  const height = size ?? up(exact.height, uses.y);
  return slicedPlan(kind, piece, up(exact.width, uses.x), height);
}

/** Traced from a true-scale template: every edge set, whatever the shape. */
export const template: Way = {
  kind: "template",
  fits: () => true,
  plan: (piece, bench) => {
    const { width, height } = sizeOf(piece.cut);
    return {
      kind: "template",
      cuts: [{ op: "template", lengths: [width, height], setEdges: [] }],
      ...rawFrom(
        halfPlanes(piece.cut).map((plane) => ({ plane, set: true })),
        spanOf(piece.cut),
      ),
      finished: piece.finished,
      size: height,
      exactSize: height,
      enlargeable: false,
      setting: [],
      piecesEach: 1,
      hands: "as-piece",
      shape: blank({ width: roundUp(width, bench.step), height: roundUp(height, bench.step) }),
      turned: 0,
    };
  },
};

/** Edges of a piece that is a half square with one of its 45-degree corners sliced off. */
interface Sliced {
  readonly slice: number;
  readonly outer: number;
}

/**
 * Deep background: a half square, two sides straight, the third the block's diagonal, one sharp
 * corner sliced off. Returns the slice and the outside edge, or undefined.
 */
function slicedHalfSquare(piece: Piece): Sliced | undefined {
  if (piece.cut.length !== 4) return undefined;
  const planes = halfPlanes(piece.cut);
  const straight = (i: number) => near(planes[i].n.x * planes[i].n.y, 0, 1e-9);
  for (let slice = 0; slice < 4; slice++) {
    const [before, opposite, after] = [3, 2, 1].map((k) => (slice + k) % 4);
    if (straight(slice) || !straight(opposite)) continue;
    const leg = straight(before) ? before : after;
    const diagonal = leg === before ? after : before;
    const isDiagonal = near(Math.abs(planes[diagonal].n.x), Math.SQRT1_2, 1e-9);
    // Square to the line that halves the corner, or what is sliced off is no wedge.
    const halves = near(
      dot(planes[slice].n, planes[leg].n),
      dot(planes[slice].n, planes[diagonal].n),
    );
    if (straight(leg) && isDiagonal && halves && piece.edges[opposite].outside)
      return { slice, outer: opposite };
  }
  return undefined;
}

/**
 * A square cut once and each half sliced once more. The two raw edges of the corner that is sliced
 * and the slice itself are set; the outside edge takes the surplus and is trimmed in squaring up.
 * Either hand can be sliced from either half, and each slice leaves a true wedge.
 */
export const halfSquareSliced: Way = {
  kind: "half-square-sliced",
  fits: (piece) => slicedHalfSquare(piece) !== undefined,
  plan: (piece, bench, size) => {
    const found = slicedHalfSquare(piece);
    if (!found) throw new RangeError(`${piece.id}: a half square with a corner sliced expected`);
    const exact = fullLeg(piece, found);
    const side = size ?? roundUp(exact, bench.step);
    const planes = halfPlanes(piece.cut).map((plane, i) =>
      i === found.outer ? { plane: moved(plane, side - exact), set: false } : { plane, set: true },
    );
    return {
      kind: "half-square-sliced",
      cuts: [
        { op: "square", lengths: [side], setEdges: [] },
        { op: "once", lengths: [side * Math.SQRT2], setEdges: [] },
        { op: "slice", lengths: [sliceHeight(piece, found)], setEdges: [found.slice] },
      ],
      ...rawFrom(planes, spanOf(piece.cut, side)),
      finished: piece.finished,
      size: side,
      exactSize: exact,
      enlargeable: true,
      setting: [],
      piecesEach: 2,
      hands: "either",
      shape: blank({ width: side, height: side }),
      turned: 0,
    };
  },
};

/** Short side of the half square before it was sliced: from the square corner to the lost point. */
function fullLeg(piece: Piece, { slice, outer }: Sliced): Length {
  const planes = halfPlanes(piece.cut);
  const next = (outer + 1) % 4;
  const before = (outer + 3) % 4;
  const other = [next, before].find((i) => near(planes[i].n.x * planes[i].n.y, 0, 1e-9));
  if (other === undefined || other === slice) throw new RangeError("half square expected");
  const diagonal = other === next ? before : next;
  const tip = corner(planes[other], planes[diagonal]);
  const square = corner(planes[other], planes[outer]);
  return Math.hypot(tip.x - square.x, tip.y - square.y);
}

/** Height of the wedge that is sliced off, from its raw point square to the slice. */
export function sliceHeight(piece: Piece, found = slicedHalfSquare(piece)): Length {
  if (!found) throw new RangeError(`${piece.id}: a half square with a corner sliced expected`);
  const planes = halfPlanes(piece.cut);
  const [before, after] = [(found.slice + 3) % 4, (found.slice + 1) % 4];
  const tip = corner(planes[before], planes[after]);
  const slice = planes[found.slice];
  return slice.n.x * tip.x + slice.n.y * tip.y - slice.c;
}
