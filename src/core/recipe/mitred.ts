import { halfPlanes, point } from "../geometry/index.ts";
import { roundUp } from "../measure/index.ts";
import type { Piece } from "../piece/index.ts";
import {
  anglesOf,
  boxSides,
  near,
  type RawPlane,
  rawFrom,
  sizeOf,
  spanOf,
  type Way,
} from "./plan.ts";

/** A border, or a sash of a quilt on point, with both ends at 45 degrees, its long side along the strip. */
const isMitred = (p: Piece): boolean =>
  p.cut.length === 4 &&
  p.roles.every((r) => r === "border" || r === "sash") &&
  [...anglesOf(p.cut)].sort((x, y) => x - y).every((a, i) => near(a, i < 2 ? 45 : 135));

/**
 * A mitred border is cut as a plain strip as long as its outer edge: the corners are trimmed after the
 * set-in seam is sewn, so the ends are free and the strip may be joined from several widths. So is a
 * long sash on point, whose ends are trimmed level with the edge of the top.
 */
export const mitredBorder: Way = {
  kind: "rectangle",
  fits: isMitred,
  plan: (piece, bench) => {
    const { width, height } = sizeOf(piece.cut);
    const length = roundUp(width, bench.step);
    const { bottom, top } = boxSides(piece.cut);
    const lengthwise = halfPlanes(piece.cut).filter((_, i) => i === bottom || i === top);
    const planes: RawPlane[] = [
      ...lengthwise.map((plane) => ({ plane, set: true })),
      { plane: { n: point(1, 0), c: (width + length) / 2 }, set: false },
      { plane: { n: point(-1, 0), c: (length - width) / 2 }, set: false },
    ];
    return {
      kind: "rectangle",
      cuts: [
        { op: "strip", lengths: [height], setEdges: [0, 2] },
        { op: "crosscut", lengths: [length], setEdges: [] },
      ],
      ...rawFrom(planes, spanOf(piece.cut, length)),
      finished: piece.finished,
      size: height,
      exactSize: height,
      enlargeable: false,
      setting: [height],
      piecesEach: 1,
      hands: "as-piece",
      joinsAllowed: true,
      shape: { kind: "rect", first: length, pitch: length, height },
      turned: 0,
    };
  },
};
