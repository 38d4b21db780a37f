import { clip, type HalfPlane, type Polygon } from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import { handOf } from "./hand.ts";
import { grow, outlineOf, type Plan, patchesOf } from "./plan.ts";
import type { BlockGeometry, Patch, SeamTree } from "./types.ts";

export interface HalfBlock {
  readonly geometry: BlockGeometry;
  /** Patches of the whole block that the halving line cuts in two. */
  readonly cutPatches: readonly string[];
}

/**
 * The part of a block inside a line, as a block of its own in the whole block's frame: for the edges
 * of a quilt and for rows of hexagons. Seams that lie outside, or on the line, fall away; the others
 * are cut short. A patch keeps its id's tail and its role; one cut in two gets its own hand.
 */
export function halveBlock(
  block: BlockGeometry,
  keep: HalfPlane,
  id: string,
  join: Length,
): HalfBlock {
  const outline = clip(block.outline, keep, join);
  if (outline.length < 3) throw new RangeError(`${block.id}: the halving line misses the block`);
  const plan = pruned(block.tree, keep, join);
  if (!plan) throw new RangeError(`${block.id}: nothing lies inside the halving line`);
  const whole = (p: Patch): boolean =>
    clip(p.polygon, keep, join).length === p.polygon.length && inside(p.polygon, keep, join);
  const cutPatches = patchesOf(block.tree)
    .filter((p) => clip(p.polygon, keep, join).length >= 3 && !whole(p))
    .map((p) => p.id);
  const tree = grow(plan, { id, outline, join }, (leaf, polygon) => ({
    ...leaf,
    id: `${id}/${leaf.id.slice(leaf.id.indexOf("/") + 1)}`,
    hand: cutPatches.includes(leaf.id) ? handOf(polygon, join) : leaf.hand,
  }));
  const xs = outline.map((v) => v.x);
  const ys = outline.map((v) => v.y);
  const { radial: _whole, ...rest } = block;
  return {
    geometry: {
      ...rest,
      id,
      outline,
      width: Math.max(...xs) - Math.min(...xs),
      height: Math.max(...ys) - Math.min(...ys),
      patches: patchesOf(tree),
      tree,
    },
    cutPatches,
  };
}

const inside = (p: Polygon, keep: HalfPlane, join: Length): boolean =>
  p.every((v) => keep.c - (keep.n.x * v.x + keep.n.y * v.y) >= -join);

/** The tree's plan with everything outside the line left out. */
function pruned(tree: SeamTree, keep: HalfPlane, join: Length): Plan<Patch> | undefined {
  if (clip(outlineOf(tree), keep, join).length < 3) return undefined;
  if (tree.kind === "patch") return { leaf: tree.patch };
  const [first, second] = tree.parts.map((part) => pruned(part, keep, join));
  if (!first || !second) return first ?? second;
  return { line: lineOf(tree), first, second };
}

/** The seam's line with the first part inside. */
function lineOf(node: Extract<SeamTree, { kind: "seam" }>): HalfPlane {
  const { from, to } = node.seam;
  const length = node.seam.length;
  const n = { x: (to.y - from.y) / length, y: -(to.x - from.x) / length };
  const c = n.x * from.x + n.y * from.y;
  const middle = outlineOf(node.parts[0]).reduce(
    (sum, v, _, all) => sum + (c - (n.x * v.x + n.y * v.y)) / all.length,
    0,
  );
  return middle >= 0 ? { n, c } : { n: { x: -n.x, y: -n.y }, c: -c };
}
