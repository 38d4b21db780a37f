import { expect, test } from "vitest";
import { answerBrief } from "../answer/compose.ts";
import { smallBrief } from "../brief/sample.ts";
import { halfPicture } from "./half.ts";
import type { Mark } from "./marks.ts";

const answer = answerBrief(smallBrief({ quilt: { rows: 1, columns: 1, plan: [["star"]] } }));
const [block] = answer.blocks;
const half = answer.units.find((u) => u.straightEdge);

const flat = (marks: readonly Mark[]): Mark[] =>
  marks.flatMap((m) => (m.kind === "group" ? flat(m.marks) : [m]));

test("the half is drawn both ways: one light in the middle, one at each end, the straight edge touching", () => {
  if (!half) throw new Error("the sample has no half");
  const made = halfPicture(block, half, { unit: "in", seam: 0.25, small: 0.5 });
  const marks = flat(made.marks);
  const light = marks.filter((m) => m.kind === "shape" && m.fill?.kind === "color");
  expect(light).toHaveLength(3);
  const bars = marks.filter((m) => m.kind === "shape" && m.line === "lit");
  const halves = marks.filter((m) => m.kind === "shape" && m.line === "cut");
  expect([bars.length, halves.length]).toEqual([2, 2]);
  for (const [i, h] of halves.entries()) {
    const bar = bars[i];
    if (h.kind !== "shape" || bar.kind !== "shape") throw new Error("no shape");
    const lowest = Math.min(...h.polygon.map((p) => p.y));
    expect(Math.max(...bar.polygon.map((p) => p.y))).toBeCloseTo(lowest, 9);
    // It touches at its two ends, or in the middle alone.
    expect(h.polygon.filter((p) => p.y < lowest + 1e-9)).toHaveLength(i === 0 ? 2 : 1);
  }
});

test("a unit without a long raw edge through the center is refused", () => {
  const [pair] = answer.units.filter((u) => !u.straightEdge);
  expect(() => halfPicture(block, pair, { unit: "in", seam: 0.25, small: 0.5 })).toThrow(
    RangeError,
  );
});
