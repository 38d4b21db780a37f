import fc from "fast-check";
import { expect, test } from "vitest";
import type { Glyphs } from "./model.ts";
import { type Style, setText, textWidth } from "./text.ts";

const SEED = 4417;
const STYLE: Style = { face: "sans", size: 9.5, lead: 11.4, color: "ink" };

const word = fc.constantFrom(
  "wedges",
  "cut",
  "strips",
  "to",
  "a",
  "background",
  "kite",
  "pieces",
  "in",
);
const number = fc.oneof(
  fc.constantFrom("4 1/2", "3/8", "17", "2.760", "12 11/16"),
  fc.constantFrom("19 × 51", "2 by 6", "64 1/2 × 24 1/2"),
);
/** As people write: a number counts or measures something. */
const counted = fc.tuple(number, word).map(([n, w]) => `${n} ${w}`);
const text = fc
  .array(fc.oneof({ weight: 3, arbitrary: word }, { weight: 1, arbitrary: counted }), {
    minLength: 1,
    maxLength: 30,
  })
  .map((parts) => parts.join(" "));

const linesOf = (glyphs: readonly Glyphs[]): Glyphs[][] => {
  const ys = [...new Set(glyphs.map((g) => g.y))].sort((a, b) => a - b);
  return ys.map((y) => glyphs.filter((g) => g.y === y).sort((a, b) => a.x - b.x));
};

/** What is read off the lines, with the spaces that are seen. */
const readBack = (glyphs: readonly Glyphs[]): string =>
  linesOf(glyphs)
    .map((line) => line.map((g) => g.text.trim()).join(" "))
    .join(" ")
    .replace(/\s+/g, " ")
    .replaceAll("\u2044", "/");

test(`no line is wider than its column, and nothing is lost (seed ${SEED})`, () => {
  fc.assert(
    fc.property(text, fc.double({ min: 125, max: 500, noNaN: true }), (t, width) => {
      const set = setText(t, STYLE, 20, 100, width);
      expect(readBack(set.glyphs)).toBe(t);
      for (const line of linesOf(set.glyphs)) {
        const last = line[line.length - 1];
        expect(last.x + last.width).toBeLessThanOrEqual(20 + width + 0.02);
      }
    }),
    { seed: SEED, numRuns: 300 },
  );
});

test(`a number stays with what follows it, a fraction with its whole number (seed ${SEED})`, () => {
  fc.assert(
    fc.property(text, fc.double({ min: 125, max: 300, noNaN: true }), (t, width) => {
      const set = setText(t, STYLE, 0, 0, width);
      for (const line of linesOf(set.glyphs)) {
        const words = line
          .map((g) => g.text)
          .join(" ")
          .trim();
        const isLast = line[0].y === Math.max(...set.glyphs.map((g) => g.y));
        // A line may end with a number only where the text does.
        if (!isLast) expect(words).not.toMatch(/(^|\s)[\d.]+(\u2044\d+)?$/);
        expect(words).not.toMatch(/^\d+\u2044\d+ by|^×|^by /);
      }
    }),
    { seed: SEED, numRuns: 300 },
  );
});

test("alignment moves whole lines", () => {
  const width = textWidth("4 1/2 in square", STYLE);
  const end = setText("4 1/2 in square", STYLE, 10, 0, 200, "end");
  expect(end.glyphs[0].x).toBeCloseTo(10 + 200 - width, 9);
  const middle = setText("4 1/2 in square", STYLE, 10, 0, 200, "middle");
  expect(middle.glyphs[0].x).toBeCloseTo(10 + (200 - width) / 2, 9);
});
