import { describe, expect, test } from "vitest";
import { smallBrief } from "../../brief/sample.ts";
import { answerBrief, topSteps } from "../index.ts";
import { shortened } from "./row-items.ts";

const said = (change: Parameters<typeof smallBrief>[0]) => {
  const brief = smallBrief(change);
  return topSteps(brief, answerBrief(brief));
};

test.each([
  [["a", "a", "a"], "3 a"],
  [["b", "a", "a", "b"], "b, 2 a, b"],
  [["t", "s", "x", "s", "x", "s", "t"], "t, 2 times s and x, s, t"],
  [["a", "b", "c", "a", "b", "c"], "2 times a, b and c"],
  [["a"], "a"],
])("what a row holds, shortened: %s", (names, words) => {
  expect(shortened(names)).toBe(words);
});

describe("the top row by row", () => {
  test("a single block has no rows", () => {
    expect(said({ quilt: { rows: 1, columns: 1, plan: [["star"]] } })).toBeUndefined();
  });

  test("turned and mirrored blocks are said so", () => {
    const turned = { block: "star", quarters: 1, mirrored: true };
    const made = said({ quilt: { rows: 1, columns: 2, plan: [["star", turned]] } });
    expect(made?.steps.map((s) => s.holds)).toEqual(["star, star mirrored turned a quarter"]);
  });

  test("on point with cornerstones: rows and rows of sashes in turn, corners last", () => {
    const sashing = { width: "1", fabric: "red", cornerstone: "sand" };
    const made = said({
      quilt: {
        arrangement: "on-point",
        rows: 2,
        columns: 2,
        plan: [["star"]],
        setting: "sand",
        sashing,
      },
    });
    expect(made?.steps.map((s) => s.name)).toEqual([
      "Sash rows 1 and 4",
      "Rows 1 and 3",
      "Sash rows 2 and 3",
      "Row 2",
      "Two corners",
    ]);
    expect(made?.steps.at(-1)?.press).toBe("");
    expect(made?.lines.at(-1)).toMatch(/nest\.$/);
  });

  test("hexagons, which the quilt holds in halves only: rows pressed opposite ways, and all nest", () => {
    const made = said({
      blocks: [
        {
          kind: "wedges",
          id: "star",
          n: 6,
          outline: "hexagon",
          setting: "sectors",
          turned: "flat",
          side: "9",
          strip: "4 1/2",
          fabric: { wedge: "red", background: "sand" },
        },
      ],
      quilt: { arrangement: "hexagon-rows", rows: 2, columns: 3, plan: [["star"]] },
    });
    expect(made?.steps.map((s) => s.press)).toEqual(["press to the right", "press to the left"]);
    expect(made?.lines.at(-1)).toMatch(/^Wherever seams meet/);
  });
});
