import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Fabric } from "../brief/index.ts";
import { say } from "../findings/index.ts";
import { stepOf } from "../measure/index.ts";
import { plainFabric, strips } from "./fabrics.testing.ts";
import { lookOf } from "./look.ts";
import { ringsOf, ringWidth } from "./rings.ts";
import { cutsThatMeet, cutsThatMiss, leastSetMiss, mostSetMiss } from "./setMeeting.ts";
import { cutsOnStep, cutsThatSum, equalCuts, setWidth, showing } from "./stripSet.ts";
import { bulkRadius, setRings, stripSetFindings } from "./stripSetFindings.ts";
import { stripOf, type WedgeCut } from "./types.ts";

const SA = 0.25;
const EIGHTH = stepOf("1/8", "in");
const HALF_ANGLE = Math.PI / 8;
const SHARP: WedgeCut = {
  a: 4.5 - SA - SA / Math.sin(HALF_ANGLE),
  seam: SA,
  past: SA / Math.sin(HALF_ANGLE),
};
const BLUNT: WedgeCut = { a: 4, seam: SA, past: SA };
type SetFabric = Extract<Fabric, { kind: "strip-set" }>;
const set = (...cuts: string[]): SetFabric => strips(cuts.map((c, i) => [`f${i}`, c])) as SetFabric;

describe("cut widths that sew up to the strip", () => {
  test("3 equal strips for 4 1/2 are 1 5/6 each, 4 equal are 1 1/2 (own calculation)", () => {
    expect(equalCuts(4.5, 3, SA)).toBeCloseTo(11 / 6, 12);
    expect(equalCuts(4.5, 4, SA)).toBeCloseTo(1.5, 12);
  });

  // Patchwork Playground, spiderweb block 83, 2012-08-04: two 2 in strips sew up to 3 1/2 in.
  test("two 2 in strips sew up to 3 1/2 in (published)", () => {
    expect(setWidth([2, 2], SA)).toBe(3.5);
  });

  test("on the step the sum is exact: three for 4 1/2 are 1 7/8, 1 7/8, 1 3/4", () => {
    const third = equalCuts(4.5, 3, SA);
    expect(cutsOnStep([third, third, third], 4.5, SA, EIGHTH)).toEqual({
      cuts: [1.875, 1.875, 1.75],
      trim: 0,
    });
  });

  test("a strip between two steps cannot be met: a little is trimmed off the outer edge", () => {
    const strip = 4.9033;
    const { cuts, trim } = cutsOnStep([2, 1.5, 2.5], strip, SA, EIGHTH);
    expect(setWidth(cuts, SA)).toBeCloseTo(5, 12);
    expect(trim).toBeCloseTo(5 - strip, 12);
  });

  test("laws: sums exact, each within a step of its exact width (seed 77041)", () => {
    const widths = fc.array(fc.double({ min: 0.8, max: 3, noNaN: true }), {
      minLength: 1,
      maxLength: 7,
    });
    fc.assert(
      fc.property(widths, fc.integer({ min: 16, max: 80 }), (wanted, eighths) => {
        const strip = eighths / 8;
        const exact = cutsThatSum(wanted, strip, SA);
        expect(setWidth(exact, SA)).toBeCloseTo(strip, 9);
        const { cuts, trim } = cutsOnStep(wanted, strip, SA, EIGHTH);
        expect(setWidth(cuts, SA)).toBeCloseTo(strip, 9);
        expect(trim).toBe(0);
        cuts.forEach((c, i) => {
          expect(Math.abs(c - exact[i])).toBeLessThan(0.125 + 1e-9);
          expect(Math.abs(c * 8 - Math.round(c * 8))).toBeLessThan(1e-9);
        });
      }),
      { seed: 77041, numRuns: 200 },
    );
  });
});

describe("rings of a set", () => {
  test("three strips, sharp: what each shows up and down", () => {
    const cuts = [1.875, 1.5, 2.125];
    expect(showing(cuts, SA).map((s) => [s.from, s.to])).toEqual([
      [0, 1.625],
      [1.625, 2.625],
      [2.625, 4.5],
    ]);
    const up = setRings(cuts, SHARP, "up").map((r) => r.outer - r.inner);
    // The outer strip loses the seam, the last one the point: 1.625 - 0.25, 1, 1.875 - 0.6533.
    expect(up[0]).toBeCloseTo(1.375, 9);
    expect(up[1]).toBeCloseTo(1, 9);
    expect(up[2]).toBeCloseTo(1.2217, 4);
    const down = setRings(cuts, SHARP, "down").map((r) => r.outer - r.inner);
    expect(down[0]).toBeCloseTo(0.9717, 4);
    expect(down[2]).toBeCloseTo(1.625, 9);
  });

  test("rings agree with the look's rings, and sum to a", () => {
    const s = set("1 7/8", "1 1/2", "2 1/8");
    const fabrics = ["#102030", "#405060", "#708090"].map((c, i) => plainFabric(`f${i}`, c));
    const { look } = lookOf(s, fabrics, "in", SA);
    for (const way of ["up", "down"] as const) {
      const shown = ringsOf(look, SHARP, way, 0).map(ringWidth).sort();
      const closed = setRings([1.875, 1.5, 2.125], SHARP, way)
        .map((r) => r.outer - r.inner)
        .sort();
      shown.forEach((w, i) => {
        expect(w).toBeCloseTo(closed[i], 9);
      });
      expect(shown.reduce((x, y) => x + y, 0)).toBeCloseTo(SHARP.a, 9);
    }
  });
});

