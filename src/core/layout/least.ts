import type { Length } from "../measure/index.ts";
import { copiesIn, layerWidth, runLength } from "./lay.ts";
import type { Demand, Stock } from "./types.ts";
import { type Job, type Work, workFor } from "./work.ts";

/**
 * No plan of these demands from the bolt is shorter, found without planning. Besides the area: of all
 * strips those of a height or more hold all pieces that tall, so there are at least as many of them as
 * their widths fill, and whole ones. Summed over the heights this is a length. For strips in which nothing stands on anything.
 * `beside` is an area that is cut from the same bolt too.
 */
export function leastLength(demands: readonly Demand[], stock: Stock, beside = 0): Length {
  const work = workFor(demands, stock);
  const fixed = work.fixed.reduce((t, s) => t + s.height * s.times, 0);
  const levels = ([1, 2] as const).reduce((t, n) => t + byLevels(work, stock, n), 0);
  return fixed + Math.max(levels, (areaOf(work, stock) + beside) / stock.width);
}

/** Strip taken by one cut, at best: a run's first is longer than what follows. */
function widthEach(job: Job, stock: Stock): Length {
  const room = layerWidth(stock, job.layers);
  return Math.min(...job.lays.map((lay) => perCopy(lay, room)));
}

function perCopy(lay: Job["lays"][number], room: Length): Length {
  const most = Math.max(1, copiesIn(lay, room));
  return runLength(lay, most) / most;
}

const heightOf = (job: Job): Length => Math.min(...job.lays.map((lay) => lay.height));

const areaOf = (work: Work, stock: Stock): number =>
  work.jobs.reduce((t, job) => {
    const room = layerWidth(stock, job.layers);
    const each = Math.min(...job.lays.map((lay) => perCopy(lay, room) * lay.height));
    return t + each * job.cuts * job.layers;
  }, 0);

function byLevels(work: Work, stock: Stock, layers: 1 | 2): Length {
  const room = layerWidth(stock, layers);
  const jobs = work.jobs
    .filter((job) => job.layers === layers)
    .map((job) => ({ height: heightOf(job), width: widthEach(job, stock) * job.cuts }))
    .sort((a, b) => b.height - a.height);
  let width = 0;
  let length = 0;
  jobs.forEach((job, i) => {
    width += job.width;
    const below = jobs[i + 1]?.height ?? 0;
    length += (job.height - below) * Math.ceil(width / room - 1e-6);
  });
  return length;
}
