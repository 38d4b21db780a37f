import { describe, expect, test } from "vitest";
import { smallBrief } from "../../brief/sample.ts";
import { answerBrief, borderSteps } from "../index.ts";

/** A 30 x 36 in center of 6 in squares. */
const stepsOf = (border: object, usable = "40") => {
  const fabric = { kind: "plain", name: "Red", usable, color: "#A33B2E" };
  const brief = smallBrief({
    fabrics: ["red", "sand"].map((id) => ({ ...fabric, id })),
    blocks: [{ kind: "unit", id: "tile", unit: "square", width: "6", fabric: { patch: "red" } }],
    quilt: { rows: 6, columns: 5, plan: [["tile"]], borders: [{ fabric: "sand", ...border }] },
  });
  return borderSteps(brief, answerBrief(brief));
};

describe("butted", () => {
  const [step] = stepsOf({ width: "3" });
  test("sides to the measured height, then top and bottom to the measured width over them", () => {
    expect(step.lines[0]).toContain("in three places");
    expect(step.lines[0]).toContain("36 1/2 in is planned");
    expect(step.lines[1]).toContain("36 1/2 in is planned");
    expect(step).toMatchObject({ border: 1, marks: 0, seams: 4 });
  });
  test("minutes: four seams of 144 in in all (rates of our own: 0.75 a seam, 40 in a minute, 0.35 to press, 3 a step)", () => {
    expect(step.minutes.sewing).toBeCloseTo(4 * 0.75 + 144 / 40, 9);
    expect(step.minutes.total).toBeCloseTo(4 * 0.75 + 144 / 40 + 4 * 0.35 + 6, 9);
  });
});

test("with cornerstones both ways are measured first, and each strip is as long as the top", () => {
  const [step] = stepsOf({ width: "3", cornerstone: "red" });
  expect(step.lines[0]).toContain("36 1/2 in down and 30 1/2 in across are planned");
  expect(step.seams).toBe(8);
});

describe("mitered", () => {
  const [step] = stepsOf({ width: "4", join: "mitred" }, "60");
  test("marks lie half the finished side from the middle: 18 in and 15 in", () => {
    expect(step.lines[1]).toContain("18 in and 15 in as planned");
    // Two on each of four strips, one at each corner of the top.
    expect(step.marks).toBe(4 * 2 + 4);
  });
  test("strips as long as the outer edge and 1.2071 in for the corners; corner seams 4 root 2", () => {
    // 44 + 1.2071 and 38 + 1.2071, up to the eighth.
    expect(step.lines[0]).toContain("Cut the strips 45 1/4 in and 39 1/4 in long");
    expect(step.lines[2]).toContain("5.657 in finished");
    expect(step.seams).toBe(8);
  });
});

test("strips longer than the fabric is wide are joined: two of 36 1/2 in from 35 in widths take two joins", () => {
  const [step] = stepsOf({ width: "2" }, "35");
  // Top and bottom, 34 1/2 in, fit the fabric; three widths lose 1/2 in at each of two joins.
  expect(step.lines[0]).toContain("2 joins in all");
  expect(3 * 35 - 2 * 0.5).toBeGreaterThanOrEqual(2 * 36.5);
  expect(2 * 35 - 0.5).toBeLessThan(2 * 36.5);
  expect(step.seams).toBe(6);
});

test("cut along the selvage there are none", () => {
  const [step] = stepsOf({ width: "2", cut: "along" }, "35");
  expect(step.seams).toBe(4);
  expect(step.lines.join(" ")).not.toContain("join");
});

test("a strip is joined where the wash leaves the fabric too narrow for it", () => {
  const seams = (shrinkage?: object): number => {
    const fabric = { kind: "plain", name: "Red", usable: "37", color: "#A33B2E", shrinkage };
    const brief = smallBrief({
      fabrics: ["red", "sand"].map((id) => ({ ...fabric, id })),
      blocks: [{ kind: "unit", id: "tile", unit: "square", width: "6", fabric: { patch: "red" } }],
      quilt: { rows: 6, columns: 5, plan: [["tile"]], borders: [{ fabric: "sand", width: "3" }] },
    });
    return borderSteps(brief, answerBrief(brief))[0].seams;
  };
  expect(seams()).toBe(4);
  // 36 1/2 in from 37 less a tenth, 33.3: each side and each end is joined once, two from three strips.
  expect(seams({ length: 0, width: 10 })).toBe(8);
});
