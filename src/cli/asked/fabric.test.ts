import { expect, test } from "vitest";
import { answerBrief } from "../../core/answer/index.ts";
import { rulerOf, wedgesInStrip } from "../../core/recipe/index.ts";
import { planKits, readShelf, sayPlan, sayWay } from "../../core/shop/index.ts";
import { design } from "./designs.testing.ts";

test("2. my fabric is only 40 wide, the pattern says 42: which pieces lose one, and does the margin hold", () => {
  // Worked by hand: floor(L / (W tan 22.5)) - 1 wedges of a strip, point sharp.
  const ruler = rulerOf({ point: "sharp" }, 8, "in");
  for (const [strip, wide, narrow] of [
    [3, 32, 31],
    [4.5, 21, 20],
    [6, 15, 15],
    [8, 11, 11],
  ])
    expect(
      [42, 40].map((l) => wedgesInStrip(ruler, strip, { usable: l, folds: 0, unit: "in" }).count),
    ).toEqual([wide, narrow]);
  // The answer says it for each fabric, and what to buy at both.
  const { answer } = design("quiet-field", (d) => {
    for (const f of d.fabrics) Object.assign(f, { usable: "42", narrower: "40" });
  });
  const clover = answer.cutting.find((c) => c.fabricId === "clover")!;
  expect(clover.narrower?.width).toBe(40);
  expect(clover.narrower?.demands.map((d) => [d.atWide, d.atNarrow])).toEqual([[21, 20]]);
  // 120 wedges: six strips of 21, six of 20. No strip more, so no fabric more.
  expect(clover.narrower?.more).toBeCloseTo(0, 9);
  const [at42, at40] = answer.yardages.filter((y) => y.fabricId === "clover");
  expect([at42.width, at40.width, at42.buyText]).toEqual([42, 40, at40.buyText]);
});

test("5. one bolt is short by a third of a yard: can I still cut 12 kits?", () => {
  const { brief } = design("tidepool-runner", (d) => Object.assign(d, { shop: { kits: 12 } }));
  const answer = answerBrief(brief);
  // Twelve cuts of 18 in and one end of 1 in are 217; the bolt has 12 in (1/3 yd) less.
  const list = "fabric,length\nKelp,8 yd\nShell,433\nCurrent,14 yd\nBasalt,205\nSlate,1 yd\n";
  const { shelf } = readShelf(list, "in");
  const plan = planKits(brief, answer, shelf);
  expect(sayPlan(plan, brief)).toEqual([
    "12 kits are wanted, 11 can be cut.",
    "Basalt: 12 in more on one bolt gives 12 kits.",
  ]);
  // The smallest change first: 15 in each for what its pieces take, (205 - 1) / 15 = 13.6.
  const said = plan.ways.map((w) => sayWay(w, plan, shelf));
  expect(said[0]).toMatch(/^Cut to the length its pieces take and the margin.*: 13 kits$/);
  // A yard of another bolt gives the one kit that is missing.
  expect(said).toContain("Slate for the kits that Basalt does not reach: 12 kits");
});
