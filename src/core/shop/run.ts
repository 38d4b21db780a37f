import type { KitProblem, Taken } from "./most.ts";
import type { Ticks } from "./ticks.ts";
import type { Bolt, BoltRun, KitCut, RunCut } from "./types.ts";

interface ToRun {
  readonly problem: KitProblem;
  readonly bolts: readonly Bolt[];
  readonly cutOf: (fabricId: string, boltId: string) => KitCut | undefined;
}

/**
 * Every cut in order, bolt by bolt as the kit's fabrics come, with its running total from the raw
 * end. Kits are numbered so that each fabric's first bolt serves the first kits.
 */
export function runsOf(setup: ToRun, taken: readonly Taken[], kits: number): BoltRun[] {
  const { problem } = setup;
  const kitsOf = numbered(taken, problem.fabricIds, kits);
  const inOrder = problem.fabricIds.flatMap((id) =>
    taken.filter((t) => t.fabricId === id).map((t) => t.boltId),
  );
  return [...new Set(inOrder)].map((boltId) => {
    const here = problem.fabricIds.flatMap((fabricId) =>
      taken.filter((t) => t.boltId === boltId && t.fabricId === fabricId),
    );
    return boltRun(setup, boltId, here, kitsOf);
  });
}

/** First kit that each take serves. */
function numbered(
  taken: readonly Taken[],
  fabricIds: readonly string[],
  kits: number,
): Map<Taken, number> {
  const first = new Map<Taken, number>();
  for (const fabricId of fabricIds) {
    let next = 1;
    for (const t of taken.filter((x) => x.fabricId === fabricId)) {
      first.set(t, next);
      next += t.cuts;
    }
    if (next - 1 !== kits)
      throw new RangeError(`${kits} cuts of ${fabricId} expected, got ${next - 1}`);
  }
  return first;
}

function boltRun(
  { problem, bolts, cutOf }: ToRun,
  boltId: string,
  here: readonly Taken[],
  kitsOf: ReadonlyMap<Taken, number>,
): BoltRun {
  const room = problem.bolts.find((b) => b.id === boltId)!;
  const bolt = bolts.find((b) => b.id === boltId)!;
  let soFar: Ticks = room.loss;
  let width: Ticks = 0;
  const cuts: RunCut[] = [];
  for (const t of here) {
    const use = problem.uses.find((u) => u.boltId === boltId && u.fabricId === t.fabricId)!;
    const cut = cutOf(t.fabricId, boltId)!;
    width = Math.max(width, cut.width);
    for (let i = 0; i < t.cuts; i++) {
      const loss = use.each - cut.length + (i === 0 ? use.setup : 0);
      soFar += loss + cut.length;
      cuts.push({
        kit: (kitsOf.get(t) ?? 1) + i,
        fabricId: t.fabricId,
        length: cut.length,
        loss,
        soFar,
        left: room.length - soFar,
      });
    }
  }
  return {
    boltId,
    name: bolt.name,
    ...(bolt.note !== undefined && { note: bolt.note }),
    length: room.length,
    width,
    straighten: room.loss,
    cuts,
    used: soFar,
    left: room.length - soFar,
  };
}
