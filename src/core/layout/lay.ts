import type { Length } from "../measure/index.ts";
import type { Demand, Stock } from "./types.ts";

/** One way a demand may lie on a strip. A run of k copies is `first + (k - 1) * pitch` long. */
export interface Lay {
  readonly first: Length;
  readonly pitch: Length;
  readonly height: Length;
  readonly turned: boolean;
}

/** Far below what can be cut: a run this much over the width still fits (float noise only). */
export const NOISE = 1e-9;

export const fits = (needed: Length, room: Length): boolean => needed <= room + NOISE * room;

/** Length of strip a run of `copies` takes. */
export const runLength = (lay: Lay, copies: number): Length =>
  copies < 1 ? 0 : lay.first + (copies - 1) * lay.pitch;

/** Most copies a run in `room` may have. */
export function copiesIn(lay: Lay, room: Length): number {
  if (!fits(lay.first, room)) return 0;
  return 1 + Math.floor((room - lay.first + NOISE * room) / lay.pitch);
}

/** The ways the demand may lie: as it stands; a quarter turned where fabric and recipe let it. */
export function laysOf(demand: Demand): readonly Lay[] {
  const { kind, first, pitch, height } = demand.shape;
  const turned: Lay = { first: height, pitch: height, height: first, turned: true };
  if (kind === "along") return [turned];
  const upright: Lay = { first, pitch, height, turned: false };
  const mayTurn = kind === "rect" && demand.turns === "quarter" && !demand.up && first !== height;
  return mayTurn ? [upright, turned] : [upright];
}

/** Room along one layer of a strip: half the width when it is cut folded (nothing crosses a fold). */
export const layerWidth = (stock: Stock, layers: 1 | 2): Length => stock.width / layers;
