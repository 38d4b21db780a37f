import { describe, expect, test } from "vitest";
import { EVEN, plainFabric, UNEVEN } from "./fabrics.testing.ts";
import { lookOf } from "./look.ts";
import { flipped, octagonsFrom, type RoundPlan, roundDemand, waysOf, wedgeLay } from "./rounds.ts";
import { piecesInRun, registerRange, stripeYield, stripsInRegister } from "./yields.ts";

const uneven = lookOf(UNEVEN, [], "in", 0.25).look;
const even = lookOf(EVEN, [], "in", 0.25).look;
const quiet = lookOf(plainFabric("p", "#445566"), [], "in", 0.25).look;
const plan: RoundPlan = { round: "matched", way: "up", start: 1.5, strip: 4.5, strips: 3 };

/** 4 1/2 in strip cut sharp: a wedge's cut base is 2 tan 22.5 x 4.5, each further one takes half. */
const BASE = 2 * Math.tan(Math.PI / 8) * 4.5;

describe("rounds", () => {
  test("matched: all eight alike; mixed: four up and four down, by turns", () => {
    const matched = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => wedgeLay(plan, i, uneven, 8));
    expect(new Set(matched.map((l) => `${l.way} ${l.start}`))).toEqual(new Set(["up 1.5"]));
    const mixed = { ...plan, round: "mixed" as const, way: "down" as const };
    expect([0, 1, 2, 3].map((i) => wedgeLay(mixed, i, uneven, 8).way)).toEqual([
      "down",
      "up",
      "down",
      "up",
    ]);
    expect(waysOf(mixed, uneven, 8, 5)).toEqual({ up: 20, down: 20 });
    expect(waysOf({ ...plan, way: "down" }, uneven, 8, 5)).toEqual({ up: 0, down: 40 });
  });

  test("free: strips begin where the one before ended, both ways out of every strip", () => {
    const free = { ...plan, round: "free" as const };
    const lays = Array.from({ length: 24 }, (_, i) =>
      wedgeLay(free, i % 8, uneven, 8, Math.floor(i / 8)),
    );
    // Strips of 4 1/2 on a 6 in repeat from 1 1/2: 1 1/2, 6 = 0, 10 1/2 = 4 1/2.
    expect(new Set(lays.map((l) => l.start))).toEqual(new Set([1.5, 0, 4.5]));
    for (const start of [1.5, 0, 4.5]) {
      const ways = lays.filter((l) => l.start === start).map((l) => l.way);
      expect(ways.filter((w) => w === "up")).toHaveLength(4);
      expect(ways).toHaveLength(8);
    }
    expect(waysOf(free, uneven, 8, 3)).toEqual({ up: 12, down: 12 });
  });

  test("free from one strip of a set is the ruler flipped along it", () => {
    const one = { ...plan, round: "free" as const, strips: 1 };
    expect([0, 1, 2].map((i) => wedgeLay(one, i, quiet, 8).way)).toEqual(["up", "down", "up"]);
  });
});

describe("counting both octagons", () => {
  test("20 flipped wedges are one octagon of each kind and 2 + 2 over (own calculation)", () => {
    expect(octagonsFrom(flipped(20), 8)).toEqual({
      up: 1,
      down: 1,
      mixed: 0,
      overUp: 2,
      overDown: 2,
    });
  });

  test("23 flipped: 12 and 11; a third octagon half and half could not be made of 4 and 3", () => {
    expect(flipped(23)).toEqual({ up: 12, down: 11 });
    expect(flipped(23, "down")).toEqual({ up: 11, down: 12 });
    expect(octagonsFrom(flipped(23), 8)).toEqual({
      up: 1,
      down: 1,
      mixed: 0,
      overUp: 4,
      overDown: 3,
    });
    expect(octagonsFrom({ up: 14, down: 12 }, 8).mixed).toBe(1);
  });
});

