import { describe, expect, it } from "vitest";
import { planHandbook, replay, yardageOf } from "./index.ts";
import type { Demand, Stock } from "./types.ts";

const rect = (
  id: string,
  w: number,
  h: number,
  count: number,
  more: Partial<Demand> = {},
): Demand => ({
  id,
  fabricId: "teal",
  shape: { kind: "rect", first: w, pitch: w, height: h },
  count,
  turns: "quarter",
  hand: "none",
  up: false,
  layers: 1,
  joinsAllowed: false,
  piecesEach: 1,
  pieceIds: [id],
  ...more,
});

const wedge = (id: string, strip: number, count: number, more: Partial<Demand> = {}): Demand => {
  const base = 2 * Math.tan(Math.PI / 8) * strip;
  return {
    ...rect(id, base, strip, count, { turns: "half" }),
    shape: { kind: "nested", first: base, pitch: base / 2, height: strip },
    ...more,
  };
};

const teal = (width: number, folds: 0 | 1 = 0): Stock => ({ fabricId: "teal", width, folds });

const clean = (demands: Demand[], stock: Stock) => {
  const layout = planHandbook(demands, stock);
  expect(replay(layout, demands, stock)).toEqual([]);
  return layout;
};

describe("one size per strip", () => {
  it("cuts 20 sharp 4 1/2 wedges from a 40 in strip, and 18 when it is folded (own calculation)", () => {
    const single = clean([wedge("w", 4.5, 20)], teal(40));
    expect(single.strips.map((s) => [s.height, s.times, s.runs[0].copies])).toEqual([[4.5, 1, 20]]);
    const folded = clean([wedge("w", 4.5, 20)], teal(40, 1));
    expect(folded.strips.map((s) => [s.times, s.layers, s.runs[0].copies])).toEqual([
      [1, 2, 9],
      [1, 2, 1],
    ]);
    expect(folded.length).toBe(9);
  });

  it("takes the better orientation and gives the last strip what remains", () => {
    const layout = clean([rect("r", 5.875, 7.125, 68)], teal(40));
    expect(layout.length).toBe(14 * 5.875);
    expect(layout.strips.map((s) => [s.times, s.runs[0].copies, s.runs[0].turned])).toEqual([
      [13, 5, true],
      [1, 3, true],
    ]);
  });

  it("keeps directional fabric one way up", () => {
    const layout = clean([rect("r", 5.875, 7.125, 68, { up: true })], teal(40));
    expect(layout.length).toBe(12 * 7.125);
  });

  it("lays a piece cut along the length with its long side down the fabric", () => {
    const border = {
      ...rect("b", 63, 5, 4),
      shape: { kind: "along" as const, first: 63, pitch: 63, height: 5 },
    };
    const layout = clean([border], teal(41));
    expect([layout.length, layout.strips[0].runs[0].width]).toEqual([63, 20]);
  });

  it("joins long strips, counting what each join takes", () => {
    const binding = rect("binding", 290, 2.5, 1, {
      joinsAllowed: true,
      joinLoss: 2,
      turns: "none",
    });
    const layout = clean([binding], teal(40));
    // 7 widths give 7 x 40 - 6 x 2 = 268; the eighth part must add 22 and its join.
    expect(layout.strips.map((s) => [s.times, s.runs[0].width])).toEqual([
      [7, 40],
      [1, 24],
    ]);
  });

  it("opens the fold for a piece wider than half the fabric", () => {
    const layout = clean([rect("sash", 23, 3, 3, { turns: "half" })], teal(40, 1));
    expect(layout.strips.map((s) => [s.layers, s.times])).toEqual([[1, 3]]);
  });

  it("pairs lefts with rights through a fold, and opens it for one hand alone", () => {
    const left = wedge("l", 3, 10, { hand: "left" });
    const right = wedge("r", 3, 7, { hand: "right" });
    const layout = clean([left, right], teal(42, 1));
    const runs = layout.strips.map((s) => [s.layers, s.runs[0].copies, s.runs[0].mirrorId]);
    expect(runs).toEqual([
      [2, 7, "r"],
      [1, 3, undefined],
    ]);
  });

  it("says by how little a strip missed one more", () => {
    const strip = 8.5;
    const blunt = 0.33408906;
    const base = 7.37573593;
    const w: Demand = {
      ...wedge("w", strip, 16),
      shape: { kind: "nested", first: base, pitch: (base + blunt) / 2, height: strip },
    };
    const [miss] = clean([w], teal(42)).nearMisses;
    expect(miss.by).toBeCloseTo(0.07, 3);
  });

  it("refuses a piece wider than the fabric by name and plans the others", () => {
    const demands = [rect("wide", 50, 44, 2), rect("small", 3, 3, 5)];
    const layout = clean(demands, teal(42));
    expect(layout.unplaced).toEqual([{ demandId: "wide", count: 2 }]);
    const [finding] = layout.findings;
    expect(finding).toMatchObject({
      code: "piece-wider-than-fabric",
      place: "wide",
      needed: 44,
      found: 42,
    });
    expect(finding.words?.fabric).toBe("teal");
  });

  it("answers no demand with no strips, and a million copies at once", () => {
    expect(clean([rect("none", 3, 4, 0)], teal(40)).length).toBe(0);
    expect(clean([rect("many", 3, 4, 1_000_000)], teal(40)).length).toBe(3 * (1e6 / 10));
  });
});

