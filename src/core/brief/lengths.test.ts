import { expect, test } from "vitest";
import { usableWidth } from "./lengths.ts";
import { smallBrief } from "./sample.ts";
import type { Brief } from "./schema.ts";

const plain = (id: string, usable: string, more: object = {}) => ({
  kind: "plain",
  id,
  name: id,
  usable,
  color: "#A33B2E",
  ...more,
});
const set = (...fabrics: string[]) => ({
  kind: "strip-set",
  id: "set",
  name: "Set",
  usable: "42",
  color: "#A33B2E",
  strips: fabrics.map((fabric) => ({ fabric, cut: "2" })),
});
const widths = (narrower: boolean, ...fabrics: object[]): number[] => {
  const brief: Brief = smallBrief({
    fabrics: [plain("red", "40"), plain("sand", "40"), ...fabrics],
  });
  return brief.fabrics.slice(2).map((f) => usableWidth(brief, f, narrower));
};

test("42 in that lose 5 per cent in the wash are 39.9 in when they are cut", () => {
  const washed = plain("reed", "42", { shrinkage: { length: 3, width: 5 } });
  expect(widths(false, washed)[0]).toBeCloseTo(39.9, 12);
});

test("the next narrower width where there is one and it is asked for", () => {
  expect(widths(true, plain("a", "42", { narrower: "40" }), plain("b", "41"))).toEqual([40, 41]);
});

test("a set is as long as the narrowest of its fabrics is when it is cut", () => {
  const washed = plain("reed", "42", { shrinkage: { length: 0, width: 10 } });
  const [, , sewn] = widths(false, washed, plain("foam", "38 1/2"), set("reed", "foam"));
  expect(sewn).toBeCloseTo(37.8, 12);
});

test("a set that feeds itself is measured by its other fabrics", () => {
  expect(widths(false, plain("foam", "38 1/2"), set("foam", "set"))[1]).toBe(38.5);
});
