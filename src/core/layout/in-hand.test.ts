import { describe, expect, it } from "vitest";
import { planInHandFirst, planPieces, replay, replaySheets } from "./index.ts";
import type { Demand, Sheet } from "./types.ts";

const rect = (
  id: string,
  w: number,
  h: number,
  count: number,
  turns: Demand["turns"] = "quarter",
): Demand => ({
  id,
  fabricId: "rust",
  shape: { kind: "rect", first: w, pitch: w, height: h },
  count,
  turns,
  hand: "none",
  up: false,
  layers: 1,
  joinsAllowed: false,
  piecesEach: 1,
  pieceIds: [id],
});

const wedge = (id: string, strip: number, count: number): Demand => {
  const base = 2 * Math.tan(Math.PI / 8) * strip;
  const shape = { kind: "nested" as const, first: base, pitch: base / 2, height: strip };
  return { ...rect(id, base, strip, count, "half"), shape };
};

const quarter = (count: number, more: Partial<Sheet> = {}): Sheet => ({
  id: "quarter",
  fabricId: "rust",
  width: 21,
  length: 18,
  count,
  ...more,
});

describe("pieces in hand", () => {
  it("cuts 40 sharp 4 1/2 wedges from a quarter of 18 x 21, 10 to a strip (own calculation)", () => {
    const demands = [wedge("w", 4.5, 40)];
    const plan = planPieces(demands, [quarter(1)]);
    expect(replaySheets(plan, demands, [quarter(1)])).toEqual([]);
    expect(
      plan.sheets.map((s) => [s.times, s.strips.map((x) => [x.times, x.runs[0].copies])]),
    ).toEqual([[1, [[4, 10]]]]);
    expect(plan.unplaced).toEqual([]);
  });

  it("gives exactly one octagon from an 18 in strip (own calculation)", () => {
    const strip: Sheet = { id: "end", fabricId: "rust", width: 18, length: 4.5, count: 1 };
    const plan = planPieces([wedge("w", 4.5, 9)], [strip]);
    expect(plan.unplaced).toEqual([{ demandId: "w", count: 1 }]);
    expect(plan.findings[0]).toMatchObject({ code: "not-enough-in-hand", needed: 9, found: 8 });
  });

  it("takes the cheaper mix of sizes, and no more than there are", () => {
    const demands = [rect("a", 9, 9, 7)];
    const sheets = [quarter(2), { ...quarter(3), id: "small", width: 9.5, length: 9.5 }];
    const plan = planPieces(demands, sheets);
    expect(replaySheets(plan, demands, sheets)).toEqual([]);
    // A quarter gives four (2 x 2), a small piece one: 1 quarter + 3 small is all there is of area.
    const used = new Map(plan.sheets.map((s) => [s.sheetId, s.times]));
    expect([used.get("quarter"), used.get("small")]).toEqual([1, 3]);
  });

  it("cuts along the length where that helps, keeping a directional piece upright", () => {
    const tall = rect("tall", 4, 17, 4, "half");
    const sheet: Sheet = {
      id: "end",
      fabricId: "rust",
      width: 9,
      length: 35,
      count: 1,
      eitherWay: true,
    };
    const plan = planPieces([tall], [sheet]);
    expect(replaySheets(plan, [tall], [sheet])).toEqual([]);
    expect(plan.unplaced).toEqual([]);
  });

  it("says when no piece in hand fits", () => {
    const plan = planPieces([rect("wide", 25, 22, 3)], [quarter(4)]);
    expect(plan.sheets).toEqual([]);
    expect(plan.unplaced).toEqual([{ demandId: "wide", count: 3 }]);
    expect(plan.findings.map((f) => [f.code, f.place])).toEqual([["not-enough-in-hand", "rust"]]);
  });

  it("uses up the pieces in hand and cuts the rest from the bolt", () => {
    const demands = [rect("a", 9, 9, 10), rect("b", 5, 7, 13)];
    const stock = { fabricId: "rust", width: 42, folds: 0 as const };
    const { pieces, bolt, remaining } = planInHandFirst(demands, stock, [quarter(2)]);
    expect(replaySheets(pieces, demands, [quarter(2)])).toEqual([]);
    expect(replay(bolt, remaining, stock)).toEqual([]);
    expect(pieces.sheets.reduce((t, s) => t + s.times, 0)).toBe(2);
    expect(bolt.length).toBeLessThan(25);
  });
});