describe("yardage", () => {
  const layout = planHandbook([rect("r", 5.875, 7.125, 68)], teal(40));

  it("adds each margin by name and rounds up to an eighth of a yard", () => {
    const y = yardageOf(layout, { straighten: 1, wrongStrip: true, extra: 2, unit: "in" });
    expect([y.inPieces, y.straighten, y.wrongStrip, y.extra]).toEqual([82.25, 1, 5.875, 2]);
    expect(y.total).toBe(91.125);
    expect([y.buy, y.buyText]).toEqual([94.5, "2 5/8 yd"]);
  });

  it("stays on an eighth it lies on, and allows for washing", () => {
    const none = { straighten: 0, wrongStrip: false, unit: "in" as const };
    const short = planHandbook([rect("r", 9, 9, 4)], teal(40));
    expect(yardageOf(short, none).buyText).toBe("1/4 yd");
    expect(yardageOf(short, { ...none, shrinkage: 4 }).total).toBeCloseTo(9.375, 12);
  });

  it("leaves room to reach the first repeat", () => {
    const margins = { straighten: 1, wrongStrip: false, toRepeat: 11, unit: "in" as const };
    const y = yardageOf(layout, margins);
    expect([y.toRepeat, y.total]).toEqual([11, 94.25]);
  });

  it("rounds metric up to 5 cm", () => {
    const mm = planHandbook([rect("r", 120, 130, 20)], teal(1050));
    const y = yardageOf(mm, { straighten: 25, wrongStrip: true, unit: "mm" });
    expect([y.total, y.buy, y.buyText]).toEqual([505, 550, "0.55 m"]);
  });
});

describe("replay finds", () => {
  const demands = [rect("r", 5, 7, 9)];
  const good = planHandbook(demands, teal(40));
  const broken = (run: object, strip: object = {}) => ({
    ...good,
    strips: good.strips.map((s, i) =>
      i === 0 ? { ...s, ...strip, runs: s.runs.map((r) => ({ ...r, ...run })) } : s,
    ),
  });
  const faults = (layout: typeof good) => replay(layout, demands, teal(40)).map((f) => f.what);

  it("nothing wrong with a good plan", () => expect(faults(good)).toEqual([]));
  it("a run off the fabric", () => expect(faults(broken({ x: 8 }))).toContain("run-off-strip"));
  it("a missing copy", () =>
    expect(faults(broken({ copies: 7, width: 35 }))).toContain("wrong-count"));
  it("a run of the wrong size", () =>
    expect(faults(broken({ width: 39 }))).toContain("run-wrong-size"));
  it("a strip out of place", () =>
    expect(faults(broken({}, { from: 3 }))).toContain("strip-out-of-place"));
  it("overlapping runs", () => {
    const twice = {
      ...good,
      strips: good.strips.map((s) => ({ ...s, runs: [...s.runs, ...s.runs] })),
    };
    expect(faults(twice)).toContain("runs-overlap");
  });
});
