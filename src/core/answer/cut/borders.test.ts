import { describe, expect, test } from "vitest";
import { smallBrief } from "../../brief/sample.ts";
import { answerBrief } from "../index.ts";

const plain = (id: string) => ({ kind: "plain", id, name: id, usable: "40", color: "#A33B2E" });
const set = {
  kind: "strip-set",
  id: "set",
  name: "Set",
  usable: "40",
  strips: [
    { fabric: "red", cut: "2" },
    { fabric: "sand", cut: "2" },
  ],
};

/** A 42 x 48 in center of 6 in squares of red in one border of its own fabric. */
function bordered(border: object, fabric = "edge") {
  const answer = answerBrief(
    smallBrief({
      fabrics: [plain("red"), plain("sand"), plain("edge"), set],
      blocks: [{ kind: "unit", id: "tile", unit: "square", width: "6", fabric: { patch: "red" } }],
      quilt: {
        rows: 8,
        columns: 7,
        plan: [["tile"]],
        borders: [{ width: "2", fabric, ...border }],
      },
    }),
  );
  const demands = answer.demands.filter((d) => d.fabricId === fabric);
  const layout = answer.layouts.find((l) => l.fabricId === fabric)!;
  return { answer, demands, layout };
}

describe("borders longer than the fabric is wide", () => {
  // Two full widths for each pair and a part of a third; the two parts share a width where they fit:
  // 18 and 14 in do (butted, 48 1/2 and 46 1/2 in), 27 1/2 and 15 1/2 in do not (mitered).
  test.each([
    ["butted", 5],
    ["mitred", 6],
  ])("%s, across: joined from full widths, nothing blocks", (join, widths) => {
    const { answer, demands, layout } = bordered({ join });
    expect(answer.findings.filter((f) => f.severity === "blocks")).toEqual([]);
    expect(demands.map((d) => [d.shape.kind, d.joinsAllowed, d.turns])).toEqual([
      ["rect", true, "half"],
      ["rect", true, "half"],
    ]);
    expect(layout.strips.every((s) => s.height < 4)).toBe(true);
    expect(layout.length).toBeCloseTo(widths * 2.5, 9);
  });

  test.each([
    ["butted", 48.5],
    ["mitred", 52 + 1.25],
  ])("%s, along: whole, side by side, as long as the longest", (join, length) => {
    const { answer, demands, layout } = bordered({ join, cut: "along" });
    expect(answer.findings.filter((f) => f.severity === "blocks")).toEqual([]);
    expect(demands.every((d) => d.shape.kind === "along" && !d.joinsAllowed)).toBe(true);
    expect(layout.length).toBeCloseTo(length, 9);
  });

  test("of a strip set: joined sets, whichever way the brief says, and their strips in the yardage", () => {
    for (const cut of ["across", "along"]) {
      const { answer, layout } = bordered({ cut, width: "3" }, "set");
      // 3 in wide all four are 48 1/2 in long: 194 in from five sets.
      expect(layout.length).toBeCloseTo(5 * 3.5, 9);
      const sand = answer.layouts.find((l) => l.fabricId === "sand")!;
      expect(sand.length).toBeCloseTo(5 * 2, 9);
    }
  });
});
