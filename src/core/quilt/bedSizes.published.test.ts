import { describe, expect, test } from "vitest";
import { smallBrief } from "../brief/sample.ts";
import { stepOf } from "../measure/index.ts";
import { MATTRESSES, quiltForBed } from "./bedSizes.testing.ts";
import { BATTINGS, packagedBatting, QUILTS } from "./bedSizes.ts";
import { finishingOf } from "./finishing.ts";

const STEP = stepOf("1/8", "in");
const list = (where: string) => MATTRESSES.find((m) => m.where === where)!;
const bed = (where: string, name: string) => list(where).sizes.find((s) => s.name === name)!;

const finished = (finishing: object, width: number, height: number, usable = "40") =>
  finishingOf(
    smallBrief({
      finishing,
      fabrics: [{ kind: "plain", id: "red", name: "Red", usable, color: "#A33B2E" }],
    }),
    { width, height },
    STEP,
  );

describe("mattresses (gnomon.org.uk, bed sizes page)", () => {
  test.each([
    ["US", "queen", 60, 80],
    ["US", "California king", 72, 84],
    ["UK", "double", 1350, 1900],
    ["Europe", "double", 1400, 2000],
  ] as const)("%s %s is %s x %s", (where, name, width, length) => {
    expect(bed(where, name)).toMatchObject({ width, length });
  });

  test("US crib against the law: full-size crib interior 28 +/- 5/8 x 52 3/8 +/- 5/8 in (16 CFR 1219, from memory)", () => {
    const { width, length } = bed("US", "crib");
    expect(Math.abs(width - 28)).toBeLessThanOrEqual(0.625);
    expect(Math.abs(length - 52.375)).toBeLessThanOrEqual(0.625);
  });

  test("one name is no one size: a European double is 50 mm wider and 100 mm longer than a British one", () => {
    expect(bed("Europe", "double").width - bed("UK", "double").width).toBe(50);
    expect(bed("Europe", "double").length - bed("UK", "double").length).toBe(100);
    expect(bed("US", "king").width * 25.4 - bed("UK", "super king").width).toBeCloseTo(130.4, 9);
  });

  test("no two of one list share a name", () => {
    for (const l of [...MATTRESSES, ...QUILTS, BATTINGS])
      expect(new Set(l.sizes.map((s) => s.name)).size).toBe(l.sizes.length);
  });
});

describe("quilts for beds: mattress and two drops wide, mattress and a drop long (two quilters' blogs)", () => {
  test("queen with 15 in drops: 90 x 95, as the second chart prints it", () => {
    const q = quiltForBed(bed("US", "queen"), 15);
    expect(q).toEqual({ width: 90, length: 95 });
    expect(QUILTS[1].sizes).toContainEqual({ name: "queen", ...q });
  });
  test("queen with 13 in drops is 86 wide, and 93 long: 2 in short of C. Watson's 86 x 95", () => {
    const q = quiltForBed(bed("US", "queen"), 13);
    expect(q.width).toBe(86);
    expect(95 - q.length).toBe(2);
  });
  test("twin with 13 in drops: 65 x 88, as C. Watson prints it", () => {
    expect(quiltForBed(bed("US", "twin"), 13)).toEqual({ width: 65, length: 88 });
  });
  test("a tuck of 12 in goes to the length alone", () => {
    expect(quiltForBed(bed("US", "full"), 9, 12)).toEqual({ width: 72, length: 96 });
  });
});

describe("packaged batting", () => {
  test("a 60 x 80 top wants 66 x 86 (a longarm quilter's preparation page): the twin package holds it", () => {
    const { batting } = finished({ batting: { overhang: "3" } }, 60, 80);
    expect(packagedBatting(batting!.width, batting!.height)?.name).toBe("twin");
  });
  test("either way round: 88 x 70 too", () => {
    expect(packagedBatting(88, 70)?.name).toBe("twin");
  });
  test("C. Watson's queen, 86 x 95, with 3 in over each side, is 2 in too wide for its own package", () => {
    expect(86 + 6 - BATTINGS.sizes.find((s) => s.name === "queen")!.width).toBe(2);
    expect(packagedBatting(92, 101)?.name).toBe("king");
  });
  test("none holds 121 x 121", () => {
    expect(packagedBatting(121, 121)).toBeUndefined();
  });
});

describe("what print says of backing and binding", () => {
  test.each([
    ["4 in each side (a longarm quilter and four service pages)", "4", 68, 88],
    ["6 in each side, the most asked for by those pages", "6", 72, 92],
  ])("%s", (_, overhang, width, height) => {
    const { backing } = finished({ backing: { fabric: "red", overhang } }, 60, 80);
    expect(backing).toMatchObject({ width, height });
  });

  test("panels lose 1/2 in at each side of their seam (two preparation pages)", () => {
    const { backing } = finished({ backing: { fabric: "red", overhang: "4" } }, 90, 90, "42");
    expect(backing).toMatchObject({ panels: 3, seam: 0.5, panelLength: 98 });
    expect(3 * backing!.panelWidth - 2 * 2 * backing!.seam).toBeCloseTo(98, 12);
  });

  /** Perimeter plus so much, whose rule. */
  test.each([
    ["10", 230, "C. Watson, quilt maths page"],
    ["12", 232, "common practice, no source"],
    ["15", 235, "Minneapolis Modern Quilt Guild, continuous bias, 2014-04"],
    ["16", 236, "a quilting forum thread"],
    ["24", 244, "a blog's quilt maths, 2011"],
  ])("binding of a 50 x 60 top with %s in over is %s in (%s)", (spare, length) => {
    const { binding } = finished({ binding: { width: "2 1/4", fabric: "red", spare } }, 50, 60);
    expect(binding?.length).toBe(length);
  });

  test("strips = length / 40 rounded up (C. Watson; a designer's blog, 2013) forgets the joins: at 236 in one too few", () => {
    const { binding } = finished(
      { binding: { width: "2 1/2", fabric: "red", spare: "16" } },
      50,
      60,
    );
    const printed = Math.ceil(binding!.length / 40);
    expect(printed).toBe(6);
    const joined = (n: number) => n * 40 - (n - 1) * binding!.joinLoss;
    expect(joined(6) - binding!.length).toBe(-8.5);
    expect(joined(7)).toBeGreaterThan(binding!.length);
  });

  test("perimeter / (width - 2) (a designer's blog, 2013) leaves 6 x 2 in for joins where five take 2 1/2 each: 1/2 in under", () => {
    expect(220 / 38).toBeCloseTo(5.79, 2);
    const { binding } = finished({ binding: { width: "2 1/2", fabric: "red" } }, 50, 60);
    expect(6 * 2 - 5 * binding!.joinLoss).toBe(-0.5);
  });
});
