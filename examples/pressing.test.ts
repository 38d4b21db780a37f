import { describe, expect, test } from "vitest";
import { examples } from "../scripts/examples.ts";
import {
  type Crossing,
  crossingsBetween,
  crossingsIn,
  gridOf,
  keyOf,
  pressFor,
  seamThroughCenter,
} from "../src/core/sewing/index.ts";

const NEAR = 1e-6;
const MOST = 18;

/** Tries every way of pressing, where that is feasible: shares no code with the planner of pressing. */
function bruteForce(crossings: readonly Crossing[]): number | undefined {
  const ids = [...new Set(crossings.flatMap((x) => x.seams))];
  if (ids.length > MOST) return undefined;
  const at = crossings.map((x) => ({
    ...x,
    u: ids.indexOf(x.seams[0]),
    v: ids.indexOf(x.seams[1]),
  }));
  let best = 0;
  for (let bits = 0; bits < 2 ** ids.length; bits++) {
    let nests = 0;
    for (const x of at)
      if ((((bits >> x.u) ^ (bits >> x.v)) & 1) === (x.differ ? 1 : 0)) nests += x.count;
    best = Math.max(best, nests);
  }
  return best;
}

describe.each(examples().map((e) => [e.name, e] as const))("%s", (_, { brief, answer }) => {
  const keys = new Map(answer.blocks.flatMap((b) => b.patches.map((p) => [p.id, keyOf(b)(p.id)])));
  const key = (id: string): string => keys.get(id) ?? id;

  test.each(answer.blocks.map((b) => [b.id, b] as const))(
    "inside the block as many crossings nest as any pressing allows (%s)",
    (_id, block) => {
      const alone = pressFor([block], { ...brief.quilt, rows: 1, columns: 1 }, key, NEAR);
      const fanned = seamThroughCenter(block.tree, NEAR)?.id;
      const best = bruteForce(crossingsIn(block.tree, NEAR, fanned));
      // Where trying all is not feasible, all of them nesting is the most there can be.
      expect(alone.nesting).toBe(best ?? alone.total);
    },
  );

  test("where blocks meet in rows too", () => {
    const grid = gridOf(brief.quilt);
    const p = pressFor(answer.blocks, brief.quilt, key, NEAR);
    if (!grid || p.nesting === p.total) return expect(p.nesting).toBeLessThanOrEqual(p.total);
    const fanned = new Map(
      answer.blocks.flatMap((b) => {
        const seam = seamThroughCenter(b.tree, NEAR);
        return seam ? [[b.id, seam.id]] : [];
      }),
    );
    const byId = new Map(answer.blocks.map((b) => [b.id, b]));
    const all = [
      ...answer.blocks.flatMap((b) => crossingsIn(b.tree, NEAR, fanned.get(b.id))),
      ...crossingsBetween(byId, grid, false, fanned, NEAR),
    ];
    const best = bruteForce(all);
    if (best !== undefined) expect(p.nesting).toBeGreaterThanOrEqual(best);
  });
});
