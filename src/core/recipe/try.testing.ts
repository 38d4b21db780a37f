import type { BlockGeometry, Patch, Role } from "../block/index.ts";
import { type Polygon, point } from "../geometry/index.ts";
import { stepOf, type Unit } from "../measure/index.ts";
import { type Piece, piecesOf } from "../piece/index.ts";
import { type Recipe, type RecipesInput, recipesOf } from "./index.ts";

/** For tests: one patch cut by itself, with the edges named in `outside` on the block's outline. */
export interface OnePatch {
  readonly polygon: Polygon;
  readonly outside?: readonly number[];
  readonly role?: Role;
  readonly seam?: number;
  readonly unit?: Unit;
  readonly step?: string;
  readonly choice?: { readonly size?: string; readonly kind?: string; readonly rule?: string };
  readonly ruler?: RecipesInput["ruler"];
}

export function cutOne(given: OnePatch): {
  piece: Piece;
  recipe: Recipe;
  result: ReturnType<typeof recipesOf>;
} {
  const { polygon, outside = [], role = "patch", seam = 0.25, unit = "in" } = given;
  const patch: Patch = {
    id: "one/patch",
    role,
    hand: "none",
    polygon,
    outside: polygon.map((_, i) => outside.includes(i)),
  };
  const fabrics = { f: { name: "F", letter: "A", directional: false, reversible: false } };
  const { pieces } = piecesOf({
    unit,
    seam,
    blocks: [{ geometry: blockOf(patch), count: 1, fabricOf: { "one/patch": "f" } }],
    extras: [],
    fabrics,
  });
  const result = recipesOf({
    pieces,
    ruler: given.ruler ?? { point: "sharp" },
    seam,
    step: stepOf(given.step ?? (unit === "in" ? "1/8" : "1"), unit),
    unit,
    fabrics,
    choices: given.choice ? { one: { [role]: given.choice } } : {},
  });
  return { piece: pieces[0], recipe: result.recipes[0], result };
}

const blockOf = (patch: Patch): BlockGeometry => ({
  id: "one",
  outline: patch.polygon,
  width: 1,
  height: 1,
  patches: [patch],
  tree: { kind: "patch", patch },
  choice: { name: "one patch", others: [], why: "only" },
});

export const box = (w: number, h: number): Polygon => [
  point(0, 0),
  point(w, 0),
  point(w, h),
  point(0, h),
];

/** Right triangle with its square corner at the origin, legs along x and y. Edge 1 is the long side. */
export const rightTriangle = (along: number, up: number): Polygon => [
  point(0, 0),
  point(along, 0),
  point(0, up),
];
