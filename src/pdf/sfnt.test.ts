import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { expect, test } from "vitest";
import { FONT_PATHS } from "./fonts.ts";
import { unpackedFont } from "./sfnt.ts";

const require = createRequire(import.meta.url);
const fontkit = require("fontkit");

test.each(Object.values(FONT_PATHS).flatMap((p) => [p.latin, p.more]))(
  "%s unpacks to the same font",
  (path) => {
    const woff = readFileSync(require.resolve(path));
    const plain = fontkit.create(Buffer.from(unpackedFont(new Uint8Array(woff))));
    const packed = fontkit.create(woff);
    expect(plain.postscriptName).toBe(packed.postscriptName);
    expect(plain.numGlyphs).toBe(packed.numGlyphs);
    const [c] = packed.characterSet.filter((x: number) => x > 64);
    const glyph = (f: typeof plain) => f.glyphForCodePoint(c).path.toSVG();
    expect(glyph(plain)).toBe(glyph(packed));
  },
);

test("another file is refused", () => {
  expect(() => unpackedFont(new Uint8Array(60))).toThrow(/WOFF/);
});
