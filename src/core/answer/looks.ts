import type { Brief } from "../brief/index.ts";
import { blockLook, type Look, lookOf, type PatchLook } from "../fabric/index.ts";
import { knownLength } from "../measure/index.ts";
import { pastCenter, rulerOf } from "../recipe/index.ts";
import type { Answer } from "./types.ts";

/**
 * The real fabric as it shows in every patch, by kind of block: for pictures, never for numbers. A
 * kind of block is worked out once, however often the quilt has it.
 */
export function looksOf(brief: Brief, answer: Answer): Readonly<Record<string, PatchLook[]>> {
  const seam = knownLength(brief.seam, brief.unit);
  const looks: Record<string, Look> = Object.fromEntries(
    brief.fabrics.map((f) => [f.id, lookOf(f, brief.fabrics, brief.unit, seam).look]),
  );
  const pieces = new Map(answer.pieces.map((p) => [p.id, p]));
  return Object.fromEntries(
    answer.blocks.map((geometry) => {
      const block = brief.blocks.find((b) => b.id === geometry.id.split("~")[0])!;
      const pieceOf = Object.fromEntries(
        Object.entries(geometry.pieceOf).flatMap(([patch, id]) => {
          const piece = pieces.get(id);
          return piece ? [[patch, piece]] : [];
        }),
      );
      const { radial, fabricOf } = geometry;
      const wedge = radial && {
        a: radial.a,
        seam,
        past: pastCenter(rulerOf(brief.ruler, radial.n, brief.unit), seam),
      };
      return [
        geometry.id,
        blockLook({
          block,
          geometry,
          fabricOf,
          looks,
          pieceOf,
          unit: brief.unit,
          ...(wedge && { wedge }),
        }),
      ];
    }),
  );
}
