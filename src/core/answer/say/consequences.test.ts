import { describe, expect, it } from "vitest";
import type { Recipe } from "../../recipe/types.ts";
import type { Answer } from "../types/answer.ts";
import { consequences, spokenChange } from "./consequences.ts";
import { spoken } from "./spoken.ts";

interface Small {
  readonly side: number;
  readonly columns: number;
  readonly buy: Readonly<Record<string, readonly [number, string]>>;
  readonly kite?: Pick<Recipe, "verdict" | "w" | "reach">;
}

/** An answer with only what consequences are drawn from. */
function answer({ side, columns, buy, kite }: Small): Answer {
  const piece = { id: "p1", name: "kite", letter: "B" };
  return {
    unit: "in",
    blocks: [{ id: "star", name: "star", width: side, height: side, count: 2 * columns }],
    quilt: { width: side * columns, height: side * 2, counts: { star: 2 * columns } },
    yardages: Object.entries(buy).map(([fabricId, [length, buyText]]) => ({
      fabricId,
      buy: length,
      buyText,
    })),
    pieces: kite ? [piece] : [],
    sights: [],
    recipes: kite ? [{ pieceId: "p1", ...kite }] : [],
    findings:
      kite && kite.verdict !== "proved"
        ? [{ code: "thin-cover", severity: "draft", place: "p1" }]
        : [],
  } as unknown as Answer;
}

const now = answer({
  side: 8,
  columns: 3,
  buy: { tide: [36, "1 yd"], foam: [27, "3/4 yd"] },
  kite: { verdict: "blocked", w: -0.1, reach: -0.354 },
});
const sharp = answer({
  side: 7.19326,
  columns: 3,
  buy: { tide: [31.5, "7/8 yd"], foam: [27, "3/4 yd"] },
  kite: { verdict: "thin", w: 0.1659, reach: 0.1533 },
});

describe("consequences", () => {
  it("says what follows, in the order a maker asks", () => {
    expect(consequences(now, sharp).map((r) => [r.label, r.text, r.changed, r.doubt])).toEqual([
      ["block", "8 → 7.193 in", true, false],
      ["quilt", "21.580 × 14.387 in", true, false],
      ["tide", "1/8 yd less", true, false],
      ["foam", "3/4 yd, as now", false, false],
      ["kite", "thin, 0.166 in", true, true],
    ]);
  });

  it("says nothing changed when nothing does", () => {
    expect(consequences(now, now).some((r) => r.changed)).toBe(false);
    expect(consequences(now, now)[4]).toMatchObject({ text: "0.354 in short", doubt: true });
  });

  it("counts blocks when their number changes, and prints fractions on the ruler", () => {
    const wider = answer({
      side: 8,
      columns: 4,
      buy: { tide: [54, "1 1/2 yd"], foam: [27, "3/4 yd"] },
    });
    const rows = consequences(now, wider);
    expect(rows.find((r) => r.id === "blocks")?.text).toBe("6 → 8");
    expect(rows.find((r) => r.id === "buy/tide")?.text).toBe("1/2 yd more");
    expect(rows.find((r) => r.id === "cover/kite")).toMatchObject({
      would: "not cut",
      doubt: false,
    });
  });

  it("names blocks that no longer finish alike", () => {
    const two = {
      ...now,
      blocks: [
        ...now.blocks,
        { ...now.blocks[0], id: "ring", name: "ring", width: 9.5, height: 9.5 },
      ],
    };
    expect(
      consequences(now, two)
        .slice(0, 2)
        .map((r) => [r.label, r.text]),
    ).toEqual([
      ["star", "8 in, as now"],
      ["ring", "9 1/2 in, new"],
    ]);
  });
});

describe("what is spoken", () => {
  it("says what changed and nothing else, fractions in words", () => {
    expect(spokenChange(now, sharp, (id) => (id === "tide" ? "Tide" : id))).toBe(
      "Block 7.193 inches, was 8. Quilt 21.580 by 14.387 inches. Tide one eighth of a yard less. Kite thin, 0.166 inches, not proved. One number is not proved.",
    );
  });

  it.each([
    ["7 3/16 in", "7 and three sixteenths inches"],
    ["1/2 in", "one half an inch"],
    ["3/4 yd", "three quarters of a yard"],
    ["4 1/2 in squares", "4 and a half inch squares"],
    ["a 1/4 in seam", "a one quarter inch seam"],
    ["8 → 7.193 in", "8 to 7.193 inches"],
    ["1 in", "1 inch"],
    ["115.5 mm", "115.5 millimeters"],
    ["24 × 64 in", "24 by 64 inches"],
    ["eight to the round", "eight to the round"],
  ])("%s is said %s", (text, said) => {
    expect(spoken(text)).toBe(said);
  });
});
