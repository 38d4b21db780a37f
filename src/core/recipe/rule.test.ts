import { describe, expect, it } from "vitest";
import { evaluateRule } from "./index.ts";

const WORDS = { strip: 4.5, across: 7.2, leg: 2.1, finished: 2.1, seam: 0.25 };
const inches = (rule: string) => evaluateRule(rule, WORDS, "in");

describe("evaluateRule", () => {
  it.each([
    ["strip-1/2", 4],
    ["strip - 1/2 in", 4],
    ["STRIP+1/4", 4.75],
    ["2*strip-1", 8],
    ["2 x strip", 9],
    ["across/2+1/2", 4.1],
    ["leg + 7/8", 2.975],
    ["leg+1 1/4", 3.35],
    ["leg + 3.5*seam", 2.975],
    ["5", 5],
    ["1 1/4 + strip", 5.75],
    ["12.7 mm + strip", 5],
    ["strip/3", 1.5],
  ])("%s is %s", (rule, size) => {
    expect(inches(rule)).toBeCloseTo(size, 12);
  });

  it("converts a named unit, and takes the document's when none is named", () => {
    expect(evaluateRule("strip - 1/2 in", { strip: 114.3 }, "mm")).toBeCloseTo(101.6, 9);
    expect(evaluateRule("strip - 13", { strip: 114.3 }, "mm")).toBeCloseTo(101.3, 9);
  });

  it.each(["", "strip less a bit", "strip-", "-strip", "strip strip", "long+1", "strip-9", "1/0"])(
    "does not understand %j, or it comes to nothing",
    (rule) => {
      expect(inches(rule)).toBeUndefined();
    },
  );

  it("knows no words but those of a rule", () => {
    expect(inches("constructor")).toBeUndefined();
    expect(inches("toString+1")).toBeUndefined();
  });
});
