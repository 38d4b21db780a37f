import { expect, test } from "vitest";
import { sayWay } from "../../core/answer/cut/wedge-guide.ts";
import { askHole, centerHole, circlesOf, rulersApart } from "../../core/answer/index.ts";
import { stepOf } from "../../core/measure/index.ts";
import { halfAcross, rulerOf } from "../../core/recipe/index.ts";
import { design } from "./designs.testing.ts";

const T = Math.tan(Math.PI / 8);

test("10. two rulers, the same number, other blocks: both are right, 0.807 in apart at every strip", () => {
  // Worked by hand: sharp 2 (W - 1/4 - 1/4 / sin 22.5), blunt 1/4 past the center 2 (W - 1/2).
  for (const [strip, sharp, blunt] of [
    [3, 4.193, 5],
    [3.5, 5.193, 6],
    [4.5, 7.193, 8],
    [6, 10.193, 11],
    [8, 14.193, 15],
    [10, 18.193, 19],
  ])
    for (const [point, across] of [
      ["sharp", sharp],
      [{ blunt: "1/4" }, blunt],
    ] as const)
      expect(2 * halfAcross(rulerOf({ point }, 8, "in"), strip, 0.25)).toBeCloseTo(across, 3);
  const { brief, answer } = design("quiet-field");
  const [said] = rulersApart(brief, circlesOf(brief, answer)[0]);
  expect(said).toBe(
    "By a ruler with a point cut blunt the same 4 1/2 in strip finishes 8 in across flats, not 7.193 in: 0.807 in apart. Both are right; for your block it takes 4.097 in strips.",
  );
});

test("12. no wedge ruler at all: by two marks up W and 0.4142 W to each side, or a square folded twice", () => {
  const { brief, answer } = design("quiet-field");
  const [{ ways }] = answer.wedges;
  const marks = ways.find((w) => w.kind === "two-marks")!;
  expect(marks.lengths.base / 2).toBeCloseTo(4.5 * T, 9);
  expect(marks.lengths.height).toBe(4.5);
  const folded = ways.find((w) => w.kind === "folded-square")!;
  // Twice folded through one corner, a square's 90 degrees are 22.5 to each side of the wedge's middle.
  expect(folded.lengths.folds).toBe(2);
  for (const w of [marks, folded]) expect(w.proof.verdict).toBe("proved");
  const step = stepOf(brief.step, brief.unit);
  expect(sayWay(marks, step).how).toMatch(
    /^By two marks, with any straight ruler: mark 3 3\/4 in .*along the strip's lower edge/,
  );
});

test("13. a hole in the middle, so that eight points need not meet", () => {
  const { brief, answer } = design("lantern-throw");
  const [circle] = circlesOf(brief, answer);
  const h = centerHole(circle, 2)!;
  // Worked by hand: a = 6 - 1/4 - 1/4 / sin 22.5 = 5.0967; strip a - 1 + 1/2; narrow edge
  // 2 (1 - 1/4) tan 22.5 + 1/2 / cos 22.5; ruler's line there 1 - 1/4 + 1/4 / sin 22.5.
  expect(h.strip).toBeCloseTo(4.5967, 4);
  expect(h.narrow).toBeCloseTo(0.6213 + 0.5412, 4);
  expect(h.narrowLine).toBeCloseTo(0.75 + 0.6533, 4);
  expect([h.patch, h.corner, h.round].map((x) => x?.toFixed(4))).toEqual([
    "2.5000",
    "0.7322",
    "2.1648",
  ]);
  expect(h.proof).toMatchObject({ verdict: "proved" });
  expect(h.proof.w).toBeCloseTo(0.25, 9);
  // By another way: the raw legs lie 1/4 outside lines through the circle's center at 22.5 degrees.
  const slope = (h.wide - h.narrow) / 2 / h.strip;
  expect(slope).toBeCloseTo(T, 9);
  const centerBelow = 5.0967 + 0.25;
  const legAtCenter = h.wide / 2 - centerBelow * slope;
  expect(legAtCenter * Math.cos(Math.PI / 8)).toBeCloseTo(0.25, 4);
  const said = askHole(brief, answer, "2").join(" ");
  expect(said).toContain("Cut the wedges from 4.597 in strips, not wider and not narrower");
  // The strip on the ruler's line, and the hole it leaves: 2 (5.0967 + 1/2 - 4 1/2).
  expect(said).toContain("4 1/2 in strips leave 2.193 in");
  expect(askHole(brief, answer, "11")[0]).toMatch(/less than 9.693 in across/);
  expect(askHole(brief, answer, "much")[0]).toContain("not a length");
});
