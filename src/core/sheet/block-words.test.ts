import { expect, test } from "vitest";
import { blockCounts, blockName, kindName } from "./block-words.ts";

const star = { id: "star", name: "Star, small", count: 27 };
const left = { id: "star~left", name: "Star, small, left half", count: 3 };
const right = { id: "star~right", name: "Star, small, right half", count: 3 };
const corner = {
  id: "star~upper-left-quarter",
  name: "Star, small, upper-left quarter",
  count: 1,
};

test("a part is named before its block, whose own name may have a comma", () => {
  expect([star, left, corner].map((k) => blockName(k, 1))).toEqual([
    "Star, small block",
    "left half of Star, small",
    "upper-left quarter of Star, small",
  ]);
  expect([star, left, corner].map((k) => blockName(k, 2))).toEqual([
    "Star, small blocks",
    "left halves of Star, small",
    "upper-left quarters of Star, small",
  ]);
  expect(kindName(star)).toBe("Star, small");
});

test("whole blocks, halves and quarters are counted apart", () => {
  expect(blockCounts([left, star, right, corner])).toEqual([
    [27, "blocks"],
    [6, "half blocks"],
    [1, "quarter block"],
  ]);
  expect(blockCounts([{ ...star, count: 1 }])).toEqual([[1, "block"]]);
});
