import { execFile } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { promisify } from "node:util";
import { afterAll, beforeAll, expect, test } from "vitest";
import { ran } from "../src/cli/ran.testing.ts";
import { makeSheet } from "../src/core/sheet/index.ts";
import { jobOf } from "../src/core/sheet/job.testing.ts";
import { nodeFonts } from "../src/pdf/fonts.node.ts";
import { writePdf } from "../src/pdf/index.ts";
import { pages } from "./docs.ts";
import { spans, stated, unknownOptions } from "./docs-commands.ts";
import { WAYS } from "./docs-ways.ts";

const ROOT = resolve(import.meta.dirname, "..");
const ALL = pages(ROOT);
const read = (page: string): string => readFileSync(join(ROOT, page), "utf8");
const lines = [...new Set(ALL.flatMap((page) => stated(ROOT, page)).map((s) => s.line))].sort();

test("every command that a page states is tried or left with a reason, and no other is", () => {
  expect(WAYS.flatMap((way) => way.stated).sort()).toEqual(lines);
  for (const { run, left, stated } of WAYS)
    expect([run, left].filter(Boolean).length, stated[0]).toBe(1);
});

test("every option it is given is one its script knows", () => {
  expect(lines.flatMap((line) => unknownOptions(ROOT, line))).toEqual([]);
  expect(unknownOptions(ROOT, "npm run -s fuzz -- --never 1")).toEqual(["never"]);
});

test("every command and option of the program that a page speaks of is in its help", async () => {
  const said = ALL.flatMap((page) => spans(read(page)).map((span) => ({ page, span })));
  const { out } = await ran(["--help"]);
  const names = [...out.matchAll(/^ {2}(\w+)\b/gm)].map(([, name]) => name);
  const help = new Map<string, string>();
  for (const name of names) help.set(name, (await ran([name, "--help"])).out);
  expect(names.length).toBeGreaterThan(12);
  const wrong = said.flatMap(({ page, span }) => {
    const [, name] = /^(?:npx )?eighthwise (\w+)/.exec(span) ?? [];
    const ours = name === undefined ? [] : (span.match(/--[a-z-]+/g) ?? []);
    const about = help.get(name ?? "");
    if (name !== undefined && about === undefined) return [`${page}: ${span}`];
    return ours.filter((o) => !about?.includes(o)).map((o) => `${page}: ${name} ${o}`);
  });
  expect(wrong).toEqual([]);
});

const folder = mkdtempSync(join(tmpdir(), "commands-"));
beforeAll(async () => {
  const job = jobOf(read("examples/tidepool-runner.json"));
  const pdf = await writePdf([makeSheet(job, "pattern")], {
    fonts: nodeFonts(),
    created: new Date(Date.UTC(2026, 10, 25)),
  });
  writeFileSync(join(folder, "PATTERN.pdf"), pdf);
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const tried = WAYS.flatMap(({ run, ...way }) => (run === undefined ? [] : [{ run, ...way }]));
test.each(tried.map((way) => [way.run, way] as const))("%s", async (run, { prints, same }) => {
  const command = run.replaceAll("$", folder);
  const { stdout } = await promisify(execFile)("sh", ["-c", command], { cwd: ROOT });
  if (prints) expect(stdout).toMatch(prints);
  const [found, said] = same?.(stdout, read) ?? [];
  if (same) expect(found).toEqual(said);
});
