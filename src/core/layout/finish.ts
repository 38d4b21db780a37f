import type { Length } from "../measure/index.ts";
import { copiesIn, layerWidth, laysOf, runLength } from "./lay.ts";
import { leftoversOf } from "./leftover.ts";
import { handbookLength } from "./own-strips.ts";
import type { Demand, FabricLayout, Stock, Strip } from "./types.ts";
import type { Work } from "./work.ts";

export interface Unfinished {
  readonly strips: readonly Strip[];
  readonly work: Work;
  readonly demands: readonly Demand[];
  readonly stock: Stock;
  /** A length no plan can be shorter than; the area bound when none is known. */
  readonly lowerBound?: Length;
}

/** Puts strips in cutting order (tall first), gives each its place, and adds what is known of them. */
export function finishLayout({
  strips,
  work,
  demands,
  stock,
  lowerBound,
}: Unfinished): FabricLayout {
  const placed = placeStrips(strips, work.fixed);
  const length = sum(placed.map((s) => s.height * s.times));
  const fixed = sum(work.fixed.map((s) => s.height * s.times));
  const handbook = fixed + sum(work.jobs.map((job) => handbookLength(job, stock)));
  const bound = Math.min(length, Math.max(lowerBound ?? 0, areaBound(work, stock)));
  return {
    fabricId: stock.fabricId,
    width: stock.width,
    strips: placed,
    length,
    lowerBound: bound,
    handbook,
    proven: length - bound <= 1e-9 * Math.max(1, length),
    leftovers: leftoversOf(placed, stock),
    nearMisses: nearMisses(demands, stock),
    unplaced: work.unplaced,
    findings: work.findings,
  };
}

/**
 * What is registered to a repeat first; then long strips that are joined; then tall to small, full
 * before partly used. Equal ones stay as they came.
 */
export function placeStrips(strips: readonly Strip[], fixed: readonly Strip[] = []): Strip[] {
  const joined = (s: Strip): number => (s.runs.some((r) => r.segment) ? 0 : 1);
  const order = strips.map((s, i) => ({ s, i }));
  order.sort(
    (a, b) =>
      joined(a.s) - joined(b.s) || b.s.height - a.s.height || b.s.times - a.s.times || a.i - b.i,
  );
  let from: Length = 0;
  return [...fixed, ...order.map(({ s }) => s)].map((s) => {
    const placed = { ...s, from };
    from += s.height * s.times;
    return placed;
  });
}

/** Least length by area alone: what the pieces cover, and the tallest of them. */
export function areaBound(work: Work, stock: Stock): Length {
  let area = 0;
  let tallest = 0;
  for (const job of work.jobs) {
    const least = Math.min(
      ...job.lays.map((lay) => {
        const per = copiesIn(lay, layerWidth(stock, job.layers));
        return (runLength(lay, per) * lay.height) / per;
      }),
    );
    area += least * job.cuts * job.layers;
    tallest = Math.max(tallest, Math.min(...job.lays.map((lay) => lay.height)));
  }
  // Registered strips are as they are: whole repeats, whatever lies in them.
  return Math.max(area / stock.width, tallest) + sum(work.fixed.map((s) => s.height * s.times));
}

/** Within a half inch at 40 in (an eightieth of the width) is worth telling. */
const NEAR = 1 / 80;

/** By how little a strip missed one more of each demand, in the orientation as it stands. */
function nearMisses(demands: readonly Demand[], stock: Stock): FabricLayout["nearMisses"] {
  const room = layerWidth(stock, stock.folds === 1 ? 2 : 1);
  return demands
    .filter((d) => d.fabricId === stock.fabricId && d.count > 0)
    .flatMap((d) => {
      const lay = laysOf(d)[0];
      const by = runLength(lay, copiesIn(lay, room) + 1) - room;
      return by > 0 && by <= stock.width * NEAR ? [{ demandId: d.id, by }] : [];
    });
}

export const sum = (xs: readonly number[]): number => xs.reduce((a, b) => a + b, 0);
