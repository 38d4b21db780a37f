import type { Length } from "../measure/index.ts";
import type { Lay } from "./lay.ts";
import { copiesIn, layerWidth, runLength } from "./lay.ts";
import type { Placement, Stock, Strip } from "./types.ts";
import type { Job } from "./work.ts";

/** Length of fabric one job takes on its own. */
export const handbookLength = (job: Job, stock: Stock): Length =>
  Math.min(...job.lays.map((lay) => lengthWith(lay, job, stock)));

function lengthWith(lay: Lay, job: Job, stock: Stock): Length {
  const perStrip = copiesIn(lay, layerWidth(stock, job.layers));
  return Math.ceil(job.cuts / perStrip) * lay.height;
}

/** The strips of one job: full ones, and the last with what remains. Tall first. */
export function handbookStrips(job: Job, stock: Stock): Strip[] {
  const best = handbookLength(job, stock);
  const lay = job.lays.find((l) => lengthWith(l, job, stock) === best)!;
  const perStrip = copiesIn(lay, layerWidth(stock, job.layers));
  const full = Math.floor(job.cuts / perStrip);
  const rest = job.cuts - full * perStrip;
  const strip = (copies: number, times: number): Strip => ({
    from: 0,
    height: lay.height,
    times,
    layers: job.layers,
    runs: [runOf(job, lay, copies, 0, 0)],
  });
  return [...(full > 0 ? [strip(perStrip, full)] : []), ...(rest > 0 ? [strip(rest, 1)] : [])];
}

/** A run of a job, placed. */
export function runOf(job: Job, lay: Lay, copies: number, x: Length, y: Length): Placement {
  return {
    demandId: job.demandId,
    x,
    y,
    width: runLength(lay, copies),
    height: lay.height,
    copies,
    turned: lay.turned,
    ...(job.segment ? { segment: true } : {}),
    ...(job.mirrorId ? { mirrorId: job.mirrorId } : {}),
  };
}
