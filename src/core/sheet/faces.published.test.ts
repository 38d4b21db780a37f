import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { expect, test } from "vitest";
import { type Face, fractionWidth, printable, UNKNOWN_CHARACTER, widthOf } from "./faces.ts";

// Second method: the font files themselves (Alegreya Sans and Young Serif, SIL Open Font License),
// laid out by fontkit, against the plain table the core carries.

const require = createRequire(import.meta.url);
const fontkit = require("fontkit");
const open = (path: string) => fontkit.create(readFileSync(require.resolve(path)));
const FILES: Readonly<Record<Face, string>> = {
  sans: "@fontsource/alegreya-sans/files/alegreya-sans-latin-400-normal.woff",
  bold: "@fontsource/alegreya-sans/files/alegreya-sans-latin-700-normal.woff",
  italic: "@fontsource/alegreya-sans/files/alegreya-sans-latin-400-italic.woff",
  serif: "@fontsource/young-serif/files/young-serif-latin-400-normal.woff",
};
const FACES = Object.keys(FILES) as Face[];
const WORDS = [
  "Tidepool runner",
  "AVATAR To Ty W.A. ffi fl",
  "19 × 51 in, 0123456789.",
  "Should measure",
  "the maker's \u201cown\u201d – half",
];
/** Kerning is kept for unaccented letters only, so that the table stays small. */
const ACCENTED = "café, Straße, Łódź";

test.each(FACES)("%s: widths with kerning agree with the font", (face) => {
  const font = open(FILES[face]);
  for (const text of WORDS) {
    const real =
      font.layout(text, { lnum: true, tnum: true, liga: false }).advanceWidth / font.unitsPerEm;
    expect(widthOf(text, face, 1)).toBeCloseTo(real, 9);
  }
  const latin = ACCENTED.replace(", Łódź", "");
  const real =
    font.layout(latin, { lnum: true, tnum: true, liga: false }).advanceWidth / font.unitsPerEm;
  expect(Math.abs(widthOf(latin, face, 1) / real - 1)).toBeLessThan(0.015);
});

test.each(FACES)("%s: every fraction a ruler has is as wide as the font sets it", (face) => {
  const font = open(FILES[face]);
  for (const below of [2, 4, 8, 16, 32, 64])
    for (let above = 1; above < below; above += 2) {
      const text = `${above}\u2044${below}`;
      const real =
        font.layout(text, { lnum: true, frac: true, liga: false }).advanceWidth / font.unitsPerEm;
      expect(fractionWidth(String(above), String(below), face, 1)).toBeCloseTo(real, 9);
    }
});

test("a letter of the second file is kept, one that no file has is marked, a line break is a space", () => {
  expect(printable("Łódź\n☂", "sans")).toBe(`Łódź ${UNKNOWN_CHARACTER}`);
});
