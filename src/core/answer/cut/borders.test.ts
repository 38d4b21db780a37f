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

test("long cuts and backing are planned as long as the list says they are cut: up to the step", () => {
  const brief = smallBrief({
    fabrics: [plain("red"), plain("edge"), plain("back")],
    blocks: [
      {
        kind: "wedges",
        id: "star",
        setting: "plain",
        strip: "4 33/64",
        fabric: { wedge: "red", corner: "edge" },
      },
    ],
    ruler: { point: { blunt: "1/5" } },
    quilt: {
      rows: 5,
      columns: 5,
      plan: [["star"]],
      borders: [{ width: "2", fabric: "edge", cut: "along" }],
    },
    finishing: { backing: { fabric: "back", overhang: "4" } },
  });
  const answer = answerBrief(brief);
  const eighths = (x: number): number => x * 8;
  const exact = answer.finishing?.backing?.panelLength ?? 0;
  expect(Number.isInteger(eighths(exact))).toBe(false);
  const backing = answer.demands.find((d) => d.id === "backing");
  const long = answer.demands.filter((d) => d.shape.kind === "along");
  expect(long.length).toBe(2);
  for (const cut of [...long.map((d) => d.shape.first), backing?.shape.height ?? 0])
    expect(eighths(cut)).toBeCloseTo(Math.round(eighths(cut)), 9);
  expect(backing?.shape.height).toBeGreaterThan(exact);
});

test("what is cut exactly is not counted among what has room to spare", () => {
  const line = (kite: string): string | undefined =>
    answerBrief(
      smallBrief({
        ruler: { point: { blunt: "1/4" } },
        blocks: [
          {
            kind: "wedges",
            id: "star",
            setting: "kites",
            strip: "2 3/4",
            fabric: { wedge: "red", kite: "sand" },
            cut: { kite: { size: kite } },
          },
        ],
      }),
    ).questions.find((q) => q.id === "cover")?.line;
  expect(line("4 1/2")).toMatch(
    /^Every piece; kite [A-Z]\d is cut exactly\. Of the others the least/,
  );
});
