import type { Brief } from "../../brief/index.ts";
import type { Demand } from "../../layout/index.ts";
import { roundUp, type Step } from "../../measure/index.ts";
import type { Piece } from "../../piece/index.ts";

/** `border/0/upright` -> 0; undefined for any other patch. */
const borderOf = (patchId: string): number | undefined => {
  const found = /^border\/(\d+)\/(upright|level)$/.exec(patchId);
  return found ? Number(found[1]) : undefined;
};

/**
 * Borders as the brief cuts them. Across: strips from selvage to selvage, joined where the border is
 * longer. Along: whole, their length parallel to the selvage and up to the step, as it is cut. A strip
 * set has no selvage to lie along: its border runs along its strips, joined. Other demands stay as they
 * are.
 */
export function borderDemands(
  brief: Brief,
  step: Step,
  pieces: readonly Piece[],
  demands: readonly Demand[],
): Demand[] {
  const cutOf = new Map(
    pieces.flatMap((p) => {
      const cuts = p.patchIds.flatMap((id) => brief.quilt.borders[borderOf(id) ?? -1]?.cut ?? []);
      return cuts.length === 0 ? [] : [[p.id, cuts.includes("along") ? "along" : "across"]];
    }),
  );
  const sets = new Set(brief.fabrics.filter((f) => f.kind === "strip-set").map((f) => f.id));
  return demands.map((d): Demand => {
    const cut = d.pieceIds.map((id) => cutOf.get(id)).find((c) => c !== undefined);
    if (!cut || d.shape.kind !== "rect") return d;
    if (cut === "across" || sets.has(d.fabricId)) return { ...d, turns: "half" };
    const { joinLoss: _, ...rest } = d;
    const { first, height } = d.shape;
    const long = roundUp(Math.max(first, height), step);
    const wide = Math.min(first, height);
    const shape = { kind: "along", first: long, pitch: long, height: wide } as const;
    return { ...rest, shape, joinsAllowed: false };
  });
}
