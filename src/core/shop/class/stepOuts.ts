import { type Answer, fabricLetters, sewingSteps } from "../../answer/index.ts";
import type { SeamTree } from "../../block/types.ts";
import type { Brief } from "../../brief/index.ts";
import { type FabricToPlan, planQuilt } from "../../layout/index.ts";
import { knownLength } from "../../measure/index.ts";
import type { StepOut, StepOuts } from "./types.ts";

/**
 * One sample for every stage of every kind of block, sewn that far and no farther, with the fabric for
 * all of them together: the design's own way of cutting, planned for their pieces alone.
 */
export function stepOutsOf(brief: Brief, answer: Answer): StepOuts {
  const samples = sewingSteps(brief, answer).flatMap(({ block, steps }) =>
    block.count === 0
      ? []
      : steps.map((step): StepOut & { readonly pieceIds: readonly string[] } => {
          const part = partOf(block.tree, step.unit.id);
          const pieceIds = (part ? patchesIn(part) : []).map((id) => block.pieceOf[id] ?? "");
          return {
            blockId: block.id,
            block: block.name,
            unitId: step.unit.id,
            name: step.name,
            measure: step.measure,
            pieces: counted(answer, pieceIds),
            pieceIds,
          };
        }),
  );
  const wanted = new Map<string, number>();
  for (const s of samples) for (const id of s.pieceIds) wanted.set(id, (wanted.get(id) ?? 0) + 1);
  return {
    samples: samples.map(({ pieceIds: _, ...s }) => s),
    fabric: fabricFor(brief, answer, wanted),
  };
}

function partOf(tree: SeamTree, id: string): SeamTree | undefined {
  if (tree.kind === "patch") return undefined;
  if (tree.id === id) return tree;
  return partOf(tree.parts[0], id) ?? partOf(tree.parts[1], id);
}

const patchesIn = (tree: SeamTree): string[] =>
  tree.kind === "patch" ? [tree.patch.id] : tree.parts.flatMap(patchesIn);

function counted(answer: Answer, pieceIds: readonly string[]): StepOut["pieces"] {
  return answer.pieces.flatMap((p) => {
    const count = pieceIds.filter((id) => id === p.id).length;
    return count === 0 ? [] : [{ letter: p.letter, name: p.name, count }];
  });
}

/** The lengths of fabric that give these pieces, strip sets and what they are sewn from included. */
function fabricFor(
  brief: Brief,
  answer: Answer,
  wanted: ReadonlyMap<string, number>,
): StepOuts["fabric"] {
  const letters = fabricLetters(brief);
  const left = new Map(wanted);
  const demands = answer.demands.flatMap((d) => {
    const pieces = d.pieceIds.reduce((n, id) => n + (left.get(id) ?? 0), 0);
    if (pieces === 0) return [];
    const most = d.count * d.piecesEach;
    // A piece that several demands share is taken from the first that can give it.
    const count = Math.ceil(Math.min(pieces, most) / d.piecesEach);
    for (const id of d.pieceIds) left.set(id, Math.max(0, (left.get(id) ?? 0) - most));
    return [{ ...d, count, register: undefined }];
  });
  const fabrics = answer.layouts.map((l): FabricToPlan => {
    const fabric = brief.fabrics.find((f) => f.id === l.fabricId);
    const stock = { fabricId: l.fabricId, width: l.width, folds: 0 as const };
    if (fabric?.kind !== "strip-set") return { stock };
    const height = answer.demands.find((d) => d.fabricId === l.fabricId)?.shape.height ?? 0;
    const strips = fabric.strips.map((s) => ({
      fabricId: s.fabric,
      cut: knownLength(s.cut, brief.unit),
    }));
    return { stock, stripSet: { strips, height } };
  });
  return planQuilt(demands, fabrics).fabrics.flatMap((p) => {
    const fabric = brief.fabrics.find((f) => f.id === p.fabricId);
    if (!fabric || fabric.kind === "strip-set" || p.length <= 0) return [];
    const base = { fabricId: fabric.id, letter: letters[fabric.id] ?? "", name: fabric.name };
    return [{ ...base, length: p.length }];
  });
}
