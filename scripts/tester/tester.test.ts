import { readdirSync, readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { answerBrief } from "../../src/core/answer/index.ts";
import { readBrief } from "../../src/core/brief/index.ts";
import {
  longSheet,
  patternSheet,
  type SheetOptions,
  sheetJob,
} from "../../src/core/sheet/index.ts";
import { nodeFonts } from "../../src/pdf/fonts.node.ts";
import { writePdf } from "../../src/pdf/index.ts";
import { wordsIn, wordsText } from "./main.ts";
import { reading } from "./parse.ts";
import { PLANTS } from "./plants.testing.ts";
import { type Print, printOf } from "./read.ts";
import { tried } from "./try.ts";

// The tester itself imports nothing of the project: only this test does, to print what it reads.

const folder = new URL("../../examples/", import.meta.url);
const fonts = nodeFonts();

interface Set extends Pick<SheetOptions, "paper" | "leftHanded"> {
  readonly long?: boolean;
  /** Decisions of the quilt that the example does not make. */
  readonly quilt?: object;
  /** Decisions of every fabric. */
  readonly fabrics?: object;
  readonly seam?: string;
}

async function printed(name: string, set: Set = {}): Promise<Print[]> {
  const decided = JSON.parse(readFileSync(new URL(name, folder), "utf8"));
  Object.assign(decided.quilt, set.quilt);
  for (const fabric of decided.fabrics) Object.assign(fabric, set.fabrics);
  decided.seam = set.seam ?? decided.seam;
  const result = readBrief(JSON.stringify(decided));
  if (!result.ok) throw new Error(`${name} is refused`);
  const job = sheetJob(result.brief, answerBrief(result.brief), {
    version: "1",
    date: "25 November 2026",
    leftHanded: set.leftHanded ?? false,
    ...(set.paper ? { paper: set.paper } : {}),
  });
  const sheet = set.long ? longSheet(job) : patternSheet(job);
  const options = { fonts, created: new Date(Date.UTC(2026, 10, 25)), compress: false };
  return printOf(await writePdf([sheet], options));
}

const examples = readdirSync(folder).filter((f) => f.endsWith(".json"));

/** Printing costs more than reading: each example is printed once for all tests. */
const known = new Map<string, Promise<Print[]>>();
function once(name: string): Promise<Print[]> {
  const print = known.get(name) ?? printed(name);
  known.set(name, print);
  return print;
}

test.each(examples)("%s can be made from its printed words alone", async (name) => {
  expect(tried(reading(await once(name)))).toEqual([]);
});

const stones = { width: "1 1/2", fabric: "meadow", cornerstone: "cloud" };

test.each([
  // Four lines of one fabric in the list of supplies: found by hand.
  ["a bed on point with cornerstones", "skylark-bed", { sashing: stones }],
  // Sashes longer than the fabric is wide, beside borders cut along it, were left out of the list of cuts.
  [
    "a bed on point in long strips",
    "skylark-bed",
    { sashing: { width: "1 1/2", fabric: "meadow" } },
  ],
  // Halves were counted as blocks.
  ["deep blocks in shifted rows", "quiet-field", { offset: true }],
  ["a strip set in shifted rows", "reef-window", { offset: true }],
  // Wedges along the length: a count a strip that was no whole number, and pieces counted twice.
  ["a stripe in shifted rows", "orchard-stripe", { offset: true }],
  // A step that named a seam by a letter no sheet has; a size parted from its unit.
  ["a runner on point", "tidepool-runner", { arrangement: "on-point", setting: "kelp" }],
])("so can %s", async (_, name, quilt) => {
  expect(tried(reading(await printed(`${name}.json`, { quilt })))).toEqual([]);
});

describe("planted errors", () => {
  let runner: Print[];
  let field: Print[];
  let bed: Print[];
  beforeAll(async () => {
    runner = await once("tidepool-runner.json");
    field = await once("quiet-field.json");
    bed = await once("skylark-bed.json");
  }, 60_000);

  /** The print with one stretch changed: the nth that matches, of letters of one size if told. */
  function changed(
    print: readonly Print[],
    find: RegExp,
    to: string,
    nth = 0,
    size?: number,
  ): Print[] {
    const hits = print.flatMap((p, i) =>
      find.test(p.text) && (size === undefined || Math.abs(p.size - size) < 0.1) ? [i] : [],
    );
    const at = hits[nth];
    if (at === undefined) throw new Error(`nothing matches ${find}`);
    const next = print[at].text.replace(find, to);
    expect(next).not.toBe(print[at].text);
    return print.map((p, i) => (i === at ? { ...p, text: next } : p));
  }
  const without = (print: readonly Print[], find: RegExp, nth = 0): Print[] => {
    const hits = print.filter((p) => find.test(p.text));
    if (!hits[nth]) throw new Error(`nothing matches ${find}`);
    return print.filter((p) => p !== hits[nth]);
  };

  interface Planted {
    readonly kind: string;
    readonly what: string;
    readonly plant: () => Print[];
    /** Where a maker first meets it. */
    readonly at: RegExp;
  }

  const all: Planted[] = [
    {
      kind: "a count",
      what: "one wedge fewer from a strip",
      plant: () => changed(runner, /14 from the last/, "13 from the last"),
      at: /cutting A1/,
    },
    {
      kind: "a count",
      what: "fewer pairs",
      plant: () => changed(runner, /^48$/, "44", 0),
      at: /fabric|cutting/,
    },
    {
      kind: "a count",
      what: "blocks in the sentence",
      plant: () => changed(runner, /24 blocks/, "25 blocks"),
      at: /How big/,
    },
    {
      kind: "a hand",
      what: "lefts and rights differ",
      plant: () => changed(field, /120 C1/, "100 C1"),
      at: /Lefts|cutting/,
    },
    {
      kind: "a hand",
      what: "all cut the same hand",
      plant: () => changed(field, /120 C2 \(Sky\)/, "0 C2 (Sky)"),
      at: /Lefts|cutting/,
    },
    {
      kind: "a size",
      what: "the square in the list",
      plant: () => changed(field, /120 squares 6/, "120 squares 5"),
      at: /cutting C/,
    },
    {
      kind: "a size",
      what: "the width of a strip",
      plant: () => changed(runner, /^3$/, "2", 3),
      at: /cutting|sentence|fabric/,
    },
    {
      kind: "a size",
      what: "the proof's square",
      plant: () => changed(runner, /From a 3$/, "From a 4"),
      at: /cutting D1/,
    },
    {
      kind: "a missing cut",
      what: "a piece is not cut",
      plant: () => without(runner, /^D1$/, 0),
      at: /fabric D|cutting/,
    },
    {
      kind: "a missing cut",
      what: "strips too few",
      plant: () => changed(runner, /^6$/, "5", 0),
      at: /cutting|fabric/,
    },
    {
      kind: "an unused piece",
      what: "corners are left over",
      plant: () => changed(runner, /4 D1, one by one/, "3 D1, one by one"),
      at: /left over|last step/,
    },
    {
      kind: "an unused piece",
      what: "a unit is left over",
      plant: () => changed(runner, /^Two of step 6/, "Two of step 5"),
      at: /step/,
    },
    {
      kind: "a wrong fabric letter",
      what: "in the list",
      plant: () => changed(runner, /^B1$/, "A1", 0),
      at: /cutting|fabric/,
    },
    {
      kind: "a wrong fabric letter",
      what: "in a step",
      plant: () => changed(runner, /C1 and A1/, "C1 and B1"),
      at: /step 5/,
    },
    {
      kind: "a wrong yardage",
      what: "too little",
      plant: () => changed(runner, /^1 yd$/, "3\u20444 yd", 0),
      at: /fabric B/,
    },
    {
      kind: "a wrong yardage",
      what: "far too much",
      plant: () => changed(field, /^1 yd$/, "2 yd", 0),
      at: /fabric A/,
    },
    {
      kind: "a missing size",
      what: "no finished size",
      plant: () => without(runner, /64 × 24 in/, 0),
      at: /How big/,
    },
    {
      kind: "a missing size",
      what: "no stop",
      plant: () => without(runner, /Should measure/, 1),
      at: /step 2/,
    },
    {
      kind: "a step out of order",
      what: "halves before pairs",
      plant: () => changed(runner, /step 1\./, "step 3."),
      at: /step 2/,
    },
    {
      kind: "a step out of order",
      what: "two numbers exchanged",
      plant: () => changed(runner, /^6$/, "7", 3),
      at: /step/,
    },
    {
      kind: "a stale number",
      what: "another seam at the foot",
      plant: () => changed(runner, /Version 1,/, "Version 2,"),
      at: /foot/,
    },
    {
      kind: "a stale number",
      what: "the size when bound",
      plant: () => changed(runner, /64 × 24 in/, "60 × 24 in", 1),
      at: /And then/,
    },
    {
      kind: "a wrong fabric letter",
      what: "a border named by another piece",
      plant: () => {
        const last = Math.max(...bed.map((p) => p.page));
        return bed.map((p) =>
          p.page === last ? { ...p, text: p.text.replace(/\bA1\b/, "A9") } : p,
        );
      },
      at: /step \d+/,
    },
  ];

  test("the print written out and edited as text is read like the file", () => {
    const text = wordsText(runner);
    expect(wordsIn(text)).toEqual(runner);
    const edited = text.replace(/24 blocks/, "25 blocks");
    expect(edited).not.toBe(text);
    expect(tried(reading(wordsIn(edited))).map((f) => f.where)).toContain("How big is it?");
    expect(() => wordsIn("page\tx\n1\t2")).toThrow(/first line/);
  });

  test("there are at least twenty, of ten kinds", () => {
    expect(all.length).toBeGreaterThanOrEqual(20);
    expect(new Set(all.map((p) => p.kind)).size).toBe(10);
  });

  test.each(all.map((p) => [`${p.kind}: ${p.what}`, p] as const))("%s is found", (_, p) => {
    const found = tried(reading(p.plant()));
    expect(found.length).toBeGreaterThan(0);
    expect(found.map((f) => f.where).join("; ")).toMatch(p.at);
  });
});

describe("errors planted wherever a pattern has a place for them", () => {
  const places = new Map<string, number>();

  test.each(examples)("%s: each is found, and where a maker meets it", async (name) => {
    const print = await once(name);
    for (const { kind, what, plant, at } of PLANTS) {
      const wrong = plant(print);
      if (!wrong) continue;
      places.set(what, (places.get(what) ?? 0) + 1);
      const found = tried(reading(wrong)).map((f) => f.where);
      expect(found.join("; "), `${kind}: ${what}`).toMatch(at);
    }
  });

  test("every one of them stood in at least three patterns, and all ten kinds did", () => {
    for (const { what } of PLANTS) expect(places.get(what), what).toBeGreaterThanOrEqual(3);
    expect(new Set([...PLANTS].map((p) => p.kind)).size).toBe(10);
  });
});

/** Nobody reads metric, a left-handed sheet or a long pattern differently. */
test.each([
  ["harbor-mat.json", { leftHanded: true }],
  ["quiet-field.json", { leftHanded: true, paper: "a4" }],
  ["ferry-windows.json", { long: true }],
  ["moss-centerpiece.json", { long: true, paper: "letter" }],
  // Nothing printed said that the fabric is washed, and longer for it.
  ["garden-path.json", { fabrics: { shrinkage: { length: 5, width: 3 } } }],
  // A blunt tip lies elsewhere when another seam is sewn than the one its ruler is made for.
  ["tidepool-runner.json", { seam: "3/8" }],
] as const)("%s, set as %o, can be made from its words", async (name, set) => {
  expect(tried(reading(await printed(name, set)))).toEqual([]);
});
