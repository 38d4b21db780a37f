import type { BlockGeometry } from "../block/types.ts";
import type { Length } from "../measure/index.ts";
import { type Maker, widerOnTheWhole } from "./maker.ts";
import { normals } from "./random.ts";
import { type Reach, reachesOf } from "./reaches.ts";
import type { Follow } from "./shift.ts";
import type { SpareOf } from "./spare.ts";

/**
 * Will it make size? Blocks of this setting are sewn by the thousand from pieces cut and stitched as
 * this maker does, each raw side found from where its stitches cross, and measured across. The block
 * passes when every width reaches its trim size less `within`.
 */
export interface MakeSizeQuestion {
  readonly block: BlockGeometry;
  readonly seam: Length;
  readonly maker: Maker;
  readonly spareOf: SpareOf;
  readonly follow?: Follow;
  /** How much short a block may be and still be eased in (no published figure; see the docs). */
  readonly within: Length;
  readonly seed: number;
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

/** Sews one block: every reach without spare, drawn from the maker's errors. */
function drawer(q: MakeSizeQuestion, reaches: readonly Reach[]) {
  const facts = q.block.radial;
  if (!facts) throw new RangeError(`sewMany: block ${q.block.id} has no wedges round a center`);
  const { n } = facts;
  const z = normals(q.seed);
  const m = q.maker;
  const half = Math.PI / n;
  const leg = facts.circumradius;
  const mean = widerOnTheWhole(m);
  const cut = () => m.cutBias + m.cutScatter * z();
  const seamError = () => mean + m.seamScatter * z();
  const width = new Float64Array(n);
  const drift = new Float64Array(n);
  return (put: (i: number, value: Length) => void): void => {
    for (let j = 0; j < n; j++) {
      width[j] = seamError();
      drift[j] = m.driftBias + m.driftScatter * z();
    }
    const cross = Array.from({ length: n }, () => 2 * seamError() - cut() - cut());
    const legs = Array.from({ length: n }, () => [cut(), cut(), cut(), cut()] as const);
    reaches.forEach((r, i) => {
      // The wedge's own legs, or those of the piece outside it, whichever the seams follow.
      const follows = r.piece === "outer" && r.follow === "outer";
      const [cutStart, cutEnd] = follows ? legs[r.sector].slice(2) : legs[r.sector];
      const next = (r.sector + 1) % n;
      const at = (j: number, along: number, cutOff: Length): Length =>
        width[j] + drift[j] * (along - m.driftPivot) - cutOff;
      const apex = crossingOfLegs(
        half,
        leg,
        [at(r.sector, 0, cutStart), at(r.sector, 1, cutStart)],
        [at(next, 0, cutEnd), at(next, 1, cutEnd)],
      );
      const back = r.piece === "outer" && r.follow === "inner" ? cross[r.sector] : 0;
      const toward = Math.cos(r.delta) * (apex.x + back) + Math.sin(r.delta) * apex.y;
      const bar = r.bar ? 2 * seamError() - cut() - cut() : 0;
      put(i, r.far - toward - bar + cut());
    });
  };
}

/**
 * Where the stitches of the two legs cross, the true point of the wedge at the origin and its center
 * line along +x; each leg's stitches lie `start[0]` inside its true line at the center and `start[1]`
 * at the outer end.
 */
function crossingOfLegs(
  half: number,
  leg: Length,
  start: readonly [Length, Length],
  end: readonly [Length, Length],
): { readonly x: Length; readonly y: Length } {
  const c = Math.cos(half);
  const s = Math.sin(half);
  // start: from (s u0, c u0) to leg (c, -s) + (s u1, c u1); end: mirrored in the x axis.
  const p = { x: s * start[0], y: c * start[0] };
  const d = { x: leg * c + s * (start[1] - start[0]), y: -leg * s + c * (start[1] - start[0]) };
  const q = { x: s * end[0], y: -c * end[0] };
  const e = { x: leg * c + s * (end[1] - end[0]), y: leg * s - c * (end[1] - end[0]) };
  const k = ((q.x - p.x) * e.y - (q.y - p.y) * e.x) / (d.x * e.y - d.y * e.x);
  return { x: p.x + k * d.x, y: p.y + k * d.y };
}

/** Mean and standard deviation of a reach to first order: what the samples are checked against. */
export function expectedReach(
  r: Reach,
  n: number,
  m: Maker,
): { readonly mean: Length; readonly sd: Length } {
  const half = Math.PI / n;
  const forth = Math.cos(r.delta) / (2 * Math.sin(half));
  const aside = Math.sin(r.delta) / (2 * Math.cos(half));
  const wider = widerOnTheWhole(m);
  const inner = r.piece === "outer" && r.follow === "inner";
  const legMean = wider - m.driftBias * m.driftPivot - m.cutBias;
  const legVariance = m.seamScatter ** 2 + (m.driftScatter * m.driftPivot) ** 2 + m.cutScatter ** 2;
  const seamMean = 2 * wider - 2 * m.cutBias;
  const seamVariance = 4 * m.seamScatter ** 2 + 2 * m.cutScatter ** 2;
  const slant = Math.cos(r.delta);
  return {
    mean:
      r.far +
      r.spare +
      m.cutBias -
      2 * forth * legMean -
      (inner ? slant * seamMean : 0) -
      (r.bar ? seamMean : 0),
    sd: Math.sqrt(
      m.cutScatter ** 2 +
        ((forth + aside) ** 2 + (forth - aside) ** 2) * legVariance +
        (inner ? slant ** 2 * seamVariance : 0) +
        (r.bar ? seamVariance : 0),
    ),
  };
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
  const n = block.radial?.n ?? 0;
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
  return block.outline.map((_, side) =>
    Math.min(
      ...reaches
        .filter((r) => r.side === side)
        .map((r) => expectedReach(r, n, careless).mean - r.far),
    ),
  );
}
