import {
  cut,
  depth,
  distance,
  edges,
  type HalfPlane,
  halfPlanes,
  ORIGIN,
  type Polygon,
  startNearest,
} from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import type { Patch, SeamTree } from "./types.ts";

/**
 * A seam tree before it has a size: which line cuts what. `inside` of the line becomes the first
 * part. Radial blocks and blocks of one's own both are plans; only `grow` ever cuts a polygon.
 */
export type Plan<Leaf> =
  | { readonly leaf: Leaf }
  | { readonly line: HalfPlane; readonly first: Plan<Leaf>; readonly second: Plan<Leaf> };

export type NamePatch<Leaf> = (
  leaf: Leaf,
  polygon: Polygon,
  path: string,
) => Omit<Patch, "polygon" | "outside">;

export interface Ground {
  readonly id: string;
  readonly outline: Polygon;
  /** Points this near are the same. */
  readonly join: Length;
}

/**
 * Cuts the outline by the plan. Every inner node is one full line across its unit, so every patch is
 * convex. Throws RangeError when a line of the plan misses its unit: plans are checked before.
 */
export function grow<Leaf>(plan: Plan<Leaf>, ground: Ground, name: NamePatch<Leaf>): SeamTree {
  const sides = halfPlanes(ground.outline);
  const visit = (node: Plan<Leaf>, unit: Polygon, path: string): SeamTree => {
    if ("leaf" in node) {
      const polygon = startNearest(unit, ORIGIN);
      const outside = edges(polygon).map((e) =>
        sides.some((s) => Math.max(depth(s, e.from), depth(s, e.to)) <= ground.join),
      );
      return { kind: "patch", patch: { ...name(node.leaf, polygon, path), polygon, outside } };
    }
    const two = cut(unit, node.line, ground.join);
    if (!two) throw new RangeError(`${ground.id}/u${path}: its seam does not cross it`);
    const [from, to] = two.chord;
    return {
      kind: "seam",
      id: `${ground.id}/u${path}`,
      outline: unit,
      seam: { from, to, length: distance(from, to) },
      parts: [
        visit(node.first, two.inside, `${path}0`),
        visit(node.second, two.outside, `${path}1`),
      ],
    };
  };
  return visit(plan, ground.outline, "");
}

/** Patches in the order of the tree. */
export function patchesOf(tree: SeamTree): Patch[] {
  const patches: Patch[] = [];
  const visit = (node: SeamTree): void => {
    if (node.kind === "patch") patches.push(node.patch);
    else node.parts.forEach(visit);
  };
  visit(tree);
  return patches;
}

/** Inner nodes, each after the parts it joins: the sewing order. The last one is the block. */
export function unitsOf(tree: SeamTree): (SeamTree & { kind: "seam" })[] {
  return tree.kind === "patch" ? [] : [...tree.parts.flatMap(unitsOf), tree];
}

export const outlineOf = (tree: SeamTree): Polygon =>
  tree.kind === "patch" ? tree.patch.polygon : tree.outline;
