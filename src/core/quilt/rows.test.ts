import { expect, test } from "vitest";
import { cellAt, countKinds, placeRows } from "./rows.ts";

const PLAN = [
  ["star", "plain", "plain"],
  ["plain", { block: "star", quarters: 1, mirrored: false }],
];

test("kinds counted on the repeat equal kinds counted block by block", () => {
  for (const [rows, columns] of [
    [1, 1],
    [2, 5],
    [7, 4],
    [13, 11],
  ]) {
    const walked: Record<string, number> = {};
    for (const b of placeRows(PLAN, rows, columns, { x: 8, y: 9 }))
      walked[b.blockId] = (walked[b.blockId] ?? 0) + 1;
    expect(countKinds(PLAN, rows, columns)).toEqual(walked);
  }
});

test("row 1 column 1 is the top left and the quilt's center is the origin", () => {
  const all = [...placeRows(PLAN, 3, 4, { x: 8, y: 9 })];
  expect(all[0]).toMatchObject({ id: "r1c1", at: { x: -12, y: 9 } });
  expect(all.at(-1)).toMatchObject({ id: "r3c4", at: { x: 12, y: -9 } });
});

test("each row of the plan repeats by its own length", () => {
  expect(cellAt(PLAN, 0, 3)).toBe("star");
  expect(cellAt(PLAN, 3, 2)).toBe("plain");
});

test("a plan wider than the quilt counts only what lies in it", () => {
  expect(countKinds(PLAN, 1, 2)).toEqual({ star: 1, plain: 1 });
});
