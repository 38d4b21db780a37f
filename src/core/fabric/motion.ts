import {
  andThen,
  boundingBox,
  MIRROR,
  moving,
  type Polygon,
  type Rigid,
  turning,
} from "../geometry/index.ts";
import { type Degree, type Length, type Radian, toRadians } from "../measure/index.ts";
import type { Lay } from "./types.ts";

/** The motion that takes it back. */
export function undone(t: Rigid): Rigid {
  const back = moving(-t.x, -t.y);
  return t.mirrored
    ? andThen(andThen(back, turning(-t.turn)), MIRROR)
    : andThen(back, turning(-t.turn));
}

/**
 * From a piece's own frame (x along the strip, y up from its lower raw edge) to the pattern frame of
 * its fabric: half a turn within the strip when it lies down, then the bands' tilt about the point
 * where the piece's y axis meets the strip's lower edge, then its place in the repeat.
 */
export function layMotion(lay: Lay, fabricTilt: Degree): Rigid {
  const within: Rigid =
    lay.way === "up" ? turning(0) : { turn: Math.PI, x: 0, y: lay.strip, mirrored: false };
  const quarter = lay.crosswise ? Math.PI / 2 : 0;
  const turned = turning(quarter - toRadians(lay.tilt ?? fabricTilt));
  return andThen(andThen(within, turned), moving(lay.along ?? 0, lay.start));
}

/** A piece laid over a photo: its center at (x, y) of the photo frame, turned anticlockwise. */
export function layOnPhoto(
  piece: Polygon,
  at: { readonly x: Length; readonly y: Length; readonly turn: Degree },
): Rigid {
  const box = boundingBox(piece);
  const toCenter = moving(-(box.left + box.right) / 2, -(box.bottom + box.top) / 2);
  return andThen(andThen(toCenter, turning(toRadians(at.turn))), moving(at.x, at.y));
}

/**
 * From a block's frame to the strip frame of a wedge patch lying up: axis on x = 0, outer seam at
 * y = SA, center at y = a + SA. `a` is the distance from the center to the outer edge.
 */
export function wedgeToStrip(toward: Radian, a: Length, seam: Length): Rigid {
  return andThen(turning(-Math.PI / 2 - toward), moving(0, a + seam));
}
