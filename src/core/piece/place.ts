import {
  angleOf,
  applyTo,
  applyToPolygon,
  distance,
  MIRROR,
  type Polygon,
  type Rigid,
  subtract,
  turning,
} from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import type { Piece } from "./types.ts";

/**
 * The motion that lays a piece, from its own frame on the fabric, onto a patch of a block (`polygon`
 * as the block lists it). A piece cut either way may have to be turned over. Undefined when the
 * patch is not cut as this piece. Straight corners must have been taken out of the polygon.
 */
export function laidOn(piece: Piece, polygon: Polygon, slack: Length): Rigid | undefined {
  return direct(piece.finished, polygon, slack) ?? turned(piece, polygon, slack);
}

function direct(from: Polygon, to: Polygon, slack: Length): Rigid | undefined {
  const n = from.length;
  if (to.length !== n) return undefined;
  for (let roll = 0; roll < n; roll++) {
    const a = to[roll];
    const b = to[(roll + 1) % n];
    const turn = angleOf(subtract(b, a)) - angleOf(subtract(from[1], from[0]));
    const start = applyTo(turning(turn), from[0]);
    const motion: Rigid = { turn, x: a.x - start.x, y: a.y - start.y, mirrored: false };
    const fits = applyToPolygon(motion, from).every(
      (v, i) => distance(v, to[(i + roll) % n]) <= slack,
    );
    if (fits) return motion;
  }
  return undefined;
}

function turned(piece: Piece, polygon: Polygon, slack: Length): Rigid | undefined {
  if (!piece.eitherWay) return undefined;
  const over = direct(applyToPolygon(MIRROR, piece.finished), polygon, slack);
  return over && { ...over, mirrored: true };
}
