import { type Length, liesOnStep, type Step } from "../measure/index.ts";

/** Where one strip of a sewn set shows, from the set's lower raw edge. */
export interface StripShows {
  readonly from: Length;
  readonly to: Length;
  /** Where the strip's own lower raw edge lies (under its neighbor for all but the first). */
  readonly rawFrom: Length;
}

/** Width of the sewn set: sum of the cut widths less two allowances a seam. */
export const setWidth = (cuts: readonly Length[], seam: Length): Length =>
  cuts.reduce((sum, c) => sum + c, 0) - 2 * seam * (cuts.length - 1);

/**
 * What each strip of a sewn and pressed set shows, raw outer edges included. A strip no wider than
 * its two allowances shows nothing (`to <= from`).
 */
export function showing(cuts: readonly Length[], seam: Length): StripShows[] {
  let rawFrom = 0;
  return cuts.map((cut, i) => {
    const shows = {
      from: i === 0 ? 0 : rawFrom + seam,
      to: i === cuts.length - 1 ? rawFrom + cut : rawFrom + cut - seam,
      rawFrom,
    };
    rawFrom += cut - 2 * seam;
    return shows;
  });
}

/** Heights of the set's own seam lines, from its lower raw edge. */
export const seamLines = (cuts: readonly Length[], seam: Length): Length[] =>
  showing(cuts, seam)
    .slice(1)
    .map((s) => s.from);

/** Sum of cut widths that sews up to `strip`: strip + 2 SA (k - 1). */
export const sumToCut = (strip: Length, strips: number, seam: Length): Length =>
  strip + 2 * seam * (strips - 1);

/** Cut width of `strips` equal strips that sew up to `strip`. */
export const equalCuts = (strip: Length, strips: number, seam: Length): Length =>
  sumToCut(strip, strips, seam) / strips;

/** The maker's widths changed all alike, so that they sew up to `strip` exactly. */
export function cutsThatSum(
  wanted: readonly Length[],
  strip: Length,
  seam: Length,
): readonly Length[] {
  const change = (strip - setWidth(wanted, seam)) / wanted.length;
  return wanted.map((c) => c + change);
}

export interface SteppedCuts {
  readonly cuts: readonly Length[];
  /** How much wider than the strip the set sews up: trimmed off its first (outer) strip. */
  readonly trim: Length;
}

/**
 * The nearest widths on the ruler's step: all change alike, then the leftover steps go to the
 * widths that lost most by rounding (largest remainder). When the sum itself lies on the step the
 * set is exact (`trim` 0); otherwise it is wider by less than one step, trimmed at the outer edge.
 */
export function cutsOnStep(
  wanted: readonly Length[],
  strip: Length,
  seam: Length,
  step: Step,
): SteppedCuts {
  const size = step.size.valueOf();
  const total = sumToCut(strip, wanted.length, seam);
  const steps = liesOnStep(total, step) ? Math.round(total / size) : Math.ceil(total / size);
  const exact = cutsThatSum(wanted, strip, seam).map((c) => c / size);
  const floors = exact.map((x) => Math.floor(x + 1e-9));
  const order = exact
    .map((x, i) => ({ i, rest: x - floors[i] }))
    .sort((p, q) => q.rest - p.rest || p.i - q.i);
  const missing = steps - floors.reduce((sum, f) => sum + f, 0);
  for (let k = 0; k < missing; k++) floors[order[k % order.length].i] += 1;
  const cuts = floors.map((n) => step.size.mul(BigInt(n)).valueOf());
  const trim = setWidth(cuts, seam) - strip;
  return { cuts, trim: liesOnStep(total, step) ? 0 : trim };
}
