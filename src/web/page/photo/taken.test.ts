import { expect, test } from "vitest";
import { smallBrief } from "../../../core/brief/sample.ts";
import { fabric as schema } from "../../../core/brief/schema.ts";
import { edgeMoved } from "./Bands.tsx";
import type { Found } from "./messages.ts";
import { repeatProblem, repeatTexts } from "./Repeat.tsx";
import { cropMoved } from "./Shaping.tsx";
import { asPrint, asStripe, bandTexts } from "./taken.ts";

const lab = { l: 50, a: 0, b: 0 };
const found: Found = {
  width: 1200,
  height: 900,
  data: "data:image/jpeg;base64,AAAA",
  color: "#7F6A55",
  tilt: 0,
  stripe: {
    sure: true,
    period: 240,
    angle: 0,
    start: 10,
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

test("a print keeps its picture, and its repeat as found or corrected by hand", () => {
  const there = repeatTexts("in", found, SCALE);
  expect(there).toMatchObject({ across: "8", along: "12" });
  const made = schema.parse(asPrint(brief, red, found, SCALE, { ...there, along: " 11 7/8" }));
  expect(made).toMatchObject({
    kind: "print",
    usable: "40",
    photo: { width: "30", height: "22 1/2" },
    repeat: { along: "11 7/8", across: "8" },
  });
  const none = { ...there, along: "", across: "" };
  expect(asPrint(brief, red, found, SCALE, none)).not.toHaveProperty("repeat");
  expect(repeatProblem({ ...there, across: "8 1/" }, "in")).toBeDefined();
});

test("a line between two bands gives to one what it takes of the other; the first moves all", () => {
  const marked = { start: 10, bands: bandTexts(brief, found, SCALE) };
  // Band 1 ends 3 5/16 in, 132.5 pixels, above its begin: to 150 pixels it grows by 17.5, 7/16 in.
  const moved = edgeMoved(marked, "in", SCALE, 1, 10 + 150);
  expect(moved.bands.map((b) => b.width)).toEqual(["3 3/4", "15/32", "1 13/16"]);
  expect(edgeMoved(marked, "in", SCALE, 0, -30)).toEqual({ ...marked, start: -30 });
  // The last line alone makes the repeat longer; none passes its neighbor.
  const longer = edgeMoved(marked, "in", SCALE, 3, 10 + 4 * SCALE + 3 * SCALE);
  expect(longer.bands.map((b) => b.width)).toEqual(["3 5/16", "29/32", "2 25/32"]);
  expect(edgeMoved(marked, "in", SCALE, 2, -500).bands[1].width).toBe("1/16");
});

test("a side of the crop stops before the other", () => {
  const crop = { left: 0, top: 0, right: 300, bottom: 200 };
  expect(cropMoved(crop, "left", { x: 400, y: 0 }).left).toBe(276);
  expect(cropMoved(crop, "top", { x: 0, y: 50 })).toEqual({ ...crop, top: 50 });
});
