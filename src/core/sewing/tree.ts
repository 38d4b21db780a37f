import type { Patch, SeamTree } from "../block/types.ts";
import { centroid, type Point, type Polygon } from "../geometry/index.ts";

/** An inner node of the seam tree: two parts and the seam that joins them. */
export type SeamNode = Extract<SeamTree, { kind: "seam" }>;

export const outlineOf = (t: SeamTree): Polygon =>
  t.kind === "patch" ? t.patch.polygon : t.outline;

export const idOf = (t: SeamTree): string => (t.kind === "patch" ? t.patch.id : t.id);

/** Every seam below and at t, each after those it rests on: the sewing order. */
export function seamNodes(t: SeamTree): SeamNode[] {
  return t.kind === "patch" ? [] : [...seamNodes(t.parts[0]), ...seamNodes(t.parts[1]), t];
}

export function patchesIn(t: SeamTree): Patch[] {
  return t.kind === "patch" ? [t.patch] : [...patchesIn(t.parts[0]), ...patchesIn(t.parts[1])];
}

/** 0 for a patch; 1 joins two patches; every other unit one more than the later of its parts. */
export const stageOf = (t: SeamTree): number =>
  t.kind === "patch" ? 0 : 1 + Math.max(stageOf(t.parts[0]), stageOf(t.parts[1]));

export const middleOf = (t: SeamTree): Point => centroid(outlineOf(t));
