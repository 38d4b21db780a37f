import type { BlockGeometry } from "../block/types.ts";
import type { Length } from "../measure/index.ts";
import { drawer, expectedReach, type Sewing } from "./draw.ts";
import type { Maker } from "./maker.ts";
import { type Reach, reachesOf } from "./reaches.ts";
import type { Follow } from "./shift.ts";
import type { SpareOf } from "./spare.ts";

/**
 * Will it make size? Blocks of this setting are sewn by the thousand from pieces cut and stitched as
 * this maker does, each raw side found from where its stitches cross, and measured across. The block
 * passes when every width reaches its trim size less `within`.
 */
export interface MakeSizeQuestion extends Sewing {
  /** How much short a block may be and still be eased in (no published figure; see the docs). */
  readonly within: Length;
  readonly samples: number;
  /** Cuts that may be enlarged by a step: what spare each would leave. */
  readonly enlarged?: readonly { readonly id: string; readonly spareOf: SpareOf }[];
}

export interface Width {
  /** The two opposite outline edges. */
  readonly sides: readonly [number, number];
  readonly trim: Length;
  readonly mean: Length;
  readonly sd: Length;
  readonly bins: readonly { readonly from: Length; readonly to: Length; readonly count: number }[];
}

export interface MakeSizeAnswer {
  readonly samples: number;
  readonly widths: readonly Width[];
  /** Of all blocks, those whose every width reaches the trim size, with its standard error. */
  readonly share: number;
  readonly shareError: number;
  /** Share with each cut enlarged by a step, same blocks. */
  readonly enlarged: readonly { readonly id: string; readonly share: number }[];
  /** The one that helps most, or none that helps. */
  readonly bestCut?: string;
  /** Sample mean and standard deviation of every reach, in the order of `reachesOf`. */
  readonly reaches: readonly { readonly mean: Length; readonly sd: Length }[];
}

/** Half a block in a hundred: less is no help worth a recut. */
const LEAST_GAIN = 0.005;
const BINS = 24;
const EVERY = 512;

/**
 * Yields how many blocks are sewn so far; returns the answer. Equal seeds give equal answers. Run to
 * the end with `makeSize`, or step by step in a worker.
 */
export function* sewMany(q: MakeSizeQuestion): Generator<number, MakeSizeAnswer> {
  const reaches = reachesOf(q.block, q.seam, q.spareOf, q.follow);
  const draw = drawer(q, reaches);
  const all = reaches.map(() => new Float64Array(q.samples));
  for (let k = 0; k < q.samples; k++) {
    draw((i, value) => {
      all[i][k] = value;
    });
    if ((k + 1) % EVERY === 0) yield k + 1;
  }
  const spares = reaches.map((r) => r.spare);
  const pairs = oppositeSides(q.block);
  const passes = sharePassing(q, reaches, all, pairs);
  const share = passes(spares);
  const enlarged = (q.enlarged ?? []).map((c) => ({
    id: c.id,
    share: passes(reachesOf(q.block, q.seam, c.spareOf, q.follow).map((r) => r.spare)),
  }));
  const best = enlarged.reduce<(typeof enlarged)[number] | undefined>(
    (b, c) => (c.share >= share + LEAST_GAIN && (!b || c.share > b.share) ? c : b),
    undefined,
  );
  return {
    samples: q.samples,
    widths: pairs.map((sides) => widthOver(q, reaches, all, sides)),
    share,
    shareError: Math.sqrt((share * (1 - share)) / q.samples),
    enlarged,
    ...(best && { bestCut: best.id }),
    reaches: all.map((values, i) => {
      const { mean, sd } = spread(values);
      return { mean: mean + spares[i], sd };
    }),
  };
}

export function makeSize(q: MakeSizeQuestion): MakeSizeAnswer {
  const run = sewMany(q);
  for (;;) {
    const next = run.next();
    if (next.done) return next.value;
  }
}

