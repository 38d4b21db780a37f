import fc from "fast-check";
import { expect, test } from "vitest";
import { smallBrief } from "../brief/sample.ts";
import type { StockPiece } from "../fabric/index.ts";
import { type FromHere, fromStock } from "./index.ts";

const bolt = (fabric: string, length: number, line = 1): StockPiece => ({
  line,
  fabric,
  kind: "bolt",
  width: "40",
  length: String(length),
  count: 1,
});
const run = (stock: StockPiece[]): FromHere => {
  const search = fromStock([{ name: "small", brief: smallBrief() }], stock);
  for (let x = search.next(); ; x = search.next()) if (x.done) return x.value;
};

test("a fabric that is not there is named; names are matched whatever their case", () => {
  expect(run([bolt("Red", 72)]).notMade[0].short).toEqual(["Sand"]);
  const [p] = run([bolt("RED", 72), bolt("sand", 72)]).projects;
  expect(p.taken.map((t) => t.stock).sort()).toEqual(["RED", "sand"]);
});

test("law: no bolt is cut past its end, and a longer one never makes fewer", () => {
  const inches = fc.integer({ min: 6, max: 90 });
  fc.assert(
    fc.property(inches, inches, inches, (red, sand, more) => {
      const times = (stock: StockPiece[]): number => run(stock).projects[0]?.times ?? 0;
      const short = [bolt("Red", red), bolt("Sand", sand)];
      for (const t of run(short).projects[0]?.taken ?? []) {
        const there = t.stock === "Red" ? red : sand;
        expect(t.fromBolt).toBeLessThanOrEqual(there + 1e-9);
        expect(t.fromBolt + t.boltLeft).toBeCloseTo(there, 9);
      }
      expect(times([bolt("Red", red + more), bolt("Sand", sand)])).toBeGreaterThanOrEqual(
        times(short),
      );
    }),
    { seed: 6618, numRuns: 10 },
  );
});

test("fabric that is washed before it is cut is measured washed, in width and in length", () => {
  const washing = smallBrief();
  const brief = {
    ...washing,
    fabrics: washing.fabrics.map((f) => ({ ...f, shrinkage: { length: 50, width: 0 } })),
  } as typeof washing;
  const most = (b: typeof washing, red: number): number => {
    let found: FromHere | undefined;
    for (const here of fromStock([{ name: "x", brief: b }], [bolt("Red", red), bolt("Sand", 400)]))
      found = here;
    return found?.projects[0]?.times ?? 0;
  };
  for (const red of [24, 60, 100]) expect(most(brief, 2 * red)).toBe(most(washing, red));
  expect(most(brief, 60)).toBeLessThan(most(washing, 60));
});
