import { expect, test } from "vitest";
import { cellAt, countKinds } from "./rows.ts";

const PLAN = [
  ["star", "plain", "plain"],
  ["plain", { block: "star", quarters: 1, mirrored: false }],
];

test("each row of the plan repeats by its own length", () => {
  expect(cellAt(PLAN, 0, 3)).toBe("star");
  expect(cellAt(PLAN, 3, 2)).toBe("plain");
});

test("a plan wider than the quilt counts only what lies in it", () => {
  expect(countKinds(PLAN, 1, 2)).toEqual({ star: 1, plain: 1 });
});