/** Each outline edge with the one that faces it, every pair once. */
function oppositeSides(block: BlockGeometry): [number, number][] {
  const half = block.outline.length / 2;
  return Array.from({ length: half }, (_, i) => [i, i + half]);
}

/** The raw side of one block: the piece on it that reaches least far. */
const least = (
  reaches: readonly Reach[],
  all: readonly Float64Array[],
  spares: readonly Length[],
  side: number,
  k: number,
): Length => {
  let lowest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < reaches.length; i++)
    if (reaches[i].side === side) lowest = Math.min(lowest, all[i][k] + spares[i]);
  return lowest;
};

const trimOf = (reaches: readonly Reach[], sides: readonly number[]): Length =>
  sides.reduce((sum, s) => sum + (reaches.find((r) => r.side === s)?.far ?? 0), 0);

function sharePassing(
  q: MakeSizeQuestion,
  reaches: readonly Reach[],
  all: readonly Float64Array[],
  pairs: readonly [number, number][],
) {
  return (spares: readonly Length[]): number => {
    let passing = 0;
    for (let k = 0; k < q.samples; k++) {
      const ok = pairs.every(
        ([a, b]) =>
          least(reaches, all, spares, a, k) + least(reaches, all, spares, b, k) >=
          trimOf(reaches, [a, b]) - q.within,
      );
      if (ok) passing++;
    }
    return passing / q.samples;
  };
}

function widthOver(
  q: MakeSizeQuestion,
  reaches: readonly Reach[],
  all: readonly Float64Array[],
  sides: readonly [number, number],
): Width {
  const spares = reaches.map((r) => r.spare);
  const values = Float64Array.from(
    { length: q.samples },
    (_, k) => least(reaches, all, spares, sides[0], k) + least(reaches, all, spares, sides[1], k),
  );
  const { mean, sd } = spread(values);
  return { sides, trim: trimOf(reaches, sides), mean, sd, bins: binned(values) };
}

function spread(values: Float64Array): { mean: Length; sd: Length } {
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  const squares = values.reduce((a, b) => a + (b - mean) ** 2, 0);
  return { mean, sd: Math.sqrt(squares / Math.max(1, values.length - 1)) };
}

function binned(values: Float64Array): Width["bins"] {
  const low = values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const high = values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const step = (high - low) / BINS;
  if (step === 0) return [{ from: low, to: high, count: values.length }];
  const counts = new Array<number>(BINS).fill(0);
  for (const v of values) counts[Math.min(BINS - 1, Math.floor((v - low) / step))]++;
  return counts.map((count, i) => ({ from: low + i * step, to: low + (i + 1) * step, count }));
}

/**
 * What is left of each side's spare when every raw edge is cut `off` too small, all seams as told:
 * by outline edge, negative where the side then falls short.
 */
export function spareLeft(
  block: BlockGeometry,
  seam: Length,
  spareOf: SpareOf,
  off: Length,
  follow: Follow = "outer",
): Length[] {
  const careless: Maker = {
    cutBias: -off,
    cutScatter: 0,
    seamBias: 0,
    seamScatter: 0,
    turn: 0,
    driftBias: 0,
    driftScatter: 0,
    driftPivot: 0,
  };
  const reaches = reachesOf(block, seam, spareOf, follow);
  const n = block.radial?.n;
  const short = (r: Reach): Length =>
    n === undefined ? straightShort(block, r.side) : expectedReach(r, n, careless).mean - r.far;
  const straightShort = (b: BlockGeometry, side: number): Length => {
    const [pair] = oppositeSides(b).filter((p) => p.includes(side));
    const { widths } = makeSize({
      block: b,
      seam,
      maker: careless,
      spareOf,
      follow,
      within: 0,
      seed: 1,
      samples: 1,
    });
    const w = widths.find((x) => x.sides === pair || x.sides[0] === pair[0]);
    return w ? (w.mean - w.trim) / 2 : 0;
  };
  return block.outline.map((_, side) =>
    Math.min(...reaches.filter((r) => r.side === side).map(short)),
  );
}
