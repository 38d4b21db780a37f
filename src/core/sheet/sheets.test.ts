import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { makeSheet, sheetNames } from "./all.ts";
import { jobOf } from "./job.testing.ts";
import { glyphsOf, lonely, outside, overprinted, smallest, wordsIn } from "./looking.testing.ts";
import type { SheetOptions } from "./options.ts";
import { releaseChecks } from "./release.ts";

const folder = new URL("../../../examples/", import.meta.url);
const read = (name: string): string => readFileSync(new URL(name, folder), "utf8");
const examples = readdirSync(folder).filter((f) => f.endsWith(".json"));

/** Every design on its own paper; two of them on the other one too. */
const papers: [string, SheetOptions["paper"]][] = [
  ...examples.map((name): [string, undefined] => [name, undefined]),
  ["harbor-mat.json", "letter"],
  ["skylark-bed.json", "a4"],
];

test.each(papers)(
  "%s on %s: every sheet keeps its margins and is set in 9 points or more",
  (name, paper) => {
    const job = jobOf(read(name), paper ? { paper } : {});
    // The long form repeats the pages of the others.
    for (const sheet of sheetNames(job)
      .filter((n) => n !== "long")
      .map((n) => makeSheet(job, n))) {
      expect(sheet.pages.length).toBeGreaterThan(0);
      for (const page of sheet.pages) {
        expect(outside(page), sheet.name).toEqual([]);
        expect(overprinted(page), sheet.name).toEqual([]);
        expect(lonely(page), sheet.name).toEqual([]);
        expect(smallest(page)).toBeGreaterThanOrEqual(8.999);
      }
    }
  },
);

test("left-handed sheets say the same words, their cutting pictures turned over", () => {
  const text = read("orchard-wall.json");
  const words = (leftHanded: boolean): string[] =>
    makeSheet(jobOf(text, { leftHanded }), "pattern").pages.flatMap((p) =>
      p.items.flatMap((i) => glyphsOf(i).map((g) => g.text)),
    );
  expect(words(true)).toEqual(words(false));
  const figure = (leftHanded: boolean) =>
    makeSheet(jobOf(text, { leftHanded }), "layouts").pages[0].items.find(
      (i) => i.kind === "figure",
    );
  const [left, right] = [figure(true), figure(false)];
  expect(left).not.toEqual(right);
  if (left?.kind !== "figure" || right?.kind !== "figure") throw new Error("figures expected");
  // The running totals stand at the other side.
  const sum = (f: typeof left): string[] =>
    wordsIn(f.drawing.ops)
      .map((w) => JSON.stringify(w.runs))
      .sort();
  expect(sum(left)).toEqual(sum(right));
});

test("a pattern with a doubt prints as a draft, with the reason; proved ones do not", () => {
  const brief = JSON.parse(read("tidepool-runner.json"));
  const proved = jobOf(JSON.stringify(brief));
  expect(releaseChecks(proved).flatMap((c) => c.open)).toEqual([]);
  brief.blocks[0].cut.kite.size = "4";
  const thin = jobOf(JSON.stringify(brief));
  const open = releaseChecks(thin).filter((c) => c.open.length > 0);
  expect(open.map((c) => c.number)).toContain(8);
  const printed = makeSheet(thin, "pattern").pages.map((p) =>
    p.items.flatMap((i) => glyphsOf(i).map((g) => g.text)).join(" "),
  );
  for (const page of printed) expect(page).toMatch(/DRAFT\. Tidepool runner/);
  expect(printed[0]).toMatch(/Draft\./);
  const clean = makeSheet(proved, "pattern").pages.flatMap((p) =>
    p.items.flatMap((i) => glyphsOf(i).map((g) => g.text)),
  );
  expect(clean.join(" ")).not.toMatch(/draft/i);
});

test("a fabric that nothing uses keeps the word draft", () => {
  const brief = JSON.parse(read("tidepool-runner.json"));
  brief.fabrics.push({
    id: "spare",
    name: "Spare",
    kind: "plain",
    color: "#888888",
    usable: "40",
    narrower: "38",
  });
  const open = releaseChecks(jobOf(JSON.stringify(brief))).filter((c) => c.open.length > 0);
  expect(open).toEqual([
    {
      number: 6,
      point: open[0].point,
      open: [{ why: "Spare is listed and never used.", at: "fabrics" }],
    },
  ]);
});
