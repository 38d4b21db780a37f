import type { Length } from "../measure/index.ts";
import { phase } from "./repeat.ts";
import { flipped, type WayCount } from "./rounds.ts";

/** Pieces nested head to tail in a run of fabric: the first takes `first`, each further one `pitch`. */
export function piecesInRun(run: Length, first: Length, pitch: Length): number {
  // 1e-9: a run that just holds them, as typed, holds them.
  return run < first - 1e-9 ? 0 : Math.floor((run - first) / pitch + 1e-9) + 1;
}

/**
 * How many strips of one height, all begun at the same place of the repeat, lie side by side in a
 * stretch of fabric whose edge lies at `edge` in the repeat.
 */
export function stripsInRegister(
  stretch: Length,
  strip: Length,
  period: Length,
  start: Length,
  edge: Length,
): number {
  const first = phase(start - edge, period);
  const step = Math.ceil(strip / period - 1e-9) * period;
  return piecesInRun(stretch - first, strip, step);
}

/** The most and the fewest, over every place the fabric's edge may fall in the repeat. */
export function registerRange(
  stretch: Length,
  strip: Length,
  period: Length,
): { readonly most: number; readonly fewest: number } {
  const most = stripsInRegister(stretch, strip, period, 0, 0);
  const step = Math.ceil(strip / period - 1e-9) * period;
  // Worst: the first place comes just short of a whole repeat after the edge.
  return { most, fewest: piecesInRun(stretch - period, strip, step) };
}

export interface StripeInHand {
  /** Usable width, and length after straightening the end. */
  readonly width: Length;
  readonly length: Length;
  readonly runs: "along" | "across";
  readonly period: Length;
}

export interface StripeYield {
  /** matched: every strip begun at the same place of the repeat; any: wherever it falls. */
  readonly kind: "matched" | "any";
  readonly strips: number;
  /** With the worst luck of where the selvage (or the cut end) falls in the repeat. */
  readonly fewestStrips: number;
  readonly perStrip: number;
  readonly wedges: number;
  readonly ways: WayCount;
}

/**
 * What a length of printed stripe yields in wedges, strips cut parallel to the bands so that the
 * bands become rings. `strip` is the wedge's strip; `first` and `pitch` what a wedge and each
 * further one take of it. The two choices: all strips alike, or as many strips as fit.
 */
export function stripeYield(
  fabric: StripeInHand,
  strip: Length,
  first: Length,
  pitch: Length,
): StripeYield[] {
  const along = fabric.runs === "along";
  const run = along ? fabric.length : fabric.width;
  const stretch = along ? fabric.width : fabric.length;
  const perStrip = piecesInRun(run, first, pitch);
  const { most, fewest } = registerRange(stretch, strip, fabric.period);
  const any = piecesInRun(stretch, strip, strip);
  const counted = (kind: "matched" | "any", strips: number, fewestStrips: number): StripeYield => {
    const one = flipped(perStrip);
    return {
      kind,
      strips,
      fewestStrips,
      perStrip,
      wedges: strips * perStrip,
      ways: flippedStrips(one, strips),
    };
  };
  return [counted("matched", most, fewest), counted("any", any, any)];
}

/** Strips may each begin either way; begun by turns, the ways stay even. */
function flippedStrips(one: WayCount, strips: number): WayCount {
  const turned = Math.floor(strips / 2);
  const straight = strips - turned;
  return {
    up: straight * one.up + turned * one.down,
    down: straight * one.down + turned * one.up,
  };
}
