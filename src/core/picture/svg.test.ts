import { expect, test } from "vitest";
import { moving } from "../geometry/index.ts";
import { leftHanded, rectangle } from "./compose.ts";
import type { Picture } from "./marks.ts";
import { toSvg } from "./svg.ts";
import type { Swatches } from "./swatch.ts";

const swatches: Swatches = {
  reed: {
    fabricId: "reed",
    letter: "A",
    name: "Reed",
    color: "#8b9a82",
    hatch: "rising",
    look: { kind: "plain", fabricId: "reed", color: "#8b9a82" },
  },
};

const small: Picture = {
  title: "A <small> picture",
  unit: "in",
  left: -1,
  bottom: -2,
  width: 4,
  height: 3,
  stamps: { tile: [{ kind: "shape", polygon: rectangle(0, 0, 1, 0.5), line: "cut" }] },
  marks: [
    {
      kind: "shape",
      id: "block/s0",
      polygon: rectangle(-1, -2, 2, 1),
      fill: { kind: "fabric", fabricId: "reed" },
      line: "seam",
    },
    { kind: "stamp", of: "tile", at: moving(1, -1), id: "r1c2" },
    { kind: "text", at: { x: 0, y: 0 }, text: "4 1/2 & 3", size: 1, anchor: "start" },
  ],
};

test("a small picture, whole: y turned over, words escaped, the fraction apart from its number", () => {
  expect(toSvg(small, { theme: "line", swatches, width: 40, fabrics: "color", small: 9 })).toBe(
    [
      `<svg xmlns="http://www.w3.org/2000/svg" width="40" height="30" viewBox="0 0 40 30"`,
      ` role="img" aria-label="A &lt;small&gt; picture" font-family="'Alegreya Sans', sans-serif"`,
      ` style="font-feature-settings:'lnum'" fill="none" stroke-linejoin="miter">`,
      "<title>A &lt;small&gt; picture</title>",
      `<defs><g id="tile"><path d="M0 0L10 0L10 -5L0 -5Z" stroke="#1c1a18" stroke-width="0.9"/></g></defs>`,
      `<g data-id="block/s0"><path d="M0 30L20 30L20 20L0 20Z" fill="#8b9a82"/>`,
      `<path d="M0 30L20 30L20 20L0 20Z" stroke="#1c1a18" stroke-width="0.75" stroke-dasharray="3.2 2"/></g>`,
      `<use href="#tile" transform="matrix(1 0 0 1 20 20)" data-id="r1c2"/>`,
      `<text x="10" y="10" font-size="9" fill="#1c1a18">4 `,
      `<tspan dx="-0.12em" style="font-feature-settings:'lnum','frac'">1\u20442</tspan> &amp; 3</text>`,
      "</svg>",
    ].join(""),
  );
});

test("the same picture twice gives the same bytes", () => {
  expect(toSvg(small, { swatches })).toBe(toSvg(small, { swatches }));
});

test("true size is written in the picture's own unit", () => {
  const svg = toSvg(small, { theme: "paper", swatches, realUnits: true });
  expect(svg).toContain(`width="4in" height="3in" viewBox="0 0 288 216"`);
  const metric = toSvg({ ...small, unit: "mm" }, { theme: "light", swatches, realUnits: true });
  expect(metric).toContain(`width="4mm" height="3mm" viewBox="0 0 15.118 11.339"`);
});

test("a left-handed picture is mirrored, and its words are not", () => {
  const svg = toSvg(leftHanded(small), { theme: "line", swatches, width: 40, small: 9 });
  // What stood 1 from the left now stands 1 from the right, and ends there.
  expect(svg).toContain(`<text x="30" y="10" font-size="9" text-anchor="end"`);
  expect(svg).toContain(`matrix(-1 0 0 1 20 20)`);
  expect(svg).not.toContain("rotate(");
});

test("in black line the fabric is told by its hatch", () => {
  const svg = toSvg(small, { theme: "line", swatches, width: 400 });
  const hatch = /<path d="([^"]+)" stroke="#1c1a18" stroke-width="0.45"\/>/.exec(svg);
  // A hatch 3.4 apart at 45 degrees over 200 x 100: (200 + 100) / (3.4 sqrt 2) lines.
  const count = hatch?.[1].split("M").length ?? 0;
  expect(Math.abs(count - 1 - 300 / (3.4 * Math.SQRT2))).toBeLessThanOrEqual(1);
});
