import { describe, expect, it } from "vitest";
import { area, distance, type Polygon } from "../geometry/index.ts";
import { flatTip, otherWays, readYourRuler, rulerOf, type WedgeToCut } from "./index.ts";

const SLIP = 1 / 32;
const T = Math.tan(Math.PI / 8);

const wedge = (more: Partial<WedgeToCut> = {}, longest = "8"): WedgeToCut => ({
  ruler: rulerOf({ point: { blunt: "1/4" }, longest }, 8, "in"),
  strip: 10,
  seam: 0.25,
  unit: "in",
  hasRuler: true,
  ...more,
});

const same = (a: Polygon, b: Polygon) =>
  a.every((v) => b.some((w) => distance(v, w) < 1e-9)) && Math.abs(area(a) - area(b)) < 1e-9;

describe("otherWays", () => {
  it("gives one and the same wedge by every way, each proved", () => {
    for (const w of [wedge(), wedge({ strip: 6.5 }), wedge({ seam: 7 / 25.4 })]) {
      const ways = otherWays(w);
      for (const way of ways) {
        expect(same(way.polygon, ways[0].polygon)).toBe(true);
        expect(way.proof.verdict).toBe("proved");
      }
    }
  });

  it("names the ways that the ruler at hand allows", () => {
    const kinds = (w: WedgeToCut) => otherWays(w).map((x) => x.kind);
    expect(kinds(wedge())).toEqual([
      "extended",
      "two-passes",
      "two-marks",
      "folded-square",
      "template",
    ]);
    expect(kinds(wedge({}, "10"))).toEqual(["ruler", "two-marks", "folded-square", "template"]);
    expect(kinds(wedge({ hasRuler: false }))).toEqual(["two-marks", "folded-square", "template"]);
    const twelve = rulerOf({ point: "sharp" }, 12, "in");
    expect(kinds(wedge({ ruler: twelve, hasRuler: false }))).toEqual(["two-marks", "template"]);
  });

  it("says the marks: up the strip, over tan 22.5 of its full height to each side", () => {
    const sharp = wedge({ ruler: rulerOf({ point: "sharp" }, 8, "in"), hasRuler: false });
    const [marks, folded] = otherWays(sharp);
    expect(marks.lengths.base).toBeCloseTo(2 * T * 10, 12);
    expect(marks.lengths.tip).toBe(0);
    expect(folded.lengths).toMatchObject({ folds: 2, height: 10 });
    expect(folded.lengths.square).toBeCloseTo(10 / Math.cos(Math.PI / 8), 12);
  });

  it("costs: a ruler laid 1/32 in off moves the octagon by two slips, and nothing else", () => {
    const [ruler] = otherWays(wedge({}, "10"));
    expect(ruler.cost.across).toBeCloseTo(2 * SLIP, 9);
    expect(ruler.cost.misfit).toBeCloseTo(0, 9);
    expect(ruler.cost.outerEdge).toBeCloseTo(0, 9);
  });

  it("costs: a line drawn outside a template all round adds 2 (1 + 1 / sin 22.5) slips", () => {
    const template = otherWays(wedge()).at(-1)!;
    expect(template.cost.across).toBeCloseTo(2 * SLIP * (1 + 1 / Math.sin(Math.PI / 8)), 9);
    expect(template.cost.misfit).toBeCloseTo(0, 9);
  });

  it("costs: a leg cut one slip too far in takes half of what a seam that much too wide does", () => {
    const passes = otherWays(wedge()).find((w) => w.kind === "two-passes")!;
    expect(passes.cost.across).toBeCloseTo(-SLIP / Math.sin(Math.PI / 8), 9);
  });

  it("costs: a mark out by a slip opens the angle eight times over, so the edge ruffles", () => {
    const marks = otherWays(wedge()).find((w) => w.kind === "two-marks")!;
    expect(marks.cost.misfit).toBeGreaterThan(0);
    // Each finished base is nearly a slip too long; eight of them.
    expect(marks.cost.outerEdge).toBeGreaterThan(0.8 * 8 * SLIP);
    expect(marks.cost.outerEdge).toBeLessThan(8 * SLIP);
    const longer = otherWays(wedge()).find((w) => w.kind === "extended")!;
    // Beyond an 8 in ruler the same slip has grown by a quarter at the foot of a 10 in strip.
    expect(longer.cost.outerEdge / marks.cost.outerEdge).toBeCloseTo(10 / 8, 1);
  });

  it("costs: a fold off by a slip turns one leg by it over the side of the square", () => {
    const folded = otherWays(wedge()).find((w) => w.kind === "folded-square")!;
    const radians = SLIP / folded.lengths.square;
    expect(folded.cost.misfit).toBeCloseTo((8 * radians * 180) / Math.PI, 6);
  });
});

describe("readYourRuler", () => {
  it("says what to measure, and what a misread 1/32 in does to the block", () => {
    const ruler = rulerOf({ point: { blunt: "1/4" }, longest: "8" }, 8, "in");
    const r = readYourRuler(ruler, 4.5, 0.25, "in");
    expect(r.finished).toBeCloseTo(8, 12);
    expect(r.past).toBeCloseTo(0.25, 12);
    expect(r.readings.map((x) => x.what)).toEqual(["flat-tip", "width-at-line", "line"]);
    expect(r.readings[0].shouldBe).toBeCloseTo(0.334089, 6);
    expect(r.readings[0].across).toBeCloseTo(SLIP / T, 12);
    expect(r.readings[1].shouldBe).toBeCloseTo(2 * T * 8 + 0.334089, 6);
    expect(r.readings[2].across).toBe(2 * SLIP);
  });

  it("agrees with the ruler read wrong", () => {
    const right = rulerOf({ point: { flat: "3/8" } }, 12, "in");
    const wrong = rulerOf({ point: { flat: String(3 / 8 + SLIP) } }, 12, "in");
    const predicted = readYourRuler(right, 6, 0.25, "in").readings[0].across;
    const finished = (r: typeof right) => readYourRuler(r, 6, 0.25, "in").finished;
    expect(finished(wrong) - finished(right)).toBeCloseTo(predicted, 9);
    expect(flatTip(wrong) - flatTip(right)).toBeCloseTo(SLIP, 12);
  });
});
