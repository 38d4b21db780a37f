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

const sashed = (side: string, width: string, rows: number, columns: number, stone?: string) => {
  const brief = onPoint(side, rows, columns);
  const sashing = { width, fabric: "red", ...(stone && { cornerstone: stone }) };
  return { ...brief, quilt: { ...brief.quilt, sashing } };
};

describe("sashing on point: a sash along every side of every block", () => {
  test.each([
    ["9", "1 1/2", 14, 7.25],
    ["12", "2", 18.25, 9.375],
  ])(
    "block %s, sash %s: setting triangles are those of the charts, halves and quarters of the block",
    (side, width, sidePrint, cornerPrint) => {
      const brief = sashed(side, width, 3, 4);
      for (const [role, print] of [
        ["setting-triangle", sidePrint],
        ["corner-triangle", cornerPrint],
      ] as const) {
        const { recipe } = cutOf(brief, role);
        expect(print - recipe.exactSize!).toBeGreaterThan(0.02);
        expect(recipe.size).toBeLessThanOrEqual(print);
        expect(recipe.verdict).toBe("proved");
      }
    },
  );

  test("a line of blocks is as long as block and sash together are from corner to corner; print says 1.414 (9 + 1 1/2) + 1 1/4 for the square that is cut on that line: 0.0687 over", () => {
    const { quilt } = answerBrief(sashed("9", "1 1/2", 3, 4));
    const cell = 10.5 * Math.SQRT2;
    expect([quilt!.width, quilt!.height]).toEqual([
      expect.closeTo(4 * cell, 9),
      expect.closeTo(3 * cell, 9),
    ]);
    expect(upToEighth(PRINTED_ROOT * 10.5 + 1.25) - (cell + 0.5 * (1 + Math.SQRT2))).toBeCloseTo(
      0.0687,
      4,
    );
  });

  test.each([
    [1, 1],
    [1, 4],
    [3, 2],
    [4, 4],
  ])("%s by %s: pieces counted on a drawing square by square", (r, c) => {
    // Steps of half a block and sash from the lower left corner: u down to the right, v up to it.
    let [sashes, stones, halves] = [0, 0, 0];
    const inside = (u: number, v: number) => Math.min(u + v, 4 * c - u - v, v - u, 4 * r + u - v);
    for (let u = -4 * (r + c); u <= 4 * (r + c); u++)
      for (let v = -4 * (r + c); v <= 4 * (r + c); v++) {
        // Where both are odd rows of sashes cross; where one is, a sash lies.
        const depth = inside(u, v);
        const odd = [u, v].filter((x) => Math.abs(x) % 2 === 1).length;
        if (odd === 2 && depth > 0) stones++;
        if (odd === 2 && depth === 0) halves++;
        if (odd === 1 && depth > 0) sashes++;
      }
    const answer = answerBrief(sashed("6", "1", r, c, "sand"));
    const count = (id: string) =>
      answer.quilt!.extras.find((e) => e.id === `sash/${id}`)?.count ?? 0;
    expect([count("between"), count("cornerstone"), count("cornerstone-half")]).toEqual([
      sashes,
      stones,
      halves,
    ]);
  });

  test("half cornerstones: a square cut twice, so that no bias lies on the edge", () => {
    const answer = answerBrief(sashed("9", "1 1/2", 3, 3, "sand"));
    const half = answer.pieces.find((p) => p.patchIds.includes("sash/cornerstone-half"))!;
    const recipe = answer.recipes.find((x) => x.pieceId === half.id)!;
    expect(recipe).toMatchObject({ kind: "square-twice", verdict: "proved" });
    expect(recipe.exactSize).toBeCloseTo(1.5 * Math.SQRT2 + 0.5 * (1 + Math.SQRT2), 9);
    expect(half.edges.filter((e) => e.outside).map((e) => e.grainWord)).toEqual(["straight"]);
  });

  test("without cornerstones: one long sash between rows, a plain strip long enough for its slanted ends, joined where the fabric is too narrow", () => {
    const answer = answerBrief(sashed("9", "1 1/2", 3, 4));
    const long = answer.pieces.filter((p) => p.patchIds.some((id) => id.startsWith("sash/row-")));
    expect(long.map((p) => p.count).reduce((a, b) => a + b)).toBe(7);
    for (const p of long) {
      const recipe = answer.recipes.find((x) => x.pieceId === p.id)!;
      expect(recipe).toMatchObject({ kind: "rectangle", verdict: "proved" });
      expect(p.hand).toBe("none");
      expect(answer.demands.find((d) => d.pieceIds.includes(p.id))?.joinsAllowed).toBe(true);
    }
    expect(answer.findings.filter((f) => f.severity !== "advice")).toEqual([]);
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
