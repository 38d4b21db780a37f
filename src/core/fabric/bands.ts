import {
  andThen,
  applyToPolygon,
  area,
  boundingBox,
  clip,
  type HalfPlane,
  type Polygon,
  point,
  type Rigid,
} from "../geometry/index.ts";
import { layMotion, undone } from "./motion.ts";
import { unrolled } from "./repeat.ts";
import type { BandLook, Lay, Look, Shown } from "./types.ts";

/** Far below what is seen, far above rounding: a cut this near to a corner goes through it. */
const SNAP = 1e-12;
/** Parts smaller than this share of the patch are rounding, not fabric. */
const SPECK = 1e-14;

/**
 * What shows of a fabric in a sewn patch: polygons in the piece's own frame, one for each stretch of
 * band, from low to high in the repeat. `finished` is the sewn shape in the piece's own frame (x
 * along the strip, y up from its lower raw edge). Together they cover the patch exactly, but for
 * what a strip set too narrow leaves bare. Derivation: docs/geometry/stripes.md.
 */
export function bandsIn(finished: Polygon, look: Look, lay: Lay): Shown[] {
  const tilt = look.kind === "bands" ? look.tilt : 0;
  return shownIn(finished, look, layMotion(lay, tilt));
}

/** As `bandsIn`, for a piece laid by any motion from its own frame to the pattern or photo frame. */
export function shownIn(finished: Polygon, look: Look, motion: Rigid): Shown[] {
  const { fabricId } = look;
  if (look.kind === "plain") return [{ polygon: finished, band: 0, color: look.color, fabricId }];
  if (look.kind === "photo")
    return [{ polygon: finished, band: 0, color: look.color, fabricId, photo: motion }];
  return bandPolygons(finished, look, motion);
}

function bandPolygons(finished: Polygon, look: BandLook, motion: Rigid): Shown[] {
  const laid = applyToPolygon(motion, finished);
  const back = undone(motion);
  const { bottom, top } = boundingBox(laid);
  const least = SPECK * Math.abs(area(laid));
  return unrolled(look, bottom, top).flatMap((b, band): Shown[] => {
    const above: HalfPlane = { n: point(0, -1), c: -b.from };
    const below: HalfPlane = { n: point(0, 1), c: b.to };
    const part = clip(clip(laid, above, SNAP), below, SNAP);
    if (part.length < 3 || area(part) <= least) return [];
    return [
      {
        polygon: applyToPolygon(back, part),
        band,
        color: b.color,
        fabricId: b.fabricId,
        ...(b.photo && { photo: andThen(motion, b.photo) }),
      },
    ];
  });
}

/** The same parts moved with their patch, e.g. from the piece's own frame into the block's. */
export function movedShown(shown: readonly Shown[], by: Rigid): Shown[] {
  const back = undone(by);
  return shown.map((s) => ({
    ...s,
    polygon: applyToPolygon(by, s.polygon),
    ...(s.photo && { photo: andThen(back, s.photo) }),
  }));
}
