import type { Brief } from "../../brief/index.ts";
import {
  type Length,
  liesOnStep,
  printLength,
  printWithUnit,
  type Step,
} from "../../measure/index.ts";
import type { Piece } from "../../piece/types.ts";
import type { Cut, Recipe } from "../../recipe/types.ts";
import type { Answer } from "../types/answer.ts";
import { inWords, stepOfBrief } from "../words/word.ts";
import { amount } from "./buying.ts";
import { spoken } from "./spoken.ts";

/** A length that need not lie on the ruler: to the step where it does, else three decimals. */
const print = (x: Length, step: Step): string => printWithUnit(x, step);

const CUT: Readonly<Record<string, (l: readonly string[]) => string>> = {
  strip: ([h]) => `${h} strip`,
  square: ([side]) => `${side} square`,
  rectangle: (l) => `${l.join(" × ")} rectangle`,
  once: () => "cut once corner to corner",
  twice: () => "cut twice corner to corner",
  crosscut: ([w]) => `cut every ${w}`,
  wedge: () => "wedges turned end for end",
  slant: () => "cut on the slant, turned end for end",
  slice: () => "sliced by two marks",
  "corner-off": () => "a corner cut off",
  template: () => "from the printed template",
};

const cutText = (c: Cut, step: Step): string => {
  const lengths = c.lengths.map((x) => print(x, step));
  return CUT[c.op]?.(lengths) ?? c.op.replaceAll("-", " ");
};

/** How a piece is cut, in few words: "4 in square, cut once corner to corner". */
export const howCut = (recipe: Recipe, step: Step): string =>
  [...new Set(recipe.cuts.map((c) => cutText(c, step)))].join(", ");

/** The first cut alone: "4 in square". */
export const firstCut = (recipe: Recipe, step: Step): string =>
  recipe.cuts.length > 0 ? cutText(recipe.cuts[0], step) : "";

/** What a proof says of one piece: "0.152 in to spare", "exact", "thin", "short". */
export function spareText(recipe: Recipe, seam: Length, step: Step): string {
  if (recipe.verdict === "blocked" && recipe.reach < -1e-3)
    return `${print(-recipe.reach, step)} short`;
  if (recipe.verdict !== "proved")
    return `${print(recipe.w, step)} where ${print(seam, step)} is wanted`;
  const free = recipe.spareBySide.length > 0;
  return free
    ? `${print(Math.max(0, recipe.w - seam), step)} to spare`
    : "every edge set, nothing to spare";
}

export const nameOfFabric = (b: Brief, fabricId: string): string =>
  b.fabrics.find((f) => f.id === fabricId)?.name ?? fabricId;

/** "one of 48": never "one of 1". */
const oneOf = (p: Piece): string => (p.count === 1 ? "the only one" : `one of ${p.count}`);

/** What is touched in the picture, in two parts: the piece, and what is known of it. */
export function patchLabel(
  b: Brief,
  a: Answer,
  blockId: string,
  patchId: string,
): { readonly name: string; readonly rest: string; readonly doubt: boolean } | undefined {
  const block = a.blocks.find((k) => k.id === blockId);
  const piece = a.pieces.find((p) => p.id === block?.pieceOf[patchId]);
  if (!block || !piece) return undefined;
  const recipe = a.recipes.find((r) => r.pieceId === piece.id);
  const cut = recipe ? `, from a ${firstCut(recipe, stepOfBrief(b))}` : "";
  const doubt = recipe !== undefined && recipe.verdict !== "proved";
  return {
    name: `${capital(piece.name)} ${piece.letter}`,
    rest: `${nameOfFabric(b, piece.fabricId)}, ${oneOf(piece)}${cut}${doubt ? ", not proved" : ""}`,
    doubt,
  };
}

/** The same, spoken: "Kite, Foam, one of 48, from a 4 inch square, not proved". */
export function patchSaid(b: Brief, a: Answer, blockId: string, patchId: string): string {
  const label = patchLabel(b, a, blockId, patchId);
  return label ? spoken(`${label.name}, ${label.rest}`) : patchId;
}

/** What each fabric is used for, counted: "24 wedges, 48 kites, binding". */
export function usesOf(b: Brief, a: Answer, fabricId: string): string {
  const counts = new Map<string, number>();
  for (const p of a.pieces)
    if (p.fabricId === fabricId) counts.set(p.name, (counts.get(p.name) ?? 0) + p.count);
  const uses = [...counts].map(([name, n]) => `${n} ${n === 1 ? name : severalOf(name)}`);
  if (b.finishing?.binding?.fabric === fabricId) uses.push("binding");
  if (b.finishing?.backing?.fabric === fabricId) uses.push("backing");
  return uses.join(", ");
}

const severalOf = (name: string): string => (/(sh|ch|x)$/.test(name) ? `${name}es` : `${name}s`);

/** "24 × 64 in": the finished top. */
export function sizeText(b: Brief, a: Answer): string {
  if (!a.quilt) return "";
  const step = stepOfBrief(b);
  return `${printLength(a.quilt.width, step)} × ${printWithUnit(a.quilt.height, step)}`;
}

/** "3 1/4 yd": all that is to be bought at the stated widths. */
export function totalBuy(a: Answer): { readonly text: string; readonly fabrics: string } {
  const seen = new Map<string, Length>();
  for (const y of a.yardages) if (!seen.has(y.fabricId)) seen.set(y.fabricId, y.buy);
  const total = [...seen.values()].reduce((x, y) => x + y, 0);
  const n = seen.size;
  return {
    text: amount(total, a.unit),
    fabrics: `in ${inWords(n)} ${n === 1 ? "fabric" : "fabrics"}`,
  };
}

/** Ids an answer is lit by, as patches of blocks: block id -> patch ids. */
export function patchesLit(a: Answer, ids: readonly string[]): Map<string, Set<string>> {
  const wanted = new Set(ids);
  const lit = new Map<string, Set<string>>();
  for (const block of a.blocks) {
    const patches = block.patches
      .filter(
        (p) =>
          wanted.has(block.id) ||
          wanted.has(p.id) ||
          wanted.has(block.pieceOf[p.id]) ||
          wanted.has(block.fabricOf[p.id]),
      )
      .map((p) => p.id);
    if (patches.length > 0) lit.set(block.id, new Set(patches));
  }
  return lit;
}

/** Patches of these roles, as `patchesLit`. */
export function patchesOfRoles(
  a: Answer,
  decides: readonly { readonly block?: string; readonly role: string }[],
): Map<string, Set<string>> {
  const lit = new Map<string, Set<string>>();
  for (const block of a.blocks) {
    const patches = block.patches
      .filter((p) =>
        decides.some((d) => d.role === p.role && (d.block === undefined || d.block === block.id)),
      )
      .map((p) => p.id);
    if (patches.length > 0) lit.set(block.id, new Set(patches));
  }
  return lit;
}

/** What stands at the right of the head: how far the numbers are proved. */
export function stateText(a: Answer): string {
  const blocked = a.findings.filter((f) => f.severity === "blocks").length;
  const open = a.findings.filter((f) => f.severity === "draft").length;
  const n = blocked + open;
  if (n === 0) return "every number is proved";
  return `draft: ${inWords(n)} ${n === 1 ? "number is" : "numbers are"} not proved`;
}

const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);

/** Is a length on the marks of the ruler? Where not, its number is said to be between them. */
export const onRuler = (b: Brief, x: Length): boolean => liesOnStep(x, stepOfBrief(b));
