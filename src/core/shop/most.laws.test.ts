import fc from "fast-check";
import { expect, test } from "vitest";
import { cutsFor, type KitProblem, mostKits } from "./most.ts";

const SEED = 20261125;

/** Shelves with fabrics that share bolts and others that do not. */
const shelf = (bolts: number, length: number, fabrics: number): fc.Arbitrary<KitProblem> =>
  fc
    .record({
      fabrics: fc.integer({ min: 1, max: fabrics }),
      bolts: fc.array(
        fc.record({
          length: fc.integer({ min: 0, max: length }),
          loss: fc.integer({ min: 0, max: 4 }),
        }),
        { minLength: 0, maxLength: bolts },
      ),
      each: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 40, maxLength: 40 }),
      setup: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 40, maxLength: 40 }),
      uses: fc.array(fc.integer({ min: 0, max: 99 }), { minLength: 40, maxLength: 40 }),
      shared: fc.integer({ min: 0, max: 70 }),
    })
    .map((r) => {
      const fabricIds = Array.from({ length: r.fabrics }, (_, i) => `f${i}`);
      const rooms = r.bolts.map((b, i) => ({ id: `b${i}`, ...b }));
      const uses = rooms.flatMap((b, k) =>
        fabricIds.flatMap((fabricId, i) => {
          const at = (k * r.fabrics + i) % 40;
          const mine = k % r.fabrics === i || r.uses[at] < r.shared;
          return mine ? [{ fabricId, boltId: b.id, each: r.each[at], setup: r.setup[at] }] : [];
        }),
      );
      return { fabricIds, bolts: rooms, uses };
    });

/** Fabrics that share no bolt, by the law alone: each gives the sum of what fits into its bolts. */
const byLaw = (p: KitProblem, cap: number): number =>
  Math.min(
    cap,
    ...p.fabricIds.map((f) =>
      p.uses
        .filter((u) => u.fabricId === f)
        .reduce((n, u) => {
          const b = p.bolts.find((x) => x.id === u.boltId)!;
          return n + Math.max(0, Math.floor((b.length - b.loss - u.setup) / u.each));
        }, 0),
    ),
  );

/** Every way to cut every bolt, tried out: shares nothing with the search. */
function tryAll(p: KitProblem): number {
  let best = 0;
  const got = new Map<string, number>();
  const bolt = (k: number): void => {
    if (k === p.bolts.length) {
      best = Math.max(best, Math.min(...p.fabricIds.map((f) => got.get(f) ?? 0)));
      return;
    }
    const { id, length, loss } = p.bolts[k];
    const uses = p.uses.filter((u) => u.boltId === id);
    const cut = (i: number, left: number): void => {
      if (i === uses.length) {
        bolt(k + 1);
        return;
      }
      const { fabricId, each, setup } = uses[i];
      const had = got.get(fabricId) ?? 0;
      for (let n = 0; n === 0 || setup + n * each <= left; n++) {
        got.set(fabricId, had + n);
        cut(i + 1, n === 0 ? left : left - setup - n * each);
      }
      got.set(fabricId, had);
    };
    cut(0, length - loss);
  };
  bolt(0);
  return best;
}

test("the number of kits is the largest there is, by trying every way to cut small shelves", () => {
  fc.assert(
    fc.property(shelf(3, 18, 3), (p) => {
      const most = mostKits(p);
      expect(most.proven).toBe(true);
      expect(most.kits).toBe(tryAll(p));
    }),
    { seed: SEED, numRuns: 600 },
  );
});

test("10,000 shelves: cuts and losses never exceed a bolt, every kit is whole, one more is not to be had", () => {
  fc.assert(
    fc.property(shelf(6, 120, 3), (p) => {
      const most = mostKits(p, 9);
      const taken = cutsFor(p, most.kits);
      expect(taken).toBeDefined();
      for (const f of p.fabricIds)
        expect(taken!.filter((t) => t.fabricId === f).reduce((n, t) => n + t.cuts, 0)).toBe(
          most.kits,
        );
      const apart = p.bolts.every((b) => p.uses.filter((u) => u.boltId === b.id).length < 2);
      if (apart) expect(most.kits).toBe(byLaw(p, 9));
      for (const b of p.bolts) {
        const here = taken!.filter((t) => t.boltId === b.id);
        const used = here.reduce(
          (sum, t) => {
            const use = p.uses.find((u) => u.boltId === b.id && u.fabricId === t.fabricId)!;
            return sum + use.setup + t.cuts * use.each;
          },
          here.length > 0 ? b.loss : 0,
        );
        expect(used).toBeLessThanOrEqual(b.length);
      }
      expect(most.kits).toBeLessThanOrEqual(most.atMost);
      if (most.proven && most.kits < 9) expect(cutsFor(p, most.kits + 1)).toBeUndefined();
    }),
    { seed: SEED, numRuns: 10_000 },
  );
});
