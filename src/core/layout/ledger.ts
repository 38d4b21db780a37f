import type { Demand, FabricLayout } from "./types.ts";

/** A way of laying fabric under the ruler. */
export type Laying = "single" | "stacked" | "facing" | "either-face";

/** What one way of stacking, folding or flipping gives, against what is needed. */
export interface LedgerRow {
  readonly laying: Laying;
  readonly layers: number;
  /** Cuts with the ruler one way up, and with it turned over. */
  readonly cuts: { readonly left: number; readonly right: number };
  readonly left: number;
  readonly right: number;
  readonly spareLeft: number;
  readonly spareRight: number;
}

export interface HandsNeeded {
  readonly left: number;
  readonly right: number;
  /** Both faces alike: a piece turned over is one of the other hand. */
  readonly reversible: boolean;
}

/**
 * Lefts and rights that each way of laying gives, fewest cuts first.
 * single: one layer; turning the ruler over cuts the other hand.
 * stacked: n layers, all right side up: n of one hand a cut.
 * facing: folded, or laid face to face in pairs: n/2 of each hand a cut.
 * either-face: reversible fabric, n layers: every piece serves either hand.
 */
export function handLedger(needed: HandsNeeded, layers: number): LedgerRow[] {
  const rows: LedgerRow[] = [oneWay("single", 1, needed)];
  if (layers > 1) rows.push(oneWay("stacked", layers, needed));
  const pairs = Math.floor(layers / 2);
  if (pairs > 0) {
    const cuts = Math.ceil(Math.max(needed.left, needed.right) / pairs);
    rows.push(
      row("facing", 2 * pairs, { left: cuts, right: 0 }, [cuts * pairs, cuts * pairs], needed),
    );
  }
  if (needed.reversible) {
    const cuts = Math.ceil((needed.left + needed.right) / layers);
    const all = cuts * layers;
    const left = needed.left + Math.floor((all - needed.left - needed.right) / 2);
    rows.push(row("either-face", layers, { left: cuts, right: 0 }, [left, all - left], needed));
  }
  const work = (r: LedgerRow) => r.cuts.left + r.cuts.right;
  const waste = (r: LedgerRow) => r.spareLeft + r.spareRight;
  return rows.sort((a, b) => work(a) - work(b) || waste(a) - waste(b) || a.layers - b.layers);
}

function oneWay(laying: Laying, layers: number, needed: HandsNeeded): LedgerRow {
  const cuts = {
    left: Math.ceil(needed.left / layers),
    right: Math.ceil(needed.right / layers),
  };
  return row(laying, layers, cuts, [cuts.left * layers, cuts.right * layers], needed);
}

const row = (
  laying: Laying,
  layers: number,
  cuts: LedgerRow["cuts"],
  [left, right]: readonly [number, number],
  needed: HandsNeeded,
): LedgerRow => ({
  laying,
  layers,
  cuts,
  left,
  right,
  spareLeft: left - needed.left,
  spareRight: right - needed.right,
});

/**
 * Copies that lie point up and point down in a layout. Head to tail every second copy is turned, so
 * a run of odd length has one more of the way it begins.
 */
export function waysUp(layout: FabricLayout, demand: Demand): { up: number; down: number } {
  const alternates = demand.shape.pitch < demand.shape.first && !demand.up;
  let up = 0;
  let down = 0;
  for (const strip of layout.strips)
    for (const run of strip.runs) {
      if (run.demandId !== demand.id) continue;
      const copies = strip.times * strip.layers;
      up += copies * (alternates ? Math.ceil(run.copies / 2) : run.copies);
      down += copies * (alternates ? Math.floor(run.copies / 2) : 0);
    }
  return { up, down };
}
