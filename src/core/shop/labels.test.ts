import { expect, test } from "vitest";
import { readPointText, sayPointText } from "./class/point.ts";
import { LABEL_SHEETS, readLabelSheet } from "./labels.ts";

const mm = (points: number): number => (points * 25.4) / 72;

test("a label sheet of one's own by its dimensions, margins and gaps as said", () => {
  const read = readLabelSheet("3 by 8 of 70 x 36 mm, left 0, top 0.5, gap 0 x 1", "a4");
  if (typeof read === "string") throw new RangeError(read);
  expect([read.columns, read.rows]).toEqual([3, 8]);
  expect([read.width, read.height, read.left, read.top, read.across, read.down].map(mm)).toEqual(
    [70, 36, 0, 0.5, 70, 37].map((x) => expect.closeTo(x, 9)),
  );
});

test("what is not said is even on both sides: the same sheet as the one that is known", () => {
  const read = readLabelSheet("3 by 10 of 2 5/8 x 1 in, gap 1/8 x 0", "letter");
  expect(read).toEqual({ ...LABEL_SHEETS[0], name: "2.625 x 1 in, 3 by 10" });
});

test.each([
  "three by eight of 70 x 37 mm",
  "3 by 8",
  "4 by 8 of 70 x 37 mm",
  "3 by 0 of 70 x 37 mm",
  "3 by 8 of 0 x 37 mm",
])("%s is told, not printed", (text) => expect(typeof readLabelSheet(text, "a4")).toBe("string"));

test.each([
  ["sharp", "sharp"],
  ["Blunt", "blunt:1/4"],
  ["blunt:3/16", "blunt:3/16"],
  ["flat 3/8", "flat:3/8"],
])("the point %s", (text, back) => expect(sayPointText(readPointText(text, "in"))).toBe(back));

test("no point is guessed", () => {
  for (const text of ["", "round", "blunt:", "flat:wide"])
    expect(readPointText(text, "in")).toBeUndefined();
});
