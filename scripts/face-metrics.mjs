// Writes src/core/sheet/face-metrics.json: the widths of the chosen faces as plain data, so that the
// core can break lines without reading a font. Run it again when a font package changes.
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";

const fontkit = createRequire(import.meta.url)("fontkit");

const FILES = {
  sans: "alegreya-sans/files/alegreya-sans-latin-400-normal.woff",
  bold: "alegreya-sans/files/alegreya-sans-latin-700-normal.woff",
  italic: "alegreya-sans/files/alegreya-sans-latin-400-italic.woff",
  serif: "young-serif/files/young-serif-latin-400-normal.woff",
};
/** The rest of the Latin letters, for names people type: another file, widths without kerning. */
const MORE = {
  sans: "alegreya-sans/files/alegreya-sans-latin-ext-400-normal.woff",
  bold: "alegreya-sans/files/alegreya-sans-latin-ext-700-normal.woff",
  italic: "alegreya-sans/files/alegreya-sans-latin-ext-400-italic.woff",
  serif: "young-serif/files/young-serif-latin-ext-400-normal.woff",
};
const PLAIN = { lnum: true, tnum: true, liga: false };
const FRACTION = { lnum: true, frac: true, liga: false };
const DIGITS = [..."0123456789"];

const open = (file) =>
  fontkit.create(readFileSync(new URL(`../node_modules/@fontsource/${file}`, import.meta.url)));
const widthOf = (font, text, features) => font.layout(text, features).advanceWidth;

/** Printable characters of the Latin file: ASCII, Latin-1, and the punctuation of prose. */
function charactersOf(font) {
  const wanted = (c) => (c >= 0x20 && c <= 0x7e) || (c >= 0xa0 && c <= 0xff) || PUNCTUATION.has(c);
  return font.characterSet.filter(wanted).map((c) => String.fromCodePoint(c));
}
const PUNCTUATION = new Set([
  0x131, 0x152, 0x153, 0x2013, 0x2014, 0x2018, 0x2019, 0x201c, 0x201d, 0x2022, 0x2026, 0x2032,
  0x2033, 0x20ac, 0x2122, 0x2212,
]);

function metrics(file, more) {
  const font = open(file);
  const characters = charactersOf(font);
  const advance = {};
  for (const c of characters) advance[c] = widthOf(font, c, PLAIN);
  const kern = {};
  const kerned = characters.filter(
    (c) => c <= "~" || PUNCTUATION.has(c.codePointAt(0)) || c === "\u00d7",
  );
  for (const a of kerned) {
    const pairs = {};
    for (const b of kerned) {
      const by = widthOf(font, a + b, PLAIN) - advance[a] - advance[b];
      if (by !== 0) pairs[b] = by;
    }
    if (Object.keys(pairs).length > 0) kern[a] = pairs;
  }
  return {
    unitsPerEm: font.unitsPerEm,
    ascent: font.ascent,
    descent: font.descent,
    capHeight: font.capHeight,
    xHeight: font.xHeight,
    advance,
    kern,
    fraction: fractionMetrics(font),
    more: moreMetrics(more, advance),
  };
}

/** Digits above and below, the last above (it leans on the slash), the slash before each below. */
function fractionMetrics(font) {
  const advances = (text) => font.layout(text, FRACTION).positions.map((p) => p.xAdvance);
  return {
    above: DIGITS.map((d) => advances(`${d}1\u20441`)[0]),
    last: DIGITS.map((d) => advances(`${d}\u20441`)[0]),
    slash: DIGITS.map((d) => advances(`1\u2044${d}`)[1]),
    below: DIGITS.map((d) => advances(`1\u2044${d}`)[2]),
  };
}

function moreMetrics(file, known) {
  const font = open(file);
  const out = {};
  for (const c of font.characterSet) {
    const text = String.fromCodePoint(c);
    if (c >= 0x100 && c <= 0x24f && known[text] === undefined)
      out[text] = widthOf(font, text, PLAIN);
  }
  return out;
}

const all = Object.fromEntries(
  Object.keys(FILES).map((face) => [face, metrics(FILES[face], MORE[face])]),
);
const target = new URL("../src/core/sheet/face-metrics.json", import.meta.url);
writeFileSync(target, `${JSON.stringify(all)}\n`);
