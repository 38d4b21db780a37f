import { describe, expect, test } from "vitest";
import { examples } from "../scripts/examples.ts";
import type { Brief } from "../src/core/brief/index.ts";
import {
  type Crossing,
  crossingsIn,
  crossingsInRows,
  keyOf,
  pressFor,
  rowsToPress,
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

/** One block by itself, with no other beside it. */
const lone = (brief: Brief): Brief => ({
  ...brief,
  quilt: { ...brief.quilt, rows: 1, columns: 1, plan: [["no other"]] },
});

describe.each(examples().map((e) => [e.name, e] as const))("%s", (_, { brief, answer }) => {
  const keys = new Map(answer.blocks.flatMap((b) => b.patches.map((p) => [p.id, keyOf(b)(p.id)])));
  const key = (id: string): string => keys.get(id) ?? id;

  test.each(answer.blocks.map((b) => [b.id, b] as const))(
    "inside the block as many crossings nest as any pressing allows (%s)",
    (_id, block) => {
      const alone = pressFor([block], lone(brief), key, NEAR);
      const fanned = seamThroughCenter(block.tree, NEAR)?.id;
      const best = bruteForce(crossingsIn(block.tree, NEAR, fanned));
      // Where trying all is not feasible, all of them nesting is the most there can be.
      expect(alone.nesting).toBe(best ?? alone.total);
    },
  );

  test("where blocks meet in rows too", () => {
    const rows = rowsToPress(answer.blocks, brief);
    const p = pressFor(answer.blocks, brief, key, NEAR);
    if (!rows || p.nesting === p.total) return expect(p.nesting).toBeLessThanOrEqual(p.total);
    const fanned = new Map(
      answer.blocks.flatMap((b) => {
        const seam = seamThroughCenter(b.tree, NEAR);
        return seam ? [[b.id, seam.id]] : [];
      }),
    );
    const byId = new Map(answer.blocks.map((b) => [b.id, b]));
    const all = [
      ...answer.blocks.flatMap((b) => {
        const count = rows.rows.flatMap((r) => r.items).filter((i) => i.of === b.id).length;
        return crossingsIn(b.tree, NEAR, fanned.get(b.id)).map((x) => ({ ...x, count }));
      }),
      ...crossingsInRows(byId, rows, () => false, fanned, NEAR),
    ];
    const best = bruteForce(all);
    if (best !== undefined) expect(p.nesting).toBeGreaterThanOrEqual(best);
  });
});
