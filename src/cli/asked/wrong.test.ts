import { describe, expect, test } from "vitest";
import { whyTables } from "../../core/answer/index.ts";
import type { ReadingName } from "../../core/sewing/index.ts";
import { design } from "./designs.testing.ts";

/** Sharp 4 1/2 in wedges: 7.193 finished, so 7.693 unfinished; a wedge 4 1/2 high, 3.728 wide. */
const RIGHT = { acrossOne: 7.6934, acrossTwo: 7.6934, wedgeHeight: 4.5, wedgeBase: 3.7279 };

/** What the page says once these are typed under "Why is mine off?". */
function told(readings: Partial<Record<ReadingName, number>>) {
  const record = Object.entries(readings).map(([name, x]) => ({
    what: "reading",
    block: "sheaf",
    name,
    size: String(x),
  }));
  const { brief, answer } = design("quiet-field", (d) => Object.assign(d, { record }));
  const [table] = whyTables(brief, answer);
  const [first] = table.causes;
  return { ...table, first, all: first ? [first.text, ...first.remedies].join(" ") : "" };
}
const across = (x: number) => ({ acrossOne: x, acrossTwo: x });

describe("a block that came out off", () => {
  test("14. a quarter inch small, flat, its wedge right: the seams are about 3/64 too wide", () => {
    // The law 5.226 e: 3/64 takes 0.245.
    const t = told({ ...RIGHT, ...across(7.4434), outerEdge: 0, centerOffset: 0 });
    expect(t.first.cause).toBe("seam");
    expect(t.first.text).toBe(
      "The seams are about 3/64 in too wide, the fold of the fabric counted.",
    );
    expect(t.all).toContain("narrower");
    // The same block with a wedge found short: the strip was cut under, by half of the quarter.
    const short = told({ ...across(7.4434), wedgeHeight: 4.375, wedgeBase: 3.6244, outerEdge: 0 });
    expect(short.first.text).toBe("The strip for the wedges was cut about 1/8 in too narrow.");
    // With no wedge measured the two are not parted, and it says what would part them.
    expect(told(across(7.4434)).outcome).toMatch(/To part them, measure/);
  });

  test("15. a quarter inch large: seams 3/64 too narrow; 0.8 large tells of another point", () => {
    const t = told({ ...RIGHT, ...across(7.9434), outerEdge: 0, centerOffset: 0 });
    expect(t.first.text).toMatch(/^The seams are about 3\/64 in too narrow/);
    // Blunt wedges sewn by the numbers of sharp ones: 2 (0.6533 - 0.25) = 0.807 too large.
    const point = told({ ...across(8.5), wedgeHeight: 4.5, wedgeBase: 4.062 });
    expect(point.first.cause).toBe("point");
  });

  test("16. the center does not meet: a slip leaves the size right; a bent half shows under a straight edge", () => {
    const slip = told({ ...RIGHT, centerOffset: 0.125, halfGap: 0, outerEdge: 0 });
    expect(slip.first.cause).toBe("slip");
    expect(slip.all).toContain("Pin the two halves at the center before the last seam");
    const odd = told({ ...RIGHT, acrossTwo: 7.5684, centerOffset: 0, outerEdge: 0 });
    expect(odd.first.cause).toBe("odd-piece");
    const bent = told({ ...RIGHT, halfGap: 0.1, outerEdge: 0.4 });
    expect(["angle", "drift"]).toContain(bent.first.cause);
  });

  test("17. it ruffles: 1/4 in too much at the outer edge is sixteen times 1/64; all seams in by that", () => {
    const t = told({ ...RIGHT, outerEdge: 0.25, centerOffset: 0 });
    // Surplus / (2 x seams) = 1/4 / 16, tapering to nothing at the center.
    expect(t.all).toContain(
      "sew 8 seams again, about 1/64 in deeper at the outer edge, tapering to nothing at the center",
    );
  });

  test("18. it cups: 1/4 in short at the outer edge; the seams are let out; every leg stretches", () => {
    const t = told({ ...RIGHT, outerEdge: -0.25, centerOffset: 0 });
    expect(t.all).toContain("sew 8 seams again, about 1/64 in narrower at the outer edge");
    // A wedge's legs lie half its angle off the grain of its strip.
    const { answer } = design("quiet-field");
    const wedge = answer.pieces.find((p) => p.name === "wedge")!;
    expect(wedge.edges.map((e) => e.grain.toFixed(1))).toEqual(["0.0", "22.5", "22.5"]);
    expect(wedge.edges.map((e) => e.grainWord)).toEqual(["straight", "off-grain", "off-grain"]);
  });

  test("19. every side hangs over by 3/16: a tall wedge tells of the ruler's line, a right one of the seam", () => {
    const tall = told({
      ...across(7.6934 + 0.375),
      wedgeHeight: 4.6875,
      wedgeBase: 3.8832,
      outerEdge: 0,
    });
    expect(tall.first.text).toBe("The strip for the wedges was cut about 3/16 in too wide.");
    const seam = told({ ...RIGHT, ...across(7.6934 + 0.375), outerEdge: 0 });
    // 3/8 / 5.226 = 0.0718 in a seam.
    expect(seam.first.text).toMatch(/^The seams are about 5\/64 in too narrow/);
  });
});
