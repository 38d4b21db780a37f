import { expect, test } from "vitest";
import { aboutLength } from "./about.ts";
import { CAUSES } from "./causes.ts";
import { diagnose } from "./diagnose.ts";
import { planned, READING_WORDS, READINGS, type SewnCircle, usualError } from "./readings.ts";
import { sayCause, sayConfidence, sayRemedy, sayVerdict } from "./words.ts";

const CIRCLE: SewnCircle = { n: 8, a: 4, seam: 0.25, missing: 0, unit: "in" };

test("small amounts are told in marks a ruler has", () => {
  expect(aboutLength(0.0478, "in")).toBe("about 3/64 in");
  expect(aboutLength(-0.1, "in")).toBe("about 3/32 in");
  expect(aboutLength(0.004, "in")).toBe("less than 1/64 in");
  expect(aboutLength(1.23, "mm")).toBe("about 1.2 mm");
});

test("the whole of a help-desk answer, in words", () => {
  const plan = planned(CIRCLE);
  const small = { ...plan, acrossOne: plan.acrossOne - 0.25, acrossTwo: plan.acrossTwo - 0.25 };
  const d = diagnose(CIRCLE, small, usualError("in"));
  expect(sayCause(d.causes[0], "in")).toBe(
    "The seams are about 3/64 in too wide, the fold of the fabric counted.",
  );
  expect(sayRemedy(d.causes[0].remedy, "in")).toEqual([
    "Move the needle or the guide so that the seam is about 3/64 in narrower.",
    "Kept as it is, it finishes about 7 3/4 in across flats; trim all its fellows to the same.",
  ]);
  expect(sayConfidence(d)).toBe("The readings leave hardly room for another cause.");
});

test("every cause, reading and verdict has words, and no two causes the same", () => {
  const said = CAUSES.map((cause) =>
    sayCause(
      {
        cause,
        chance: 1,
        size: -0.1,
        unit: "length",
        low: 0,
        high: 0,
        remedy: { next: { do: "pin-the-center" } },
      },
      "mm",
    ),
  );
  expect(new Set(said).size).toBe(CAUSES.length);
  expect(Object.keys(READING_WORDS)).toEqual([...READINGS]);
  const verdict = { planned: 8.5, off: -0.4, seams: 7, perSeam: -0.08, toTrim: 0 };
  expect(sayVerdict({ ...verdict, verdict: "recut" }, "in")).toContain("13/32 in too small");
  expect(sayVerdict({ ...verdict, verdict: "take-in", perSeam: 1 / 32 }, "in")).toBe(
    "Take in: sew its 7 seams again, about 1/32 in deeper each.",
  );
  expect(sayVerdict({ ...verdict, verdict: "sew-on", toTrim: 0.25 }, "in")).toBe(
    "Sew on; about 1/4 in is left to trim.",
  );
});
