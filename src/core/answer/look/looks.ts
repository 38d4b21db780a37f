import { type Brief, seamOf } from "../../brief/index.ts";
import {
  type BlockLookInput,
  blockLook,
  type Look,
  lookOf,
  type PatchLook,
  type WedgeCut,
} from "../../fabric/index.ts";
import { pastCenter, rulerOf } from "../../recipe/index.ts";
import type { Answer, AnswerBlock } from "../types/answer.ts";

/** What of an answer the real fabric in its patches follows from. */
export type Cut = Pick<Answer, "blocks" | "pieces" | "demands" | "layouts">;

/**
 * The real fabric as it shows in every patch, by kind of block: for pictures, never for numbers. A
 * kind of block is worked out once, however often the quilt has it.
 */
export function looksOf(brief: Brief, answer: Cut): Readonly<Record<string, PatchLook[]>> {
  const input = lookInputs(brief, answer);
  return Object.fromEntries(answer.blocks.map((b) => [b.id, blockLook(input(b))]));
}

/** The same for one kind of block. */
export const looksOfBlock = (brief: Brief, answer: Cut, block: AnswerBlock): PatchLook[] =>
  blockLook(lookInputs(brief, answer)(block));

/** What each fabric of a brief looks like, by its id. */
export function fabricLooks(brief: Brief): Readonly<Record<string, Look>> {
  const seam = seamOf(brief);
  return Object.fromEntries(
    brief.fabrics.map((f) => [f.id, lookOf(f, brief.fabrics, brief.unit, seam).look]),
  );
}

/** How the wedges of a block are cut; nothing for blocks without a circle. */
export function wedgeCutOf(brief: Brief, geometry: AnswerBlock): WedgeCut | undefined {
  const { radial } = geometry;
  if (!radial) return undefined;
  const seam = seamOf(brief);
  return {
    a: radial.a,
    seam,
    past: pastCenter(rulerOf(brief.ruler, radial.n, brief.unit), seam),
  };
}

/** All that `blockLook` asks for, for any kind of block of one answer. */
export function lookInputs(
  brief: Brief,
  answer: Cut,
): (geometry: AnswerBlock) => BlockLookInput & { readonly wedge?: WedgeCut } {
  const looks = fabricLooks(brief);
  const pieces = new Map(answer.pieces.map((p) => [p.id, p]));
  const strips = stripsByPiece(answer);
  return (geometry) => {
    const block = brief.blocks.find((b) => b.id === geometry.id.split("~")[0]);
    if (!block) throw new RangeError(`${geometry.id}: a block of the brief expected`);
    const pieceOf = Object.fromEntries(
      Object.entries(geometry.pieceOf).flatMap(([patch, id]) => {
        const piece = pieces.get(id);
        return piece ? [[patch, piece]] : [];
      }),
    );
    const wedge = wedgeCutOf(brief, geometry);
    const { fabricOf } = geometry;
    return {
      block,
      geometry,
      fabricOf,
      looks,
      pieceOf,
      unit: brief.unit,
      strips,
      ...(wedge && { wedge }),
    };
  };
}

/** From how many strips the pile of each piece is cut: a free round is dealt from all of them. */
function stripsByPiece({ demands, layouts }: Cut): Readonly<Record<string, number>> {
  const byDemand = new Map<string, number>();
  for (const strip of layouts.flatMap((l) => l.strips))
    for (const id of new Set(strip.runs.map((r) => r.demandId)))
      byDemand.set(id, (byDemand.get(id) ?? 0) + strip.times * strip.layers);
  const out: Record<string, number> = {};
  for (const d of demands)
    for (const id of d.pieceIds) {
      const strips = byDemand.get(d.id);
      if (strips) out[id] = (out[id] ?? 0) + strips;
    }
  return out;
}