describe("what a round asks of the plan", () => {
  test("matched all up: unflipped, registered where the bands fix the strip", () => {
    const ways = waysOf(plan, uneven, 8, 3);
    expect(roundDemand(plan, ways, uneven, "across")).toEqual({
      flipped: 0,
      oneWay: 24,
      turns: "none",
      up: true,
      register: { axis: "along", period: 6, phase: 1.5 },
      spare: { up: 0, down: 24 },
    });
    expect(roundDemand(plan, ways, uneven, "along").register?.axis).toBe("across");
  });

  test("twelve more up than down: those twelve go one way", () => {
    const d = roundDemand({ ...plan, round: "mixed" }, { up: 28, down: 16 }, even, "along");
    expect(d).toMatchObject({ flipped: 32, oneWay: 12, turns: "half", up: false });
    expect(d.register?.phase).toBeCloseTo(1.5 % 1.25, 12);
  });

  test("free, and plain fabric, leave the plan alone", () => {
    const ways = { up: 30, down: 18 };
    expect(roundDemand({ ...plan, round: "free" }, ways, uneven, "across")).toEqual({
      flipped: 48,
      oneWay: 0,
      turns: "half",
      up: false,
      spare: { up: 0, down: 0 },
    });
    expect(roundDemand(plan, ways, quiet, "across").register).toBeUndefined();
  });

  test("one way takes just what twice as many flipped wedges take", () => {
    const oneWay = 24 * BASE;
    const twiceFlipped = 48 * (BASE / 2);
    expect(oneWay).toBeCloseTo(twiceFlipped, 12);
  });
});

describe("wedges from 89 in of stripe, 40 in usable, 4 1/2 in strip cut sharp (own calculation)", () => {
  const yields = (period: number, runs: "along" | "across") =>
    stripeYield({ width: 40, length: 89, runs, period }, 4.5, BASE, BASE / 2);

  test("bands along the selvage, 6 in repeat: 276 wedges alike, half of each kind", () => {
    const [matched, any] = yields(6, "along");
    expect(matched).toMatchObject({
      kind: "matched",
      strips: 6,
      fewestStrips: 5,
      perStrip: 46,
      wedges: 276,
      ways: { up: 138, down: 138 },
    });
    expect(octagonsFrom(matched.ways, 8)).toMatchObject({ up: 17, down: 17 });
    expect(any).toMatchObject({ strips: 8, perStrip: 46, wedges: 368 });
  });

  test("8 in repeat gives 5 strips, 12 in only 3; one fewer where the selvage falls badly", () => {
    expect(yields(8, "along")[0]).toMatchObject({ strips: 5, fewestStrips: 4 });
    expect(yields(12, "along")[0]).toMatchObject({ strips: 3, fewestStrips: 2 });
  });

  test("bands across: 19 strips of 20, wherever they fall", () => {
    expect(yields(6, "across")[1]).toMatchObject({ strips: 19, perStrip: 20, wedges: 380 });
  });

  test("18 in by 21 in: 10 wedges a strip, 4 strips; a single 18 in strip gives 8, four each way", () => {
    expect(piecesInRun(21, BASE, BASE / 2)).toBe(10);
    expect(piecesInRun(18, 4.5, 4.5)).toBe(4);
    expect(flipped(piecesInRun(18, BASE, BASE / 2))).toEqual({ up: 4, down: 4 });
  });

  test("the fewest is met at the worst edge and never undercut (counted at 600 edges)", () => {
    for (const period of [1.25, 3.1, 4.5, 6, 7.3, 11]) {
      const { most, fewest } = registerRange(40, 4.5, period);
      const counts = Array.from({ length: 600 }, (_, i) =>
        stripsInRegister(40, 4.5, period, 0, (period * i) / 600 + 1e-7),
      );
      expect(Math.max(...counts)).toBeLessThanOrEqual(most);
      expect(Math.min(...counts)).toBe(fewest);
    }
  });
});
