import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { describe, expect, test } from "vitest";
import { pages } from "./docs.ts";
import { spans } from "./docs-commands.ts";
import { changesUnder } from "./guide.ts";

const ROOT = resolve(import.meta.dirname, "..");
const read = (path: string): string => readFileSync(join(ROOT, path), "utf8");
const words = (page: string): string => read(page).replace(/\s+/g, " ");

/** A number as the code says it: `NAME = 60_000` or `name: 1000`, sums of factors worked out. */
function inCode(file: string, name: string): number {
  const [, said] = new RegExp(`\\b${name}\\b(?:[^=\n]*=|:) ([\\d_.e *-]+)`).exec(read(file)) ?? [];
  if (said === undefined) throw new RangeError(`${file} says no number for ${name}`);
  return said
    .replaceAll("_", "")
    .split("*")
    .reduce((product, factor) => product * Number(factor), 1);
}

const grouped = (x: number): string => x.toLocaleString("en-US");
const FOLDERS = ["src", "docs", "scripts", "bench", "e2e", "examples"];
/** Every file and folder below one, from the root of the repository. */
const everything = (folder: string): string[] =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: "utf8" }).map(
    (name) => `${folder}/${name}`,
  );

const KEEP = "src/web/keep";

/** Limits and defaults that pages give, each with the place in the code that holds it. */
const LIMITS: readonly (readonly [string, string, string, (n: number) => string])[] = [
  ["SECURITY.md", "src/core/brief/read.ts", "LONGEST_TEXT", (n) => `${n / 2 ** 20} MiB`],
  ["SECURITY.md", "src/core/brief/read.ts", "DEEPEST", (n) => `nested deeper than ${n}`],
  ["SECURITY.md", "src/core/brief/read.ts", "MOST_VALUES", (n) => `than ${grouped(n)} values`],
  ["SECURITY.md", "src/core/brief/check.ts", "MOST_BLOCKS", (n) => `of blocks (${grouped(n)})`],
  ["SECURITY.md", "src/core/brief/refusal.ts", "MOST_REFUSALS", (n) => `at most ${n} faults`],
  ["SECURITY.md", "src/core/fabric/photo/sniff.ts", "MOST_BYTES", (n) => `most ${n / 1e6} MB`],
  ["SECURITY.md", "src/core/fabric/photo/pixels.ts", "MOST_PIXELS", (n) => `${n / 1e6} million`],
  ["SECURITY.md", "src/core/fabric/stock.ts", "MOST_STOCK_ROWS", (n) => `${grouped(n)} rows`],
  ["docs/fabric.md", "src/core/fabric/photo/pixels.ts", "MOST_PIXELS", (n) => `${n / 1e6} megap`],
  [
    "docs/kits-and-class.md",
    "src/core/shop/most.ts",
    "BUDGET",
    (n) => `${grouped(n)} combinations`,
  ],
  ["docs/kits-and-class.md", "src/core/shop/rules.ts", "USUAL_WEIGHT", (n) => `times ${n} g`],
  ["docs/sewing.md", "src/core/answer/sewing/make-size.ts", "SAMPLES", (n) => grouped(n)],
  ["docs/sewing.md", "src/core/answer/sewing/make-size.ts", "SEED", (n) => `from seed ${n}`],
  ["docs/cutting-plans.md", "src/core/layout/plan.ts", "DEFAULT_NODES", (n) => `of ${n} nodes`],
  ["docs/command-line.md", "src/core/layout/plan.ts", "DEFAULT_NODES", (n) => `${n} unless told`],
  ["README.md", "src/core/layout/plan.ts", "DEFAULT_NODES", (n) => `${n} unless told`],
  [
    "docs/decisions/0006-cutting-planner.md",
    "src/core/layout/enumerate.ts",
    "MOST_PATTERNS",
    (n) => `${grouped(n)} at most`,
  ],
  ["docs/sheets.md", "src/core/sheet/grid.ts", "MEASURE", (n) => `One text block of ${n} points`],
  ["docs/turning-round.md", "src/core/turn/types.ts", "plans", (n) => `at most ${n} sentences`],
  ["docs/turning-round.md", "src/core/turn/types.ts", "across", (n) => `1 to ${n} |`],
  ["docs/keeping-work.md", `${KEEP}/second.ts`, "STILL", (n) => `still for ${n / 1000} seconds`],
  ["docs/keeping-work.md", `${KEEP}/second.ts`, "LATEST", (n) => `latest ${n / 1000} seconds`],
  ["docs/keeping-work.md", `${KEEP}/shop.ts`, "MOST_STEPS", (n) => `the last ${n} changes`],
  ["docs/conventions.md", "src/core/measure/unit.ts", "MM_PER_INCH", (n) => `${n} mm to the inch`],
];

