import { describe, expect, test } from "vitest";
import type { Role } from "../block/index.ts";
import { type Brief, smallBrief } from "../brief/sample.ts";
import { answerBrief } from "./index.ts";

/**
 * On-point quilts through the whole answer: blocks, setting, pieces, recipes. `over` is what a chart
 * prints less what geometry needs, at a 1/4 in seam.
 */
const MOONLIGHT = "Moonlight Quilters guild, on-point settings tip";
const CHARTS =
  "lukas.is-a-geek.org, triangle chart for on-point layouts (5 to 16 in); C. Watson, quilt maths page";

const onPoint = (side: string, rows: number, columns: number): Brief =>
  smallBrief({
    blocks: [{ kind: "unit", id: "tile", unit: "square", width: side, fabric: { patch: "red" } }],
    quilt: { arrangement: "on-point", rows, columns, plan: [["tile"]], setting: "sand" },
  });

function cutOf(brief: Brief, role: Role) {
  const answer = answerBrief(brief);
  const piece = answer.pieces.find((p) => p.roles.includes(role))!;
  return { answer, piece, recipe: answer.recipes.find((r) => r.pieceId === piece.id)! };
}

/** Block, diagonal, side square, print; corner square, print. */
const ROWS = [
  ["6", 8.4853, 9.6924, 9.75, 5.0962, 5.125],
  ["8", 11.3137, 12.5208, 12.625, 6.5104, 6.625],
  ["9", 12.7279, 13.935, 14, 7.2175, 7.25],
  ["10", 14.1421, 15.3492, 15.5, 7.9246, 8],
  ["12", 16.9706, 18.1777, 18.25, 9.3388, 9.375],
  ["14", 19.799, 21.0061, 21.125, 10.753, 10.875],
  ["16", 22.6274, 23.8345, 23.875, 12.1673, 12.25],
] as const;

/** The charts take the root of 2 as 1.414 and round up to the next eighth. */
const PRINTED_ROOT = 1414 / 1000;
const upToEighth = (x: number): number => Math.ceil(x * 8) / 8;

describe.each(ROWS)(
  "block %s on point (%#)",
  (side, diagonal, sideExact, sidePrint, cornerExact, cornerPrint) => {
    const brief = onPoint(side, 4, 3);

    test(`diagonal ${diagonal}: four lines high, three wide`, () => {
      const { quilt } = answerBrief(brief);
      expect(quilt!.width / 3).toBeCloseTo(diagonal, 4);
      expect(quilt!.height / 4).toBeCloseTo(diagonal, 4);
    });

    test(`side triangles: square cut twice, ${sideExact} exact; print ${sidePrint} (${CHARTS}): over`, () => {
      const { recipe, piece } = cutOf(brief, "setting-triangle");
      expect(recipe).toMatchObject({ kind: "square-twice", yields: 4, verdict: "proved" });
      expect(recipe.exactSize).toBeCloseTo(sideExact, 4);
      expect(upToEighth(PRINTED_ROOT * Number(side) + 1.25)).toBe(sidePrint);
      expect(sidePrint - recipe.exactSize!).toBeGreaterThan(0.04);
      expect(sidePrint).toBeGreaterThanOrEqual(recipe.size!);
      // Long side outside and on the straight grain.
      const long = piece.edges.reduce((p, q) => (q.finished > p.finished ? q : p));
      expect(long.outside).toBe(true);
      expect(long.grainWord).toBe("straight");
    });

    test(`corner triangles: square cut once, ${cornerExact} exact; print ${cornerPrint} (${CHARTS}): over`, () => {
      const { recipe, piece } = cutOf(brief, "corner-triangle");
      expect(recipe).toMatchObject({ kind: "square-once", yields: 2, verdict: "proved" });
      expect(recipe.exactSize).toBeCloseTo(cornerExact, 4);
      expect(upToEighth(Number(side) / PRINTED_ROOT + 0.875)).toBe(cornerPrint);
      expect(cornerPrint - recipe.exactSize!).toBeGreaterThan(0.02);
      expect(piece.edges.filter((e) => e.outside).map((e) => e.grainWord)).toEqual([
        "straight",
        "straight",
      ]);
    });
  },
);

describe("how much print is over or under", () => {
  test(`6 in by 1.41 (${MOONLIGHT}): 9 3/4 and 5 1/8, over by 0.0576 and 0.0288`, () => {
    const side = cutOf(onPoint("6", 2, 2), "setting-triangle").recipe;
    const corner = cutOf(onPoint("6", 2, 2), "corner-triangle").recipe;
    expect(9.75 - side.exactSize!).toBeCloseTo(0.0576, 4);
    expect(5.125 - corner.exactSize!).toBeCloseTo(0.0288, 4);
  });

  test("16 in: by the root in full the rule would say 24 in; by 1.414 it is the 23 7/8 in print, 0.0405 over", () => {
    const { recipe } = cutOf(onPoint("16", 2, 2), "setting-triangle");
    expect(upToEighth(Math.SQRT2 * 16 + 1.25)).toBe(24);
    expect(23.875 - recipe.exactSize!).toBeCloseTo(0.0405, 4);
  });

  test("10 in side triangles printed as 5 1/2 (an on-point chart seen with misprints): 9.8492 under", () => {
    const { recipe } = cutOf(onPoint("10", 2, 2), "setting-triangle");
    expect(5.5 - recipe.exactSize!).toBeCloseTo(-9.8492, 4);
  });
});

describe("number of setting triangles (by geometry)", () => {
  test.each([
    [1, 1],
    [1, 5],
    [3, 1],
    [2, 7],
    [6, 4],
  ])("%s rows and %s columns: 2 (r + c - 2) at the sides, 4 at the corners", (r, c) => {
    const { answer, piece } = cutOf(onPoint("6", r, c), "corner-triangle");
    expect(piece.count).toBe(4);
    const sides = answer.pieces.find((p) => p.roles.includes("setting-triangle"));
    expect(sides?.count ?? 0).toBe(2 * (r + c - 2));
    expect(answer.blocks[0].count).toBe(r * c + (r - 1) * (c - 1));
  });
});
