import { expect, test } from "vitest";
import { smallBrief } from "../../../core/brief/sample.ts";
import { fabric as schema } from "../../../core/brief/schema.ts";
import type { Found } from "./messages.ts";
import { asPrint, asStripe, bandTexts } from "./taken.ts";

const lab = { l: 50, a: 0, b: 0 };
const found: Found = {
  width: 1200,
  height: 900,
  data: "data:image/jpeg;base64,AAAA",
  color: "#7F6A55",
  stripe: {
    sure: true,
    period: 240,
    angle: 0,
    repeats: 3.75,
    agrees: 0.99,
    tells: 0.98,
    bands: [
      { from: 0, to: 0.55, lab, color: "#B4472F" },
      { from: 0.55, to: 0.7, lab, color: "#F3E7C4" },
      { from: 0.7, to: 1, lab, color: "#5B6B36" },
    ],
  },
  repeat: {
    sure: true,
    across: 320,
    along: 480,
    halfDrop: false,
    agreesAcross: 0.9,
    agreesAlong: 0.92,
  },
};
const brief = smallBrief();
const [red] = brief.fabrics;
/** Pixels to the inch. */
const SCALE = 40;

test("bands become widths to the nearest 1/32 in, and a fabric the reader takes", () => {
  const bands = bandTexts(brief, found, SCALE);
  // 240 pixels are 6 in: 3.3, 0.9 and 1.8 in.
  expect(bands.map((b) => b.width)).toEqual(["3 5/16", "29/32", "1 13/16"]);
  const made = asStripe(red, found, bands, "along");
  expect(schema.parse(made)).toMatchObject({
    id: "red",
    name: "Red",
    kind: "stripe",
    runs: "along",
  });
});

test("a print keeps its picture, and its repeat only when it is sure", () => {
  const made = schema.parse(asPrint(brief, red, found, SCALE));
  expect(made).toMatchObject({
    kind: "print",
    usable: "40",
    photo: { width: "30", height: "22 1/2" },
    repeat: { along: "12", across: "8" },
  });
  const unsure = { ...found, repeat: { ...found.repeat, sure: false } };
  expect(asPrint(brief, red, unsure, SCALE)).not.toHaveProperty("repeat");
});
