import { cpSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { build } from "vite";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { brokenLinks, numbersIn, pages, picturesOf, ran, shown, unknownCommands } from "./docs.ts";
import { missingFolders, unknownNames, unreadBlocks } from "./docs-code.ts";

const ROOT = resolve(import.meta.dirname, "..");
const ALL = pages(ROOT);

test("every link and picture leads to a file of the repository, every anchor to a heading", () => {
  expect(ALL.length).toBeGreaterThan(20);
  expect(ALL.flatMap((page) => brokenLinks(ROOT, page))).toEqual([]);
});

test("every picture has words that stand for it, and every picture of docs is shown", () => {
  const shown = ALL.flatMap((page) => picturesOf(ROOT, page));
  expect(shown.filter(({ words }) => words.trim() === "")).toEqual([]);
  const there = readdirSync(join(ROOT, "docs"), { recursive: true, encoding: "utf8" })
    .filter((name) => /\.(jpg|png|svg)$/.test(name))
    .map((name) => `docs/${name}`);
  expect(there.filter((file) => !shown.some((s) => s.file === file))).toEqual([]);
});

test("every command and script the pages speak of is there", () => {
  expect(ALL.flatMap((page) => unknownCommands(ROOT, page))).toEqual([]);
});

test("every block of code is of a kind that is read; folders and names in it are there", () => {
  expect(ALL.flatMap((page) => unreadBlocks(ROOT, page))).toEqual([]);
  expect(ALL.flatMap((page) => missingFolders(ROOT, page))).toEqual([]);
  expect(unknownNames(ROOT, "docs/sheets.md", "src/core/sheet")).toEqual([]);
});

describe("every line that runs the program runs", () => {
  const program = join(ROOT, ".cache/docs/eighthwise.js");
  const folder = mkdtempSync(join(tmpdir(), "docs-"));
  beforeAll(async () => {
    const designs = (path: string): boolean => !path.includes("pictures");
    cpSync(join(ROOT, "examples"), join(folder, "examples"), { recursive: true, filter: designs });
    // The lists that the pages speak of, as a maker would keep them.
    writeFileSync(
      join(folder, "shelf.csv"),
      "Fabric,Kind,Length,Cost\nKelp,bolt,8 yd,12.95\nFoam,bolt,12 yd,11\nCurrent,bolt,14 yd,13.50\nBasalt,bolt,5 yd,9.80\n",
    );
    writeFileSync(join(folder, "class.csv"), "Name,Usable\nWren,20\nLark,42\n");
    const outDir = join(ROOT, ".cache/docs");
    const configFile = join(ROOT, "vite.cli.config.ts");
    await build({ configFile, root: ROOT, logLevel: "error", build: { outDir } });
  }, 120_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  // What stands on several pages runs once, unless what it prints stands beside it.
  const met = new Set<string>();
  const lines = ALL.flatMap((page) => shown(ROOT, page)).filter(({ line, prints }) => {
    const again = met.has(line);
    met.add(line);
    return !again || prints !== undefined;
  });
  const printed = new Map<string, string>();
  test("there are some", () => expect(lines.length).toBeGreaterThan(5));

  test.each(lines.map((s) => [s.line, s.page, s] as const))(
    "%s (%s)",
    async (line, _, { prints, says }) => {
      const { code, out, err } = await ran(line, program, folder);
      expect([0, 1], err).toContain(code);
      if (prints !== undefined) expect(out).toBe(prints);
      printed.set(says, `${printed.get(says) ?? ""} ${line} ${out}`);
    },
  );

  test("every number that a comment says is one that its lines give", () => {
    const said = [...printed].filter(([says]) => numbersIn(says).length > 0);
    expect(said.length).toBeGreaterThan(3);
    for (const [says, given] of said)
      expect(numbersIn(given), says).toEqual(expect.arrayContaining(numbersIn(says)));
  });
});
