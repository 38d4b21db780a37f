import type { BlockGeometry, RadialFacts } from "../block/types.ts";
import { dot, halfPlanes } from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import { type Maker, widerOnTheWhole } from "./maker.ts";
import { normals } from "./random.ts";
import type { Reach } from "./reaches.ts";
import { type Follow, shiftsOf } from "./shift.ts";
import type { SpareOf } from "./spare.ts";

/** One maker sewing one kind of block, over and over. */
export interface Sewing {
  readonly block: BlockGeometry;
  readonly seam: Length;
  readonly maker: Maker;
  readonly spareOf: SpareOf;
  readonly follow?: Follow;
  readonly seed: number;
}

/** Hands over every reach of the next block, without spare, in the order of `reachesOf`. */
export type Draw = (put: (i: number, value: Length) => void) => void;

/** Sews one block: every reach without spare, drawn from the maker's errors. */
export function drawer(q: Sewing, reaches: readonly Reach[]): Draw {
  const facts = q.block.radial;
  return facts ? roundDrawer(q, reaches, facts) : straightDrawer(q, reaches);
}

/**
 * Any other block: each seam draws its two sides together by what it is too wide and by what its two
 * edges were cut too small (docs/geometry/error-laws.md). Drift turns nothing here. Reaches are then
 * told from the first patch, not from the center; widths are the same.
 */
function straightDrawer(q: Sewing, reaches: readonly Reach[]): Draw {
  const z = normals(q.seed);
  const m = q.maker;
  const cut = () => m.cutBias + m.cutScatter * z();
  const normal = halfPlanes(q.block.outline).map((h) => h.n);
  return (put) => {
    const shifts = shiftsOf(q.block.tree, {
      seam: q.seam,
      wider: () => widerOnTheWhole(m) + m.seamScatter * z() - (cut() + cut()) / 2,
      follow: q.follow ?? "outer",
      spareOf: q.spareOf,
      near: 1e-7 * Math.max(1, q.block.width),
    });
    reaches.forEach((r, i) => {
      const shift = shifts.get(r.patchId);
      put(i, r.far + (shift ? dot(shift, normal[r.side]) : 0) + cut());
    });
  };
}

function roundDrawer(q: Sewing, reaches: readonly Reach[], facts: RadialFacts): Draw {
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
  return (put) => {
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

/**
 * Mean and standard deviation of a reach in a block of n wedges, to first order: what the samples
 * are checked against.
 */
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
