import {
  applyToPolygon,
  halfPlanes,
  moved,
  type Polygon,
  point,
  turning,
} from "../geometry/index.ts";
import { type Length, roundUp } from "../measure/index.ts";
import type { Piece } from "../piece/index.ts";
import {
  anglesOf,
  type Bench,
  blank,
  type CutPlan,
  near,
  rawFrom,
  sizeOf,
  spanOf,
  type Way,
} from "./plan.ts";
import { prove } from "./proof.ts";

/** The vertex with the right angle of a right triangle, or -1. */
const rightCorner = (p: Piece): number =>
  p.cut.length === 3 ? anglesOf(p.cut).findIndex((a) => near(a, 90)) : -1;

const isHalfSquare = (p: Piece): boolean => {
  const right = rightCorner(p);
  return right >= 0 && near(anglesOf(p.cut)[(right + 1) % 3], 45);
};

/** Edge opposite the right angle. */
const longEdge = (p: Piece): number => (rightCorner(p) + 1) % 3;

/**
 * A square cut once corner to corner: two half squares with their short sides on the straight grain.
 * The long side is the one sewn first, so it is set; the short sides are trimmed afterwards.
 */
export const squareOnce: Way = {
  kind: "square-once",
  fits: isHalfSquare,
  plan: (piece, bench, size) => {
    const long = longEdge(piece);
    const exact = piece.edges[(long + 1) % 3].cut;
    const side = size ?? roundUp(exact, bench.step);
    const out = (side - exact) / 2;
    const planes = halfPlanes(piece.cut).map((plane, i) =>
      i === long ? { plane, set: true } : { plane: moved(plane, out), set: false },
    );
    return {
      ...shared(piece, side, exact),
      kind: "square-once",
      cuts: [
        { op: "square", lengths: [side], setEdges: [] },
        { op: "once", lengths: [side * Math.SQRT2], setEdges: [long] },
      ],
      ...rawFrom(planes, spanOf(piece.cut, side)),
      piecesEach: 2,
      turned: long === 0 ? 45 : 0,
    };
  },
};

/**
 * A square cut twice: four quarter squares with their long side on the straight grain. The short
 * sides are sewn, so both are set; what is left over lies along the long side.
 */
export const squareTwice: Way = {
  kind: "square-twice",
  fits: isHalfSquare,
  plan: (piece, bench, size) => {
    const long = longEdge(piece);
    const exact = piece.edges[long].cut;
    const side = size ?? roundUp(exact, bench.step);
    const planes = halfPlanes(piece.cut).map((plane, i) =>
      i === long ? { plane: moved(plane, (side - exact) / 2), set: false } : { plane, set: true },
    );
    return {
      ...shared(piece, side, exact),
      kind: "square-twice",
      cuts: [
        { op: "square", lengths: [side], setEdges: [] },
        { op: "twice", lengths: [side * Math.SQRT2], setEdges: [] },
      ],
      ...rawFrom(planes, spanOf(piece.cut, side)),
      piecesEach: 4,
      turned: long === 0 ? 0 : 45,
    };
  },
};

const shared = (piece: Piece, side: Length, exact: Length) => ({
  finished: piece.finished,
  size: side,
  exactSize: exact,
  enlargeable: true,
  setting: [],
  hands: "as-piece" as const,
  shape: blank({ width: side, height: side }),
});

/**
 * A rectangle cut once: two right triangles of the same hand. Exact sizes keep the shape, because the
 * cut triangle is the finished one enlarged; rounded ones turn the long side a little, so the patch
 * is laid on that side (set) and the proof decides how much rounding is enough.
 */
export const halfRectangle: Way = {
  kind: "half-rectangle",
  fits: (piece) => rightCorner(piece) >= 0 && !isHalfSquare(piece) && longEdge(piece) !== 0,
  plan: (piece, bench, size) => {
    const { width, height } = sizeOf(piece.cut);
    if (size !== undefined) {
      const other = (size / height) * width;
      return halfPlan(
        piece,
        Math.max(roundUp(width, bench.step), roundUp(other, bench.step)),
        size,
      );
    }
    return smallestHalf(piece, bench, width, height);
  },
};

/** The least rectangle on the maker's step that covers: one step more may be needed on a side. */
function smallestHalf(piece: Piece, bench: Bench, width: Length, height: Length): CutPlan {
  const step = bench.step.size.valueOf();
  const tries = [0, 1, 2, 3].flatMap((i) =>
    [0, 1, 2, 3].map((j) => ({
      w: roundUp(width + i * step, bench.step),
      h: roundUp(height + j * step, bench.step),
    })),
  );
  tries.sort((a, b) => a.w * a.h - b.w * b.h);
  for (const t of tries) {
    const plan = halfPlan(piece, t.w, t.h);
    const allowances = piece.edges.map((e) => e.allowance);
    if (prove({ ...plan, allowances }, bench.unit).verdict === "proved") return plan;
  }
  return halfPlan(piece, width, height);
}

function halfPlan(piece: Piece, width: Length, height: Length): CutPlan {
  const exact = sizeOf(piece.cut);
  const atRight = rightCorner(piece) === 1;
  const triangle: Polygon = atRight
    ? [point(0, 0), point(width, 0), point(width, height)]
    : [point(0, 0), point(width, 0), point(0, height)];
  const long = atRight ? 2 : 1;
  const { raw, finished } = laidOnLongSide(piece, triangle, long);
  return {
    kind: "half-rectangle",
    cuts: [
      { op: "rectangle", lengths: [width, height], setEdges: [] },
      { op: "once", lengths: [Math.hypot(width, height)], setEdges: [long] },
    ],
    raw,
    setEdges: [long],
    finished,
    size: height,
    exactSize: exact.height,
    enlargeable: true,
    setting: [],
    piecesEach: 2,
    hands: "as-piece",
    shape: blank({ width, height }),
    turned: 0,
  };
}

/** The patch turned so that its long side runs along the raw one, exactly its allowance inside. */
function laidOnLongSide(piece: Piece, raw: Polygon, long: number) {
  const target = halfPlanes(raw)[long];
  const now = halfPlanes(piece.cut)[longEdge(piece)];
  const turn = Math.atan2(target.n.y, target.n.x) - Math.atan2(now.n.y, now.n.x);
  const cut = applyToPolygon(turning(turn), piece.cut);
  const gap = target.c - halfPlanes(cut)[longEdge(piece)].c;
  const finished = applyToPolygon(turning(turn), piece.finished).map((v) =>
    point(v.x + target.n.x * gap, v.y + target.n.y * gap),
  );
  return { raw, finished };
}