describe("what is wrong with a set", () => {
  const found = (s: SetFabric, cut: WedgeCut, ways: ("up" | "down")[] = ["up"]) =>
    stripSetFindings(s, cut, ways, HALF_ANGLE, EIGHTH);

  test("nothing wrong, nothing said", () => {
    expect(found(set("1 7/8", "1 1/2", "2 1/8"), SHARP, ["up", "down"])).toEqual([]);
  });

  test("too narrow a set blocks, and says the widths that do", () => {
    const [f] = found(set("1 1/2", "1 1/2", "2"), SHARP);
    expect(f).toMatchObject({ code: "strip-set-sum", severity: "blocks", needed: 4.5, found: 4 });
    expect(f.words?.change).toBe("Cut them 1 3/4 in, 1 5/8 in, 2 1/8 in.");
    expect(say(f, { step: EIGHTH })).toContain("sew up to 4 in; the wedge needs 4 1/2 in");
  });

  test("a ring of 1/8 in is narrow; a strip as wide as its seams shows nothing", () => {
    const narrow = found(set("1 7/8", "5/8", "3"), SHARP);
    expect(narrow.find((f) => f.code === "ring-narrow")?.found).toBeCloseTo(0.125, 9);
    const none = found(set("2 1/4", "1/2", "2 3/4"), SHARP);
    expect(none.map((f) => f.code)).toContain("strip-too-narrow");
  });

  test("an outer strip of 3/8 in lies inside the allowance and is hidden", () => {
    const codes = found(set("3/8", "2 5/8", "2 1/2"), SHARP);
    expect(codes.map((f) => f.code)).toEqual(["strip-hidden", "seam-in-allowance"]);
    expect(codes[1].found).toBeCloseTo(0.125, 9);
  });

  test("a seam 0.35 in from the center lies in the bulk; the bulk ends at SA / tan 22.5", () => {
    expect(bulkRadius(SA, HALF_ANGLE)).toBeCloseTo(0.6036, 4);
    const [f] = found(set("2", "2 1/4", "1 1/4"), SHARP).filter((x) => x.code === "seam-in-bulk");
    expect(f.found).toBeCloseTo(SHARP.a + SA - 3.5, 9);
  });
});

describe("rings that meet, or miss on purpose", () => {
  test("a mirrored set meets all round; another misses by what its seams differ", () => {
    expect(mostSetMiss([1.5, 2.5, 1.5], SA)).toBeCloseTo(0, 12);
    expect(mostSetMiss([1.875, 1.5, 2.125], SA)).toBeCloseTo(0.25, 12);
    expect(cutsThatMeet([1.875, 1.5, 2.125])).toEqual([2, 1.5, 2]);
  });

  test("the same least miss by the rings themselves (second method)", () => {
    const cuts = [1.875, 1.5, 2.125];
    const up = setRings(cuts, BLUNT, "up")
      .slice(0, -1)
      .map((r) => r.inner);
    const down = setRings(cuts, BLUNT, "down")
      .slice(1)
      .map((r) => r.inner);
    const gaps = up.flatMap((u) => down.map((d) => Math.abs(u - d)));
    expect(leastSetMiss(cuts, SA)).toBeCloseTo(Math.min(...gaps), 9);
  });

  test("widths that miss by 3/8 everywhere, found by the smallest change on the step", () => {
    const cuts = [1.875, 1.5, 2.125];
    const missing = cutsThatMiss(cuts, SA, EIGHTH, 0.375) ?? [];
    expect(leastSetMiss(missing, SA)).toBeGreaterThanOrEqual(0.375 - 1e-9);
    expect(setWidth(missing, SA)).toBeCloseTo(4.5, 12);
    const moved = missing.reduce((s, c, i) => s + Math.abs(c - cuts[i]), 0);
    expect(moved).toBeCloseTo(0.25, 9);
    expect(cutsThatMiss([1, 1], SA, EIGHTH, 3)).toBeUndefined();
  });

  test("the sewn width is the strip", () => {
    expect(setWidth([1.875, 1.5, 2.125], SA)).toBeCloseTo(stripOf(SHARP), 12);
  });
});
