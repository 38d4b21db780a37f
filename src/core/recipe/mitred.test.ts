import { expect, test } from "vitest";
import { point } from "../geometry/index.ts";
import { cutOne } from "./try.testing.ts";

/** A mitred border 3 in wide round a quilt 40 in across, its long side outside. */
const border = (inside: number, width: number) => [
  point(0, 0),
  point(inside + 2 * width, 0),
  point(inside + width, width),
  point(width, width),
];

test("a mitred border is a plain strip as long as its outer edge, joined where need be", () => {
  const { recipe, result } = cutOne({ polygon: border(40, 3), outside: [0], role: "border" });
  expect(recipe).toMatchObject({ kind: "rectangle", verdict: "proved" });
  // Outer edge 46 in; each 45-degree end runs SA / tan 22.5 past its corner: 47.207, up to 47 1/4.
  expect(recipe.cuts.map((c) => c.op)).toEqual(["strip", "crosscut"]);
  expect(recipe.cuts[0].lengths[0]).toBeCloseTo(3.5, 12);
  expect(recipe.cuts[1].lengths).toEqual([47.25]);
  expect(result.demands[0]).toMatchObject({ joinsAllowed: true, joinLoss: 0.5, count: 1 });
  expect(result.demands[0].shape).toMatchObject({ kind: "rect", first: 47.25, pitch: 47.25 });
  expect(result.findings).toEqual([]);
});

test("its ends are free: what is over at the inner corner is trimmed after sewing", () => {
  const { recipe } = cutOne({ polygon: border(31, 5), outside: [0], role: "border" });
  expect(recipe.spareBySide.length).toBeGreaterThan(0);
  expect(recipe.spare).toBeGreaterThan(0);
});

test("the same shape in a block is a trapezoid, nested along its strip", () => {
  const { recipe } = cutOne({ polygon: border(40, 3), outside: [0], role: "patch" });
  expect(recipe.kind).toBe("trapezoid");
});

test("a border's length is measured, so only its width must lie on the ruler", () => {
  const long = [point(0, 0), point(31.37, 0), point(31.37, 3), point(0, 3)];
  const codes = (role: "border" | "patch") =>
    cutOne({ polygon: long, role }).result.findings.map((f) => f.code);
  expect(codes("border")).toEqual([]);
  expect(codes("patch")).toEqual(["cut-off-step"]);
});
