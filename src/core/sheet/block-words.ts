import type { AnswerBlock } from "../answer/index.ts";
import { counted, plural } from "./job.ts";

type Kind = Pick<AnswerBlock, "id" | "name" | "count">;

/** The part of a block that a kind is, and the block it is of; a whole block has no part. */
function partOf({ id, name }: Pick<Kind, "id" | "name">): {
  readonly part?: string;
  readonly of: string;
} {
  const cut = id.includes("~") ? name.lastIndexOf(", ") : -1;
  return cut < 0 ? { of: name } : { part: name.slice(cut + 2), of: name.slice(0, cut) };
}

/** "star", "left half of star". */
export function kindName(kind: Pick<Kind, "id" | "name">): string {
  const { part, of } = partOf(kind);
  return part === undefined ? of : `${part} of ${of}`;
}

/** One: "star block", "left half of star". Several: "star blocks", "left halves of star". */
export function blockName(kind: Pick<Kind, "id" | "name">, count: number): string {
  const { part, of } = partOf(kind);
  if (part === undefined) return count === 1 ? `${of} block` : `${of} blocks`;
  return `${count === 1 ? part : plural(part)} of ${of}`;
}

/** What is sewn of this kind: "block", "half block", "quarter block". */
export function blockSort({ id }: Pick<Kind, "id">): string {
  if (!id.includes("~")) return "block";
  return id.endsWith("-quarter") ? "quarter block" : "half block";
}

export const isWhole = (kind: Pick<Kind, "id">): boolean => blockSort(kind) === "block";

/** How many of each sort there are, whole ones first: [27, "blocks"], [6, "half blocks"]. */
export function blockCounts(kinds: readonly Kind[]): (readonly [number, string])[] {
  return ["block", "half block", "quarter block"].flatMap((sort) => {
    const count = kinds.reduce((sum, k) => sum + (blockSort(k) === sort ? k.count : 0), 0);
    return count === 0 ? [] : [[count, counted(count, sort).replace(/^\d+ /, "")] as const];
  });
}
