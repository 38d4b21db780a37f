import type { AnswerBlock } from "../answer/index.ts";
import { applyTo, area, centroid, distance, MIRROR } from "../geometry/index.ts";
import type { Radian } from "../measure/index.ts";
import type { SheetJob } from "./job.ts";

/** Turns by which a square or a hexagon may lie on itself. */
const TURNS: readonly Radian[] = Array.from({ length: 24 }, (_, k) => (k * Math.PI) / 12);

/**
 * Is the block its own mirror image, turned as it may be? Then a mirrored one is sewn like the others.
 * Asked of the middle of every patch and of its fabric; a fabric of slanting bands has no mirror.
 */
export function isOwnMirror(job: Pick<SheetJob, "brief">, block: AnswerBlock): boolean {
  const slanting = job.brief.fabrics.flatMap((f) =>
    f.kind === "stripe" && f.tilt !== 0 ? [f.id] : [],
  );
  const at = block.patches.map((p) => ({
    middle: centroid(p.polygon),
    fabric: block.fabricOf[p.id],
  }));
  if (at.some(({ fabric }) => slanting.includes(fabric))) return false;
  const near = 1e-6 * Math.sqrt(block.patches.reduce((sum, p) => sum + area(p.polygon), 0));
  return TURNS.some((turn) =>
    at.every(({ middle, fabric }) => {
      const image = applyTo({ ...MIRROR, turn }, middle);
      return at.some((o) => o.fabric === fabric && distance(o.middle, image) <= near);
    }),
  );
}

/** How many of a kind lie mirrored without being their own mirror image: no step sews these. */
export const mirroredCount = (job: SheetJob, block: AnswerBlock): number =>
  isOwnMirror(job, block)
    ? 0
    : job.placed.filter((p) => p.blockId === block.id && p.at.mirrored).length;
