import type { Demand } from "./demand-types.ts";
import type { Judged, RecipeFabric } from "./input.ts";
import { near } from "./plan.ts";

/**
 * What the planner must find room for. `count` is copies of the shape, each giving `piecesEach`
 * pieces. Lefts and rights that can be sliced from the same squares share one demand, so that no
 * square is cut for one hand alone.
 */
export function demandsOf(
  judged: readonly Judged[],
  fabrics: Readonly<Record<string, RecipeFabric>>,
): Demand[] {
  const done = new Set<Judged>();
  const demands: Demand[] = [];
  for (const j of judged) {
    if (done.has(j) || j.piece.count === 0) continue;
    const together = [j, ...judged.filter((k) => k !== j && !done.has(k) && share(j, k))];
    for (const k of together) done.add(k);
    demands.push(demandOf(together, fabrics[j.piece.fabricId]));
  }
  return demands.sort((a, b) => (a.id < b.id ? -1 : 1));
}

const share = (a: Judged, b: Judged): boolean =>
  a.plan.hands === "either" &&
  b.plan.hands === "either" &&
  a.piece.mirrorId === b.piece.id &&
  near(a.plan.size, b.plan.size);

function demandOf(together: readonly Judged[], fabric: RecipeFabric | undefined): Demand {
  const [{ plan, piece }] = together;
  const pieces = together.reduce((sum, t) => sum + t.piece.count, 0);
  const directional = fabric?.directional ?? false;
  const pieceIds = together.map((t) => t.piece.id).sort();
  return {
    id: `d-${pieceIds[0]}`,
    fabricId: piece.fabricId,
    shape: plan.shape,
    count: Math.ceil(pieces / plan.piecesEach),
    turns: directional
      ? "none"
      : plan.shape.kind === "rect" && !fabric?.striped
        ? "quarter"
        : "half",
    hand: plan.hands === "either" ? "none" : piece.hand,
    up: directional,
    layers: 1,
    joinsAllowed: plan.joinsAllowed ?? false,
    ...(plan.joinsAllowed ? { joinLoss: 2 * piece.edges[0].allowance } : {}),
    piecesEach: plan.piecesEach,
    pieceIds,
  };
}
