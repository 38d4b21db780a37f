import fc from "fast-check";
import load from "highs";
import { describe, expect, it } from "vitest";
import type { Demand, Sheet, Stock } from "./index.ts";
import { planBest, planFirst, planHandbook, planPieces, replay, replaySheets } from "./index.ts";
import { shortestByTrying } from "./try-all.testing.ts";

const SEED = 8127;
const law = { seed: SEED, verbose: 1 as const };
const solver = await load();

const eighths = (least: number, most: number) =>
  fc.integer({ min: least * 8, max: most * 8 }).map((n) => n / 8);

const demandArb = (most: number) =>
  fc
    .record({
      first: eighths(1, 14),
      height: eighths(1, 14),
      tight: fc.integer({ min: 2, max: 4 }),
      count: fc.integer({ min: 0, max: most }),
      kind: fc.constantFrom("rect", "rect", "nested", "along"),
      turns: fc.constantFrom("none", "half", "quarter"),
      up: fc.boolean(),
      hand: fc.constantFrom("none", "left", "right"),
    })
    .map(({ first, height, tight, kind, ...rest }) => ({
      ...rest,
      // Irrational on purpose: wedges never lie on a ruler's step.
      shape: {
        kind,
        first: kind === "nested" ? first * Math.SQRT2 : first,
        pitch: kind === "nested" ? (first * Math.SQRT2) / (1 + 1 / tight) : first,
        height,
      },
    }));

const demandsArb = (types: number, most: number) =>
  fc.array(demandArb(most), { minLength: 1, maxLength: types }).map((all) =>
    all.map(
      (d, i) =>
        ({
          ...d,
          id: `d${i}`,
          fabricId: "f",
          layers: 1,
          joinsAllowed: false,
          piecesEach: 1,
          pieceIds: [`p${i}`],
        }) as Demand,
    ),
  );

const stockArb = fc
  .record({ width: eighths(15, 44), folds: fc.constantFrom(0, 1) })
  .map((s) => ({ ...s, fabricId: "f" }) as Stock);

const holds = (demands: readonly Demand[], stock: Stock, layout: ReturnType<typeof planFirst>) => {
  expect(replay(layout, demands, stock)).toEqual([]);
  expect(layout.lowerBound).toBeLessThanOrEqual(layout.length + 1e-9);
  expect(layout.length).toBeLessThanOrEqual(planHandbook(demands, stock).length + 1e-9);
};

describe(`plans (seed ${SEED})`, () => {
  it("meet every demand, overlap nowhere, leave the fabric nowhere, lie between bound and handbook", () => {
    fc.assert(
      fc.property(demandsArb(7, 60), stockArb, fc.boolean(), (demands, stock, stacks) => {
        holds(demands, stock, planFirst(demands, stock, { stacks }));
      }),
      { ...law, numRuns: 60 },
    );
  });

  it("still do when improved, and are never longer than the first", () => {
    fc.assert(
      fc.property(demandsArb(4, 25), stockArb, fc.boolean(), (demands, stock, stacks) => {
        const best = planBest(demands, stock, { solver, nodes: 10, stacks });
        holds(demands, stock, best);
        expect(best.length).toBeLessThanOrEqual(
          planFirst(demands, stock, { stacks }).length + 1e-9,
        );
      }),
      { ...law, numRuns: 5 },
    );
  });

  it("on pieces in hand use no more than there are and recount", () => {
    const sheetArb = fc
      .record({
        width: eighths(9, 44),
        length: eighths(9, 44),
        count: fc.integer({ min: 1, max: 5 }),
      })
      .map((s, i = 0) => ({
        ...s,
        id: `s${s.width}-${s.length}-${i}`,
        fabricId: "f",
        eitherWay: true,
      }));
    fc.assert(
      fc.property(
        demandsArb(4, 12),
        fc.uniqueArray(sheetArb, { minLength: 1, maxLength: 3, selector: (s) => s.id }),
        (demands, sheets) => {
          const plan = planPieces(demands, sheets as Sheet[]);
          expect(replaySheets(plan, demands, sheets as Sheet[])).toEqual([]);
          expect(plan.lowerBound).toBeLessThanOrEqual(plan.cost + 1e-6);
        },
      ),
      { ...law, numRuns: 25 },
    );
  });
});

describe("against every way there is", () => {
  const small = fc
    .array(
      fc.record({
        w: eighths(2, 9),
        h: eighths(2, 9),
        n: fc.integer({ min: 1, max: 4 }),
        turns: fc.constantFrom("half", "quarter"),
      }),
      { minLength: 2, maxLength: 3 },
    )
    .map((all) =>
      all.map(
        ({ w, h, n, turns }, i) =>
          ({
            id: `d${i}`,
            fabricId: "f",
            shape: { kind: "rect", first: w, pitch: w, height: h },
            count: n,
            turns,
            hand: "none",
            up: false,
            layers: 1,
            joinsAllowed: false,
            piecesEach: 1,
            pieceIds: [],
          }) as Demand,
      ),
    );

  it("the best plan of a few pieces is the shortest there is, and is proved so", () => {
    fc.assert(
      fc.property(small, eighths(10, 16), (demands, width) => {
        const best = planBest(demands, { fabricId: "f", width, folds: 0 }, { solver });
        expect(best.length).toBeCloseTo(shortestByTrying(demands, width), 9);
        expect(best.proven).toBe(true);
      }),
      { ...law, numRuns: 8 },
    );
  });
});

describe("a search", () => {
  const demands: Demand[] = [
    [5.5, 3.25, 31],
    [4.125, 4.125, 22],
    [7.75, 2.5, 27],
  ].map(([w, h, count], i) => ({
    id: `d${i}`,
    fabricId: "f",
    shape: { kind: "rect", first: w, pitch: w, height: h },
    count,
    turns: "quarter",
    hand: "none",
    up: false,
    layers: 1,
    joinsAllowed: false,
    piecesEach: 1,
    pieceIds: [],
  }));
  const stock: Stock = { fabricId: "f", width: 40, folds: 0 };

  it("of a million copies is planned like any other", () => {
    const many = demands.map((d, i) => ({ ...d, count: 1_000_000 - 137 * i }));
    const best = planBest(many, stock, { solver, nodes: 10 });
    expect(replay(best, many, stock)).toEqual([]);
    expect(best.length / best.lowerBound).toBeLessThan(1.00001);
  });

  it("that is stopped at once keeps the first plan", () => {
    const stopped = planBest(demands, stock, { solver, signal: { aborted: true } });
    expect(stopped.length).toBe(planFirst(demands, stock).length);
  });

  it("reports plans that only ever get shorter, each recounted", () => {
    const lengths: number[] = [];
    const best = planBest(demands, stock, {
      solver,
      onProgress: (layout) => {
        expect(replay(layout, demands, stock)).toEqual([]);
        lengths.push(layout.length);
      },
    });
    expect(lengths).toEqual([...lengths].sort((a, b) => b - a));
    expect(lengths.at(-1)).toBe(best.length);
  });
});
