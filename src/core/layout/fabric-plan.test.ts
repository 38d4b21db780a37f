import { describe, expect, it } from "vitest";
import type { Demand, Stock } from "./index.ts";
import {
  cuttingOrder,
  handLedger,
  offerWedges,
  planFabric,
  planFirst,
  planHandbook,
  planQuilt,
  replay,
  replaySheets,
  waysUp,
  whatNarrowerChanges,
} from "./index.ts";

const rect = (
  id: string,
  w: number,
  h: number,
  count: number,
  more: Partial<Demand> = {},
): Demand => ({
  id,
  fabricId: "plum",
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
  const shape = { kind: "nested" as const, first: base, pitch: base / 2, height: strip };
  return rect(id, base, strip, count, { shape, turns: "half", ...more });
};

const plum = (width: number, folds: 0 | 1 = 0): Stock => ({ fabricId: "plum", width, folds });

describe("repeats", () => {
  it("begins each strip at its phase, one to a repeat (own calculation: 6 strips, 276 wedges)", () => {
    // 89 in of a stripe with a 6 in repeat, cut along the length: 46 wedges a strip of 4 1/2.
    const along = wedge("w", 4.5, 276, { register: { axis: "across", period: 6, phase: 0 } });
    const layout = planFirst([along], plum(40));
    expect(replay(layout, [along], plum(40))).toEqual([]);
    expect(layout.strips[0].runs.map((r) => r.copies)).toEqual([46, 46, 46, 46, 46, 46]);
    expect(layout.length).toBeLessThan(89);
  });

  it("registers strips across the fabric, leaving what lies between", () => {
    const d = wedge("w", 4.5, 45, { register: { axis: "along", period: 8, phase: 1.5 } });
    const layout = planFirst([d, rect("r", 3, 5, 7)], plum(40));
    expect(replay(layout, [d, rect("r", 3, 5, 7)], plum(40))).toEqual([]);
    // 20 a strip, 3 strips of one repeat each; then the plain rectangles.
    expect(layout.strips[0].runs[0].y).toBe(1.5);
    expect(layout.length).toBe(3 * 8 + 3);
  });

  it("takes N repeats for N identical layers: 6 x 24 in is 144 in, 4 yd (If These Threads Could Talk, repeats)", () => {
    const d = rect("hex", 7, 6, 90, {
      turns: "half",
      layers: 6,
      register: { axis: "along", period: 24, phase: 0 },
    });
    const layout = planFirst([d], plum(40));
    expect(replay(layout, [d], plum(40))).toEqual([]);
    expect(layout.length).toBe(144);
  });

  it("is caught by the recount when a strip slips off its repeat", () => {
    const d = rect("r", 7, 5, 9, { register: { axis: "along", period: 8, phase: 2 } });
    const good = planFirst([d], plum(40));
    const runs = good.strips[0].runs.map((r) => ({ ...r, y: 1 }));
    const slipped = { ...good, strips: [{ ...good.strips[0], runs }, ...good.strips.slice(1)] };
    expect(replay(slipped, [d], plum(40)).map((f) => f.what)).toContain("off-register");
  });
});

describe("one fabric", () => {
  it("cuts small pieces from what lies beside borders cut along the length", () => {
    const borders = rect("border", 63, 5, 4, {
      shape: { kind: "along", first: 63, pitch: 63, height: 5 },
    });
    const squares = rect("sq", 6, 6, 30);
    const plan = planFabric([borders, squares], { stock: plum(41) });
    // 21 x 63 is left beside the borders: 3 x 10 squares, so the bolt gives no more than 63.
    expect(plan.length).toBe(63);
    expect(replaySheets(plan.pieces!, [squares], plan.sheets)).toEqual([]);
    expect(planFirst([borders, squares], plum(41)).length).toBeGreaterThan(63);
  });
});

describe("all fabrics of a quilt", () => {
  const set = {
    stock: { fabricId: "set", width: 40, folds: 0 as const },
    stripSet: {
      height: 4.5,
      strips: [
        { fabricId: "plum", cut: 2.25 },
        { fabricId: "sage", cut: 2.75 },
      ],
    },
  };

  it("plans strip sets before the fabrics they are sewn from, and asks those for their strips", () => {
    const wedges = { ...wedge("w", 4.5, 50), fabricId: "set" };
    const fabrics = [{ stock: plum(40) }, { stock: { ...plum(40), fabricId: "sage" } }, set];
    const quilt = planQuilt([wedges, rect("r", 5, 6, 8)], fabrics);
    expect(quilt.fabrics.map((f) => f.fabricId)).toEqual(["set", "plum", "sage"]);
    const strips = quilt.fabrics[1].demands.find((d) => d.id === "set-strip-1");
    expect([strips?.count, strips?.shape.height]).toEqual([3, 2.25]);
    expect(quilt.fabrics[2].length).toBe(3 * 2.75);
  });

  it("refuses sets that feed on each other", () => {
    const ring = { ...set, stripSet: { height: 4, strips: [{ fabricId: "set", cut: 2 }] } };
    expect(() => planQuilt([], [ring])).toThrow(/ring of set/);
  });
});

describe("layers and hands", () => {
  const needed = { left: 48, right: 48, reversible: false };

  it("gives half of each hand from facing layers", () => {
    const facing = handLedger(needed, 4).find((r) => r.laying === "facing");
    expect(facing).toMatchObject({ layers: 4, left: 48, right: 48, spareLeft: 0 });
    expect(facing?.cuts).toEqual({ left: 24, right: 0 });
  });

  it("needs the ruler turned over when layers all lie right side up", () => {
    const stacked = handLedger({ ...needed, left: 50 }, 4).find((r) => r.laying === "stacked");
    expect(stacked?.cuts).toEqual({ left: 13, right: 12 });
    expect([stacked?.spareLeft, stacked?.spareRight]).toEqual([2, 0]);
  });

  it("never needs flipping for reversible fabric", () => {
    const either = handLedger({ left: 30, right: 21, reversible: true }, 4).find(
      (r) => r.laying === "either-face",
    );
    expect(either).toMatchObject({ left: 30, right: 22, cuts: { left: 13, right: 0 } });
  });

  it("counts wedges pointing up and down: 4 up and 4 down of 8 from an 18 in strip (own calculation)", () => {
    const w = wedge("w", 4.5, 8);
    const layout = planHandbook([w], plum(18));
    expect(layout.strips[0].runs[0].copies).toBe(8);
    expect(waysUp(layout, w)).toEqual({ up: 4, down: 4 });
  });
});

describe("the order of cutting", () => {
  const demands = [
    rect("small", 3, 4, 10),
    rect("binding", 100, 2.5, 1, { joinsAllowed: true, turns: "none" }),
    rect("border", 60, 6, 2, { shape: { kind: "along", first: 60, pitch: 60, height: 6 } }),
  ];
  const layout = planFirst(demands, plum(40));
  const order = cuttingOrder(layout, demands);

  it("numbers every step, straightens first, long before small", () => {
    expect(order.steps.map((s) => s.number)).toEqual(order.steps.map((_, i) => i + 1));
    expect(order.steps[0].op).toBe("straighten");
    expect(order.cuts).toBe(order.steps.reduce((t, s) => t + s.cuts, 0));
  });

  it("counts the copies of every demand", () => {
    const got = order.steps
      .filter((s) => s.op === "subcut" && s.demandId === "small")
      .reduce((t, s) => t + (s.copies ?? 0), 0);
    expect(got).toBe(10);
  });

  it("counts 21 slanted cuts for 20 wedges", () => {
    const w = [wedge("w", 4.5, 20)];
    const steps = cuttingOrder(planFirst(w, plum(40)), w).steps;
    expect(steps.map((s) => [s.op, s.cuts])).toEqual([
      ["straighten", 1],
      ["strip", 1],
      ["subcut", 21],
    ]);
  });
});

describe("narrower fabric", () => {
  it("takes one 4 1/2 in wedge from each strip and none of 6 in: 42 to 40 (own calculation)", () => {
    const demands = [wedge("w4", 4.5, 42), wedge("w6", 6, 15)];
    const at = (width: number) => ({
      stock: plum(width),
      layout: planHandbook(demands, plum(width)),
    });
    const { demands: changed, more } = whatNarrowerChanges(demands, at(42), at(40));
    expect(changed).toEqual([{ demandId: "w4", atWide: 21, atNarrow: 20 }]);
    expect(more).toBe(4.5);
  });
});

describe("waste wedges", () => {
  it("are offered to wedges of their angle that they are tall enough for", () => {
    const t = Math.tan(Math.PI / 8);
    const waste = { id: "off", fabricId: "plum", height: 4.4, base: 8.8 * t, count: 9 };
    const { offers, remaining, unused } = offerWedges(
      [waste, { ...waste, id: "blunt-angle", base: 3 }],
      [wedge("w4", 4, 6), wedge("w5", 5, 7)],
    );
    expect(offers.map((o) => [o.wasteId, o.demandId, o.count])).toEqual([["off", "w4", 6]]);
    expect(offers[0].trim).toBeCloseTo(0.4, 12);
    expect(remaining.map((d) => d.count)).toEqual([0, 7]);
    expect(unused.map((u) => u.count)).toEqual([3, 9]);
  });
});