describe("numbers that pages give", () => {
  test.each(LIMITS)("%s: %s, %s", (page, file, name, said) => {
    expect(words(page)).toContain(said(inCode(file, name)));
  });

  test("tries at saving come as often as the page says", () => {
    const [, list] = /RETRIES = \[(.+)\]/.exec(read(`${KEEP}/session.ts`)) ?? [];
    const seconds = list.split(", ").map((ms) => Number(ms.replace("_", "")) / 1000);
    expect(words("docs/keeping-work.md")).toContain(
      `after ${seconds.slice(0, -1).join(", ")} and then every ${seconds.at(-1)} seconds`,
    );
  });

  test("what is said of all rows of a table follows from its rows", () => {
    const tables = read("docs/cutting-plans.md").split("| id | types |").slice(1, 3);
    for (const table of tables) {
      const rows = [...table.matchAll(/^\| (q\d\d .+) \|$/gm)].map(([, row]) => row.split(" | "));
      const gaps = rows.map((r) => Number.parseFloat(r[7]) || 0);
      const saved = rows.map((r) => 100 * (1 - Number(r[5]) / Number(r[3])));
      const mean = (xs: readonly number[]) => xs.reduce((a, b) => a + b, 0) / xs.length;
      const [, of, largest, saving] =
        /^Mean gap ([\d.]+) %, largest ([\d.]+) %; mean saving over the handbook ([\d.]+) %/m.exec(
          table,
        ) ?? [];
      expect(rows.length).toBe(12);
      expect(mean(gaps)).toBeCloseTo(Number(of), 3);
      expect(Math.max(...gaps)).toBe(Number(largest));
      expect(mean(saved)).toBeCloseTo(Number(saving), 2);
    }
  });
});

/** Numbers with three decimals or more in the words and tables of a page. */
const worked = (text: string): string[] =>
  text.replace(/^```[\s\S]*?^```/gm, "").match(/(?<![\w.])\d+\.\d{3,}(?!\d| %)/g) ?? [];

test("every worked number of a derivation is one that a test or an example's answer holds", () => {
  const held = [...everything("src"), ...everything("examples")]
    .filter((path) => /\.(test|testing)\.ts$|answer\.txt$/.test(path))
    .flatMap((file) => read(file).match(/(?<![\w.])\d+\.\d{2,}/g) ?? [])
    .map(Number);
  const known = (text: string): boolean => {
    const half = 0.5001 * 10 ** -(text.length - text.indexOf(".") - 1);
    return held.some((x) => Math.abs(x - Number(text)) <= half);
  };
  const derived = pages(ROOT)
    .filter((page) => page.startsWith("docs/geometry/"))
    // What the sewing of thousands of blocks gives is compared with a run (docs-ways.ts).
    .flatMap((page) => worked(read(page).split("`npx tsx bench/")[0]).map((n) => ({ page, n })));
  expect(derived.length).toBeGreaterThan(40);
  const unheld = derived.filter(({ n }) => !known(n));
  expect(unheld.map(({ page, n }) => `${page}: ${n}`)).toEqual([]);
});

test("files and folders that the words of a page name are there", () => {
  const there = FOLDERS.flatMap((folder) => [folder, ...everything(folder)]);
  const made = changesUnder(read("CONTRIBUTING.md"), "Adding a setting, by an example");
  const known = new Set([...there, ...made.map((change) => change.file)]);
  const ends = (name: string): boolean => [...known].some((path) => path.endsWith(`/${name}`));
  const named = pages(ROOT).flatMap((page) =>
    spans(read(page))
      .filter((span) =>
        /^(src|docs|scripts|bench|e2e|examples)\/[\w./-]+$|^[\w/.-]+\.(tsx?|mjs|sh)$/.test(span),
      )
      .filter((span) => !span.startsWith("x."))
      .map((span) => ({ page, name: span.replace(/\/$/, "") })),
  );
  expect(named.length).toBeGreaterThan(100);
  const gone = named.filter(({ name }) => !known.has(name) && !ends(name));
  expect(gone.map(({ page, name }) => `${page}: ${name}`)).toEqual([]);
});
