import { expect, test } from "vitest";
import { askBow, askOneHand, unbend } from "../../core/answer/index.ts";
import { design } from "./designs.testing.ts";

test("20. the strip set bows like a banana: what to cut, and how far a ring strays", () => {
  // Worked by hand from h (x / L) squared: 1/2 over 40 bows 1/32 over 10, so four pieces; within a
  // wedge 3.728 wide 0.0043; squaring takes 8 x 1/2 x 4 1/2 / 40 = 0.45.
  const u = unbend({ length: 40, width: 4.5, bow: 0.5, base: 3.728 }, "in");
  expect([u.pieces, u.piece]).toEqual([4, 10]);
  expect(u.withinWedge).toBeCloseTo(0.0043, 4);
  expect(u.lost).toBeCloseTo(0.45, 9);
  // By another way: the circle through both ends and the middle, its sagitta over one wedge.
  const radius = (40 ** 2 / 4 + 0.5 ** 2) / (2 * 0.5);
  expect(u.withinWedge).toBeCloseTo(radius - Math.sqrt(radius ** 2 - (3.728 / 2) ** 2), 4);
  const { brief, answer } = design("reef-window");
  const said = askBow(brief, answer, "1/2", "40");
  expect(said[0]).toContain("Cut it across into 4 pieces, each no longer than 10 in");
  expect(said[2]).toContain("sew every other seam from the other end");
  expect(askBow(brief, answer, "1/64", "40")[0]).toContain("cut it as it is");
  expect(askBow(brief, answer, "20", "40")[0]).toContain("not the length of a set");
});

test("21. all backgrounds cut the same hand: how many can be saved", () => {
  const { brief, answer } = design("quiet-field");
  // 48 of one hand, 4 to a block: 12 blocks once 48 of the other hand are cut.
  const said = askOneHand(brief, answer, "C1", "48").join(" ");
  expect(said).toContain("48 of 48 can be saved, but make no block alone");
  expect(said).toContain("Cut 48 C2, the other hand, and they make 12 blocks.");
  expect(said).toContain("slice them at their other sharp corner");
  // Half of 12 in and 1/4 (2 + sqrt 2): 6.854, up to 6 7/8.
  expect(said).toContain("sew 12 blocks that turn");
  expect(said).toContain("4 half-squares from squares of 6 7/8 in");
  // More than the quilt's 30 blocks take: 120 of a hand.
  expect(askOneHand(brief, answer, "C1", "130")[0]).toContain("10 are more than the quilt takes");

  // Alike on both faces: every one is saved, half of them turned over; 48 of 8 to a block are 6 blocks.
  const either = design("quiet-field", (d) => {
    for (const f of d.fabrics) if (f.id === "sky") f.reversible = true;
  });
  const both = askOneHand(either.brief, either.answer, "C1", "48").join(" ");
  expect(both).toContain("All 48 can be saved");
  expect(both).toContain("they make 6 blocks");
  expect(askOneHand(brief, answer, "A1", "48")[0]).toContain("those are");
});

test("21. the block that turns is a block of the program's own: one hand only, every piece proved", () => {
  const { answer } = design("quiet-field", (d) => {
    const [block] = d.blocks;
    Object.assign(block, { setting: "sectors", turned: "corner", whole: [1, 3, 5, 7] });
    delete block.cut;
    block.fabric = { wedge: "clover", background: "sky", kite: "rye", corner: "rye" };
  });
  expect(answer.findings.filter((f) => f.severity !== "advice")).toEqual([]);
  const [block] = answer.blocks;
  expect(block.width).toBeCloseTo(12, 9);
  const kinds = answer.pieces.map((p) => [p.hand, p.perBlock[block.id]]);
  // Four wedges, four backgrounds of one hand, four whole sectors; a half-square is its own mirror image.
  expect(kinds.map(([, n]) => n)).toEqual([4, 4, 4]);
  expect(kinds.filter(([hand]) => hand !== "none")).toHaveLength(1);
  expect(answer.recipes.every((r) => r.verdict === "proved")).toBe(true);
});
