import { expect, test } from "vitest";
import { runsOf } from "./fraction.ts";

const box = (whole: string, above: string, below: string) => ({
  kind: "fraction" as const,
  whole,
  above,
  below,
});
const text = (t: string) => ({ kind: "text" as const, text: t });

test("a mixed number is one box, wherever it stands", () => {
  expect(runsOf("cut 24 squares 4 1/2 in; slice")).toEqual([
    text("cut 24 squares "),
    box("4", "1", "2"),
    text(" in; slice"),
  ]);
  expect(runsOf("19 x 51 1/4")).toEqual([text("19 x "), box("51", "1", "4")]);
  expect(runsOf("3/8 yd")).toEqual([box("", "3", "8"), text(" yd")]);
});

test("what is no fraction stays as it is", () => {
  for (const plain of ["4.5/2", "2026/11/25", "and/or", "8 in", ""])
    expect(runsOf(plain)).toEqual(plain === "" ? [] : [text(plain)]);
});
