import { execFile } from "node:child_process";
import {
  chmod,
  mkdir,
  mkdtemp,
  readdir,
  readFile,
  rm,
  truncate,
  writeFile,
} from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { promisify } from "node:util";
import { Ajv } from "ajv";
import { build } from "vite";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { canonicalText, LONGEST_TEXT } from "../core/brief/index.ts";
import { smallBrief } from "../core/brief/sample.ts";
import { type Ran, ran } from "./ran.testing.ts";

let folder: string;

/** In the folder of this file of tests; `input` is given byte for byte. */
async function ranHere(args: string[], input = ""): Promise<Ran> {
  const before = process.cwd();
  process.chdir(folder);
  try {
    return await ran(args, Buffer.from(input, "latin1"));
  } finally {
    process.chdir(before);
  }
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "eighthwise-cli-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const sample = (change: Parameters<typeof smallBrief>[0] = {}): string =>
  canonicalText(smallBrief(change));

describe("answers", () => {
  test("the sample, through standard input, as text and as JSON", async () => {
    const { out: brief } = await ranHere(["new"]);
    const text = await ranHere(["answer", "-"], brief);
    expect(text).toMatchObject({ code: 0, err: "" });
    expect(text.out).toContain("Does it cover?");
    const json = await ranHere(["answer", "-", "--json"], brief);
    expect(JSON.parse(json.out)).toMatchObject({
      format: "eighthwise-answer",
      version: 1,
      unit: "in",
    });
  });

  test("equal briefs give equal bytes, whatever order their keys stand in", async () => {
    const [a, b] = [smallBrief(), Object.fromEntries(Object.entries(smallBrief()).reverse())];
    const one = await ranHere(["answer", "-", "--json"], JSON.stringify(a));
    const two = await ranHere(["answer", "-", "--json"], JSON.stringify(b));
    expect(one.out).toBe(two.out);
  });

  test("kites from squares that do not reach the center: the finding, and exit code 1", async () => {
    const [block] = smallBrief().blocks;
    const brief = sample({
      ruler: { point: { blunt: "1/4" } },
      blocks: [{ ...block, cut: { kite: { rule: "strip-1/2" } } }],
    });
    const { code, out } = await ranHere(["check", "-"], brief);
    expect(code).toBe(1);
    expect(out).toMatch(/^blocks: .*does not cover/m);
  });
});

describe("refuses, with the place and code 2", () => {
  test.each([
    ["malformed JSON", "{", /not JSON/],
    ["a wrong version", sample().replace('"version": 1', '"version": 9'), /version: .*version 9/],
    ["a missing unit", sample().replace('"unit": "in",', ""), /unit: the unit is missing/],
    ["an unknown key", sample().replace('"seam"', '"color": 1, "seam"'), /color: unknown key/],
    ["a strip of zero", sample().replace("4 1/2", "0"), /blocks\/0\/strip: .*more than zero/],
    ["bytes that are not text", "\xff\xfe{}", /not UTF-8/],
  ])("%s", async (_, brief, message) => {
    const { code, out, err } = await ranHere(["answer", "-"], brief);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(message);
  });

  test.each([
    [["answr", "x"], /there is no command "answr"/],
    [["answer"], /an argument is missing/],
    [["answer", "a", "b"], /too many arguments: b/],
    [["answer", "-", "--jsn"], /--jsn/],
    [["make", "-"], /--out DIR/],
    [["chart", "--from", "ten"], /from/],
    [["chart", "--point", "dull"], /point/],
    [["chart", "--by", "0"], /by/],
  ])("%j", async (args, message) => {
    const { code, out, err } = await ranHere(args, sample());
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(message);
  });

  test("a fabric named but not defined blocks cutting", async () => {
    const [block] = smallBrief().blocks;
    const { code, out } = await ranHere(
      ["check", "-"],
      sample({ blocks: [{ ...block, fabric: { wedge: "red", kite: "blue" } }] }),
    );
    expect(code).toBe(1);
    expect(out).toContain('names the fabric "blue"');
  });

  test("an octagon that does not fit its block names the least side that would", async () => {
    const [block] = smallBrief().blocks;
    const { code, out } = await ranHere(
      ["check", "-"],
      sample({
        blocks: [
          { ...block, setting: "deep", side: "7", fabric: { wedge: "red", background: "sand" } },
        ],
      }),
    );
    expect(code).toBe(1);
    expect(out).toMatch(/need a block of at least 7\.786/);
  });

  test("ten thousand by ten thousand blocks, at once", async () => {
    const { code, out } = await ranHere(
      ["check", "-"],
      sample({ quilt: { rows: 10_000, columns: 10_000, plan: [["star"]] } }),
    );
    expect(code).toBe(1);
    expect(out).toContain("100000000 blocks");
  });
});

describe("files", () => {
  test("what cannot be read is code 3", async () => {
    expect(await ranHere(["answer", "nowhere.json"])).toMatchObject({ code: 3, out: "" });
    expect(await ranHere(["answer", "."])).toMatchObject({ code: 3, out: "" });
  });

  test("a file larger than any brief is not read at all", async () => {
    const large = join(folder, "large.json");
    await writeFile(large, "{");
    await truncate(large, LONGEST_TEXT + 1);
    const { code, err } = await ranHere(["answer", "large.json"]);
    expect(code).toBe(3);
    expect(err).toContain(`larger than ${LONGEST_TEXT} bytes`);
    await rm(large);
  });

  test("new never replaces a file that is there", async () => {
    await writeFile(join(folder, "mine.json"), "mine");
    const { code, err } = await ranHere(["new", "mine.json"]);
    expect(code).toBe(3);
    expect(err).toContain("there already");
    expect(await readFile(join(folder, "mine.json"), "utf8")).toBe("mine");
  });

  test("make writes all its files and leaves no temporary ones", async () => {
    const { code, out } = await ranHere(["make", "-", "--out", "made"], sample());
    expect(code).toBe(0);
    const names = (await readdir(join(folder, "made"))).sort();
    expect(out.trim().split("\n").sort()).toEqual(names);
    expect(names).toEqual(
      expect.arrayContaining(["answer.json", "answer.txt", "pieces.csv", "quilt.svg"]),
    );
  });

  test("make never overwrites the brief it reads", async () => {
    await mkdir(join(folder, "own"), { recursive: true });
    await writeFile(join(folder, "own/brief.json"), sample());
    const { code, err } = await ranHere(["make", "own/brief.json", "--out", "own"]);
    expect(code).toBe(2);
    expect(err).toContain("would overwrite what was read");
    expect(await readFile(join(folder, "own/brief.json"), "utf8")).toBe(sample());
  });

  test("a shelf is not written over by what is left of it", async () => {
    await mkdir(join(folder, "shelf"), { recursive: true });
    const list = join(folder, "shelf/shelf-after.csv");
    await writeFile(list, "fabric,width,length\nRed,40,9 yd\nSand,40,9 yd\n");
    const before = await readFile(list, "utf8");
    const args = ["kits", "-", "--bolts", list, "--kits", "1", "--out", "shelf"];
    const { code, err } = await ranHere(args, sample());
    expect(code).toBe(2);
    expect(err).toContain("shelf-after.csv would overwrite what was read");
    expect(await readFile(list, "utf8")).toBe(before);
  });

  test("a brief an editor saves while a command has it stays as saved; half of one is refused", async () => {
    const file = join(folder, "edited.json");
    await writeFile(file, sample());
    const saved = sample({ title: "Saved meanwhile" });
    // As soon as the command says anything, the editor saves; by then it has read.
    let saving: Promise<void> | undefined;
    const making = ran(["make", file, "--out", join(folder, "edited")], "", {
      err: () => {
        saving ??= writeFile(file, saved);
      },
    });
    expect((await making).code).toBe(0);
    await saving;
    expect(saving).toBeDefined();
    expect(await readFile(file, "utf8")).toBe(saved);
    const answer = await readFile(join(folder, "edited/answer.json"), "utf8");
    expect(answer).toBe((await ranHere(["answer", "-", "--json"], sample())).out);

    await writeFile(file, saved.slice(0, saved.length / 2));
    const half = await ranHere(["make", file, "--out", "half"]);
    expect(half.code).toBe(2);
    expect(half.err).toMatch(/edited\.json: this is not JSON/);
    expect(await readdir(folder)).not.toContain("half");
  });

  test("a brief that came from turning round and was worked on since is not written over", async () => {
    const args = ["turn", "-", "--pin", "blocks = 9", "--free", "rows,columns", "--out", "found"];
    expect((await ranHere(args, sample())).code).toBe(0);
    expect((await ranHere(args, sample())).code).toBe(0);
    const mine = join(folder, "found/sentence-1.json");
    await writeFile(mine, sample({ title: "Mine" }));
    const { code, err } = await ranHere(args, sample());
    expect(code).toBe(3);
    expect(err).toContain("sentence-1.json is there already, and holds another design");
    expect(await readFile(mine, "utf8")).toBe(sample({ title: "Mine" }));
  });

  test.runIf(process.getuid?.() !== 0)(
    "a folder that cannot be written to is code 3, and nothing is left",
    async () => {
      await mkdir(join(folder, "shut"));
      await chmod(join(folder, "shut"), 0o555);
      expect((await ranHere(["make", "-", "--out", "shut"], sample())).code).toBe(3);
      expect(await readdir(join(folder, "shut"))).toEqual([]);
    },
  );

  test("a file where the folder should be is code 3", async () => {
    await writeFile(join(folder, "file"), "x");
    expect((await ranHere(["make", "-", "--out", "file/deep"], sample())).code).toBe(3);
  });
});

describe("help", () => {
  test("lists every command, and each has its own", async () => {
    const { out } = await ranHere(["--help"]);
    for (const name of ["new", "answer", "make", "check", "chart"]) {
      expect(out).toContain(`  ${name}`);
      const help = await ranHere([name, "--help"]);
      expect(help.code).toBe(0);
      expect(help.out).toContain(`usage: eighthwise ${name}`);
    }
  });
});

describe("as built", () => {
  const ROOT = resolve(import.meta.dirname, "../..");
  const bin = join(ROOT, ".cache/cli/eighthwise.js");
  const started = promisify(execFile);

  beforeAll(async () => {
    const config = join(ROOT, "vite.cli.config.ts");
    const outDir = join(ROOT, ".cache/cli");
    await build({ configFile: config, root: ROOT, logLevel: "error", build: { outDir } });
  });

  test("one file runs as a program, in a pipe that closes early too", async () => {
    const { stdout } = await started(process.execPath, [bin, "new"], { cwd: ROOT });
    expect(JSON.parse(stdout)).toMatchObject({ format: "eighthwise-brief" });
    await expect(
      started(process.execPath, [bin, "answer", "nowhere.json"], { cwd: ROOT }),
    ).rejects.toMatchObject({ code: 3 });
    const piped = await started("sh", [
      "-c",
      `"${process.execPath}" "${bin}" chart --by 1/64 | head -1`,
    ]);
    expect(piped.stdout).toContain("strip");
    expect(piped.stderr).toBe("");
  });

  describe("on a disk without room", () => {
    const SAMPLE = join(ROOT, "examples/harbor-mat.json");
    /** In a shell, so that a stream can be a full disk: /dev/full (full(4)); prlimit bounds files. */
    const shell = (before: string, line: string) =>
      started("sh", ["-c", `${before} "${process.execPath}" "${bin}" ${line}`], { cwd: ROOT });

    test("a result ends with code 3, and it is said", async () => {
      await expect(shell("", `answer "${SAMPLE}" > /dev/full`)).rejects.toMatchObject({
        code: 3,
        stderr: "eighthwise: cannot write the result: the disk is full\n",
      });
    });

    test("make leaves the files of the last time as they were, and nothing half written", async () => {
      const out = join(folder, "full");
      const line = `make "${SAMPLE}" --out "${out}" --date`;
      await shell("", `${line} 2026-11-25`);
      const before = await readdir(out);
      const pattern = await readFile(join(out, "pattern.pdf"));
      await expect(shell("prlimit --fsize=20000", `${line} 2026-11-26`)).rejects.toMatchObject({
        code: 3,
        stderr: expect.stringMatching(/cannot write to .*: larger than a file may be here/),
      });
      expect(await readdir(out)).toEqual(before);
      expect((await readFile(join(out, "pattern.pdf"))).equals(pattern)).toBe(true);
    });

    test("new leaves no file that is cut short", async () => {
      const file = join(folder, "short.json");
      await expect(shell("prlimit --fsize=100", `new "${file}"`)).rejects.toMatchObject({
        code: 3,
      });
      expect(await readdir(folder)).not.toContain("short.json");
    });
  });
});

describe("a question turned round", () => {
  test("pins and freed words give sentences, and their briefs open by themselves", async () => {
    const args = [
      "turn",
      "-",
      "--pin",
      "size = 30 x 22",
      "--free",
      "strip,columns",
      "--out",
      "turned",
    ];
    const { code, out } = await ranHere(args, sample());
    expect(code).toBe(0);
    expect(out).toContain("Pinned: size 30 × 22 in, within 2 in");
    expect(out).toMatch(/All \d+ sentences within the limits were weighed/);
    const [first] = (await readdir(join(folder, "turned"))).sort();
    const again = await ranHere(["answer", join(folder, "turned", first)]);
    expect(again.code).toBe(0);
  });

  test("as JSON after its schema; nothing that fits is code 1, with the pin to loosen", async () => {
    const args = ["turn", "-", "--json", "--pin", "yardage A <= 1/8 yd", "--free", "columns"];
    const { code, out } = await ranHere(args, sample());
    const json = JSON.parse(out);
    expect(code).toBe(1);
    expect(json).toMatchObject({ format: "eighthwise-turn", found: [], complete: true });
    expect(json.loosened[0].text).toMatch(/^at most 1\/8 yd of A \(Red\) → at most .+ yd/);
    const schema = JSON.parse(await readFile(resolve("docs/schema/turn.schema.json"), "utf8"));
    const fits = new Ajv({ strict: false }).compile(schema);
    fits(json);
    expect(fits.errors).toBeNull();
  });

  test.each([
    ["no pin", ["--free", "rows"], "pin an answer"],
    ["no word", ["--pin", "blocks = 9"], "Free a word at least"],
    ["a word there is not", ["--pin", "blocks = 9", "--free", "mood"], '"mood" is not a word'],
    ["a pin there is not", ["--pin", "joy = 3", "--free", "rows"], "is not a pin"],
    [
      "a fabric there is not",
      ["--pin", "yardage Q <= 1 yd", "--free", "rows"],
      "There are: A (Red)",
    ],
  ])("%s is refused with code 2 and what would do", async (_, more, words) => {
    const { code, err } = await ranHere(["turn", "-", ...more], sample());
    expect(code).toBe(2);
    expect(err).toContain(words);
  });
});
