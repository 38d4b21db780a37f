import { describe, expect, test } from "vitest";
import tidepool from "../../../examples/tidepool-runner.json";
import { answerBrief } from "../answer/index.ts";
import { readDocument } from "../brief/index.ts";
import { layoutPicture } from "./layout.ts";
import type { Mark } from "./marks.ts";

const read = readDocument(tidepool);
if (!read.ok) throw new Error("the sample is refused");
const answer = answerBrief(read.brief);
const [layout] = answer.layouts;

type Text = Extract<Mark, { kind: "text" }>;

/** Every letter of the drawing with where it truly stands. */
function letters(small: number): { x: number; y: number; text: string }[] {
  const { demands, pieces, recipes, unit } = answer;
  const { marks } = layoutPicture(layout, { unit, demands, pieces, recipes, small });
  return marks.flatMap((m) =>
    m.kind === "group"
      ? m.marks
          .filter((x): x is Text => x.kind === "text")
          .map((x) => ({ x: m.at.x + x.at.x, y: m.at.y + x.at.y, text: x.text }))
      : [],
  );
}

describe("letters on a cutting layout", () => {
  const copies = layout.strips.flatMap((s) => s.runs.map((r) => s.times * r.copies));

  test("stand on every copy where there is room", () => {
    expect(letters(0.4)).toHaveLength(copies.reduce((a, b) => a + b, 0));
  });

  test("never touch one another, and every run keeps some", () => {
    for (const small of [1.2, 2, 3]) {
      const all = letters(small);
      if (small < 3) expect(all.length).toBeGreaterThanOrEqual(copies.length);
      for (const [i, a] of all.entries())
        for (const b of all.slice(i + 1)) {
          const apart = Math.abs(a.x - b.x) >= small || Math.abs(a.y - b.y) >= 0.8 * small;
          expect([a, b, apart]).toEqual([a, b, true]);
        }
    }
  });
});
