import { describe, expect, test } from "vitest";
import { finishRows } from "../../core/answer/index.ts";
import { planClass, stagesOf } from "../../core/shop/index.ts";
import { design } from "./designs.testing.ts";

const RATES = { seam: 1, inch: 0.1, press: 0.5, step: 2, cut: 0 };
const withClass = (room: object) =>
  design("quiet-field", (d) => Object.assign(d, { class: { rates: RATES, ...room } }));

describe("how long, and how many", () => {
  test("29. how long will it take me: seams, inches and presses of one block, at my own rates", () => {
    const { brief, answer } = withClass({});
    const stages = stagesOf(brief, answer, { blocks: 1, students: 1, irons: 1 });
    // A deep block of 12 in: 4 and 4 eighths, 4 quarters, 2 halves, one long seam.
    expect(stages.map((s) => s.seams)).toEqual([0, 4, 4, 4, 2, 1]);
    // Each seam is its finished length and two allowances: the wedge's base 2 a tan 22.5 = 2.9796,
    // the square's diagonal 8.4853, 6, 12.
    const inches = 8 * (2.9796 + 0.5) + 4 * (8.4853 + 0.5) + 2 * (6 + 0.5) + (12 + 0.5);
    const total = stages.reduce((t, s) => t + s.own, 0);
    expect(total).toBeCloseTo(15 * 1 + 0.1 * inches + 15 * 0.5 + 5 * 2, 2);
  });

  test("31. how many blocks will I finish in class: the most that fit, one more does not", () => {
    const { brief, answer } = withClass({ hours: 5 });
    const plan = planClass(brief, answer);
    const minutes = (blocks: number): number =>
      stagesOf(brief, answer, { blocks, students: 1, irons: 1 }).reduce((t, s) => t + s.inClass, 0);
    // One block 15 + 8.93 + 7.5 = 31.43, and 10 to lay out once: (300 - 10) / 31.43 = 9.23.
    expect(minutes(1)).toBeCloseTo(41.43, 1);
    expect(plan.finished).toBe(9);
    expect(minutes(9)).toBeLessThanOrEqual(300);
    expect(minutes(10)).toBeGreaterThan(300);
  });
});

describe("30. another seam, another unit: worked anew, never converted", () => {
  // Published nowhere; from a = W + D - S - S / sin 22.5 with a flat tip of 0.33409 in.
  test.each([
    ["1/4", 8],
    ["7 mm", 7.8151],
    ["6 mm", 8.0996],
  ])("sewn with %s, a 4 1/2 in strip finishes %f in", (seam, across) => {
    const { answer } = design("lantern-throw", (d) => {
      Object.assign(d, { seam, ruler: { point: { flat: "0.33409" } } });
      d.blocks[0].strip = "4 1/2";
    });
    expect(2 * (answer.blocks[0].radial?.a ?? 0)).toBeCloseTo(across, 3);
  });

  test("a scant quarter finishes larger, and every piece is cut to cover again", () => {
    const { answer } = design("quiet-field", (d) => {
      d.seam = "7/32";
    });
    // 4 1/2 - 7/32 (1 + 1 / sin 22.5).
    expect(answer.blocks[0].radial?.a).toBeCloseTo(3.7096, 4);
    expect(answer.recipes.every((r) => r.verdict === "proved")).toBe(true);
  });

  test("in millimeters sizes are rounded up to millimeters, not to converted eighths", () => {
    const { brief, answer } = design("harbor-mat");
    expect(brief.unit).toBe("mm");
    // 2 (115 - 7 - 7 / sin 22.5).
    expect(2 * (answer.blocks[0].radial?.a ?? 0)).toBeCloseTo(179.416, 3);
    const squares = answer.recipes.flatMap((r) => r.cuts.filter((c) => c.op === "square"));
    expect(squares.length).toBeGreaterThan(0);
    for (const c of squares) for (const x of c.lengths) expect(x % 1).toBeCloseTo(0, 9);
    // Bought by the 5 cm.
    for (const y of answer.yardages) expect(y.buy % 50).toBeCloseTo(0, 9);
  });
});

test("32. how much backing, and which way does its seam run", () => {
  const { brief, answer } = design("skylark-bed", (d) => {
    for (const f of d.fabrics) if (f.id === "linen-back") f.usable = "42";
  });
  // The top is 67.569 x 78.882 and 4 in are wanted all round: 75.569... with 8 more. Upright: two panels
  // (76.069 + 1) / 2 wide and 87.382 long, 174.765; level would take three of 76.069.
  const { backing } = answer.finishing ?? {};
  expect(backing).toMatchObject({ panels: 2, seams: "upright" });
  expect(backing?.panelWidth).toBeCloseTo((76.0685 + 1) / 2, 3);
  const bought = answer.yardages.find((y) => y.fabricId === "linen-back")!;
  // Each panel is cut up to the next eighth: 87.3823 becomes 87 1/2.
  expect(bought.inPieces).toBeCloseTo(2 * 87.5, 9);
  const row = finishRows(brief, answer).find((r) => r.id === "linen-back")!;
  expect(row.size).toBe("76.069 x 87.382 in");
  expect(row.how).toContain("4 in over all round");
  expect(row.how).toContain("seams upright");
});
