import type { Patch, SeamTree } from "../block/types.ts";
import {
  cross,
  depth,
  distance,
  edges,
  halfPlanes,
  type Polygon,
  subtract,
} from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import type { Recipe } from "../recipe/types.ts";
import { outlineOf, patchesIn } from "./tree.ts";

/** What the cut piece of a patch has beyond its allowance at edge i of the patch. */
export type SpareOf = (patch: Patch, edge: number) => Length;

export const noSpare: SpareOf = () => 0;

/**
 * Spare by patch edge, read from the recipes (docs/geometry/proof-of-cover.md). A recipe tells it in
 * the frame of its own patch; the edges are matched by the shape of the two. Throws RangeError when
 * a recipe's patch is another shape than the block's.
 */
export function spareFrom(
  recipes: readonly Recipe[],
  pieceOf: Readonly<Record<string, string>>,
  near: Length,
): SpareOf {
  const byPiece = new Map(recipes.map((r) => [r.pieceId, r]));
  const known = new Map<string, readonly Length[]>();
  return (patch, edge) => {
    let spares = known.get(patch.id);
    if (!spares) {
      const recipe = byPiece.get(pieceOf[patch.id]);
      spares = recipe ? spareByEdge(patch.polygon, recipe, near) : patch.polygon.map(() => 0);
      known.set(patch.id, spares);
    }
    return spares[edge];
  };
}

function spareByEdge(polygon: Polygon, recipe: Recipe, near: Length): Length[] {
  const at = sameEdges(polygon, recipe.patch, near);
  if (!at)
    throw new RangeError(`recipe of ${recipe.pieceId}: its patch is not the shape of the block's`);
  return at.map((j) => recipe.spareBySide.find((s) => s.index === j)?.spare ?? 0);
}

/** Which edge of b each edge of a is, turned only or turned over. */
function sameEdges(a: Polygon, b: Polygon, near: Length): number[] | undefined {
  const n = a.length;
  if (b.length !== n) return undefined;
  const lengths = (p: Polygon) => edges(p).map((e) => distance(e.from, e.to));
  const turns = (p: Polygon) =>
    p.map((v, i) => {
      const into = subtract(v, p[(i + n - 1) % n]);
      const out = subtract(p[(i + 1) % n], v);
      return cross(into, out);
    });
  const [la, lb, ta, tb] = [lengths(a), lengths(b), turns(a), turns(b)];
  const slack = 10 * near;
  const area = slack * Math.max(...la);
  for (const step of [1, -1])
    for (let k = 0; k < n; k++) {
      const at = a.map((_, i) => (((k + step * i) % n) + n) % n);
      const corner = (i: number) => (step === 1 ? at[i] : (at[i] + 1) % n);
      const fits =
        at.every((j, i) => Math.abs(la[i] - lb[j]) <= slack) &&
        at.every((_, i) => Math.abs(ta[i] - tb[corner(i)]) <= 4 * area);
      if (fits) return at;
    }
  return undefined;
}

/** The least spare along each outline edge of a unit, over the patches that lie on it. */
export function spareAlong(unit: SeamTree, spareOf: SpareOf, near: Length): Length[] {
  const patches = patchesIn(unit);
  return halfPlanes(outlineOf(unit)).map((side) => {
    const spares = patches.flatMap((patch) =>
      edges(patch.polygon).flatMap((e, i) =>
        Math.abs(depth(side, e.from)) <= near && Math.abs(depth(side, e.to)) <= near
          ? [spareOf(patch, i)]
          : [],
      ),
    );
    return spares.length === 0 ? 0 : Math.min(...spares);
  });
}
