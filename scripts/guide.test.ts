import { spawnSync } from "node:child_process";
import { cpSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { type Change, changesUnder, make } from "./guide.ts";

const ROOT = resolve(import.meta.dirname, "..");
/** A copy of the source, where the packages that are installed are found from. */
const COPY = join(ROOT, ".cache/guide");
const GUIDE = readFileSync(join(ROOT, "CONTRIBUTING.md"), "utf8");
const FINDING = changesUnder(GUIDE, "Adding a finding, by an example");
const SETTING = changesUnder(GUIDE, "Adding a setting, by an example");

const inCopy = (program: string, ...args: string[]) =>
  spawnSync(process.execPath, [join(ROOT, "node_modules", program), ...args], {
    cwd: COPY,
    encoding: "utf8",
    env: { ...process.env, NO_COLOR: "1" },
  });

/** Files of the copy that the compiler finds fault with. */
function faulted(): string[] {
  const { stdout } = inCopy("tsc-native/bin/tsc", "--noEmit", "--pretty", "false");
  return [...new Set([...stdout.matchAll(/^([\w./-]+)\(\d+,\d+\): error/gm)].map(([, f]) => f))];
}

const filesOf = (changes: readonly Change[]): string[] => [...new Set(changes.map((c) => c.file))];

type Documents = typeof import("../src/core/brief/index.ts");
type Answers = typeof import("../src/core/answer/index.ts");
type Sheets = typeof import("../src/core/sheet/index.ts");
type CommandLine = typeof import("../src/cli/ran.testing.ts");

const TESTS = filesOf([...SETTING, ...FINDING]).filter((file) => file.endsWith(".test.ts"));

/** A part of the changed copy, loaded as it is. */
const loaded = <T>(path: string): Promise<T> => import(join(COPY, path));

beforeAll(() => {
  rmSync(COPY, { recursive: true, force: true });
  const isText = (path: string): boolean => !path.endsWith("/pictures");
  for (const part of ["src", "examples", "docs", "package.json"])
    cpSync(join(ROOT, part), join(COPY, part), { recursive: true, filter: isText });
  // A setting of its own: without one the tests would be run by that of the repository round it.
  writeFileSync(join(COPY, "vitest.config.mjs"), "export default {};\n");
  writeFileSync(
    join(COPY, "tsconfig.json"),
    JSON.stringify({
      extends: "../../tsconfig.json",
      compilerOptions: { tsBuildInfoFile: "../guide-tsbuildinfo" },
      include: ["src/core"],
      exclude: ["**/*.test.ts"],
      files: TESTS,
    }),
  );
});

describe("what the guide for contributors prints, made in a copy of the source", () => {
  test("the compiler asks for what the guide says it asks for, and for nothing else", () => {
    const [first, ...others] = SETTING;
    make(first, COPY);
    expect(faulted().sort()).toEqual(filesOf(others.filter((c) => c.asked)).sort());
    for (const change of [...others, ...FINDING]) make(change, COPY);
    expect(faulted()).toEqual([]);
  }, 240_000);

  test("its tests, and those that hold each setting against its formula, pass", () => {
    expect(TESTS.length).toBe(2);
    const run = inCopy(
      "vitest/vitest.mjs",
      "run",
      "--root",
      COPY,
      ...TESTS,
      "src/core/sewing/laws",
    );
    expect(run.status, run.stdout + run.stderr).toBe(0);
    expect(run.stdout).toContain("Test Files  3 passed");
  });

  test("the new setting is drawn, proved and answered, and a question turned round moves to it", async () => {
    const { text } = SETTING.find((c) => c.kind === "new") as Change;
    const { readBrief } = await loaded<Documents>("src/core/brief/index.ts");
    const { answerBrief, looksOf } = await loaded<Answers>("src/core/answer/index.ts");
    const { pictureFiles } = await loaded<Sheets>("src/core/sheet/index.ts");
    const read = readBrief(text);
    if (!read.ok) throw new Error(JSON.stringify(read.refusals));
    const answer = answerBrief(read.brief);
    expect(answer.findings).toEqual([]);
    expect(answer.recipes.map((r) => r.verdict)).toEqual(answer.pieces.map(() => "proved"));
    const files = new Map(pictureFiles(read.brief, answer, looksOf(read.brief, answer)));
    const patches = answer.blocks[0].patches.length;
    expect(files.get("block-gate.svg")?.split("<path").length).toBeGreaterThan(patches);

    const { ran } = await loaded<CommandLine>("src/cli/ran.testing.ts");
    const { out, code } = await ran(["answer", "-"], text);
    expect(code).toBe(0);
    expect(out).toContain("with kites in two corners");
    const kites = text.replace('"diagonal"', '"kites"');
    const pin = ["--pin", "yardage B <= 3/8 yd", "--free", "setting"];
    const turned = await ran(["turn", "-", ...pin], kites);
    expect(turned.out).toContain("with kites in two corners");
  });

  test("the new finding is told with its place, what is needed and what was found", async () => {
    const { ran } = await loaded<CommandLine>("src/cli/ran.testing.ts");
    const brief = JSON.parse(readFileSync(join(ROOT, "examples/lantern-throw.json"), "utf8"));
    brief.quilt.sashing = { width: "15", fabric: "dusk" };
    const { code, out } = await ran(["check", "-"], JSON.stringify(brief));
    expect(out).toContain(
      "draft: the sashing: the sashing is 15 in wide, more than the 10.193 in of the blocks it parts.",
    );
    expect(code).toBe(0);
  });
});
