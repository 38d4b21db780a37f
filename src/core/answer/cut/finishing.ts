import type { Demand } from "../../layout/index.ts";
import { roundUp, type Step } from "../../measure/index.ts";
import type { FinishingFacts } from "../../quilt/index.ts";

/**
 * What binding and backing ask of the planner, panels as long as they are cut: up to the maker's step.
 * Batting is bought by its size.
 */
export function finishingDemands(f: FinishingFacts, step: Step): Demand[] {
  return [...bindingDemand(f), ...backingDemand(f, step)];
}

const COMMON = { hand: "none", up: false, layers: 1, piecesEach: 1 } as const;

function bindingDemand({ binding: b }: FinishingFacts): Demand[] {
  if (!b) return [];
  const base = { ...COMMON, id: "binding", fabricId: b.fabricId, count: 1, pieceIds: ["binding"] };
  if (b.square !== undefined) {
    const shape = { kind: "rect", first: b.square, pitch: b.square, height: b.square } as const;
    return [{ ...base, shape, turns: "quarter", joinsAllowed: false }];
  }
  const shape = { kind: "rect", first: b.length, pitch: b.length, height: b.strip } as const;
  return [{ ...base, shape, turns: "none", joinsAllowed: true, joinLoss: b.joinLoss }];
}

/** Panels run along the selvage, so their length lies along the fabric. */
function backingDemand({ backing: b }: FinishingFacts, step: Step): Demand[] {
  if (!b) return [];
  const shape = {
    kind: "rect",
    first: b.panelWidth,
    pitch: b.panelWidth,
    height: roundUp(b.panelLength, step),
  } as const;
  return [
    {
      ...COMMON,
      id: "backing",
      fabricId: b.fabricId,
      count: b.panels,
      pieceIds: ["backing"],
      shape,
      turns: "none",
      joinsAllowed: false,
    },
  ];
}
