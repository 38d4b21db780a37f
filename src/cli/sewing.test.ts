import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { answerBrief } from "../core/answer/compose.ts";
import { whyTables } from "../core/answer/index.ts";
import { type Brief, canonicalText, keepReading, readBrief } from "../core/brief/index.ts";
import { smallBrief } from "../core/brief/sample.ts";
import { ran } from "./ran.testing.ts";

/** One kite block of 8 in; the commands read it from standard input. */
const brief: Brief = smallBrief({
  ruler: { point: { blunt: "1/4" } },
  quilt: { rows: 1, columns: 1, plan: [["star"]] },
});
const TEXT = canonicalText(brief);
let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "eighthwise-sewing-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const given = (texts: readonly string[]) => texts.flatMap((t) => ["-m", t]);
const measured = (...texts: string[]) => ran(["measure", "-", ...given(texts)], TEXT);

describe("measure: what each stop should measure, and what was measured", () => {
  test("the list, in the marks of a ruler: no size of it is a decimal", async () => {
    const { code, out } = await measured();
    expect(code).toBe(0);
    expect(out).toMatch(/U1 +pair U1, edge to corner +4 9\/16 in \(1\/64 over\) +4 in/);
    expect(out).toContain("U2 gap");
    expect(out).not.toMatch(/\d\.\d/);
  });

  test("a half 1/16 small: let out, a range from the one reading, what follows shifted", async () => {
    const { code, out } = await measured("U2=8 7/16");
    expect(code).toBe(0);
    expect(out).toContain("U2: Let out: sew its 3 seams again, about 1/64 in narrower each.");
    expect(out).toMatch(/rests on one\s+measurement/);
    expect(out).toMatch(/anything from right to 1\/32 in too wide/);
    expect(out).toMatch(/Measure\s+another stop/);
    // The block, still to come, is as much smaller.
    expect(out).toMatch(/U3 .* 8 1\/2 in +8 in +8 7\/16 in\n/);
  });

  test("two readings need no such range; as planned is sewn on; far too small is cut again", async () => {
    const { out } = await measured("U1=4 9/16", "U2=8 1/2");
    expect(out).not.toContain("rests on one");
    expect(out).toContain("U2: Sew on.");
    expect((await measured("U2=8 1/16")).out).toContain("U2: Cut again");
    expect((await measured("U2 gap=1/16")).out).toMatch(/U2 gap: .*Take in:/);
  });

  test("typed in another unit it is the same size; a number of another unit is asked about", async () => {
    const { out } = await measured("U2=214 mm");
    expect(out).toContain("U2: Let out");
    for (const text of ["U2=214", "U2=0", "U2=-8", "U2=about nine", "U2=", "U2 gap=6"]) {
      const refused = await measured(text);
      expect([text, refused.code, refused.out]).toEqual([text, 2, ""]);
      expect(refused.err).toMatch(/^eighthwise: measure: U2/);
    }
    expect((await measured("U2=214")).err).toContain("Is this the same unit");
    const unknown = await measured("U77=8");
    expect([unknown.code, unknown.err]).toEqual([2, expect.stringContaining("U2 gap")]);
    expect((await ran(["measure", "-", "--block", "moon"], TEXT)).code).toBe(2);
  });

  test("kept in a new brief it is there the next time, and the answer has the same hash", async () => {
    const file = join(folder, "kept.json");
    await ran(["measure", "-", "-m", "U2=8 7/16", "-o", file], TEXT);
    const again = await ran(["measure", file, "--json"]);
    const tables = JSON.parse(again.out);
    const stop = tables
      .flatMap((t: { stops: { stop: string }[] }) => t.stops)
      .find((s: { stop: string }) => s.stop === "U2");
    expect(stop).toMatchObject({ typed: "8 7/16", verdict: { kind: "let-out" } });
    const read = readBrief(await readFile(file, "utf8"));
    if (!read.ok) throw new Error("the kept brief is refused");
    expect(answerBrief(read.brief).briefHash).toBe(answerBrief(brief).briefHash);
  });
});

describe("size: will it make size", () => {
  const sized = (...more: string[]) => ran(["size", "-", "--samples", "1000", ...more], TEXT);

  test("share, spread, the cut that helps or none, spare by her own cutting, seed and check", async () => {
    const { code, out } = await sized("--block", "star");
    expect(code).toBe(0);
    expect(out).toMatch(/\d+ of 100 star blocks reach 8 1\/2 in/);
    expect(out).toMatch(/19 of 20 measure 8 \d+\/\d+ in to 8/);
    expect(out).toMatch(/8 15\/32 in +\d+\.\d % +#{10,40}\n/);
    expect(out).toContain("No larger cut helps");
    expect(out).toMatch(/with every cut 1\/32 in small.*7\/64 in short/s);
    expect(out).toMatch(/1,000 blocks sewn in numbers, seed 1;.*standard\s+errors/s);
  });

  test("equal seeds give equal bytes; shares of the picture are all of it", async () => {
    const run = await sized("--json", "--seed", "7");
    expect((await sized("--json", "--seed", "7")).out).toBe(run.out);
    expect((await sized("--json", "--seed", "8")).out).not.toBe(run.out);
    const { blocks } = JSON.parse(run.out);
    expect(blocks.map((b: { block: string }) => b.block)).toEqual(["star"]);
    for (const b of blocks) expect(b.standardErrorsOffTheFormula).toBeLessThan(5);
  });

  test("a seam test and coarser cutting count", async () => {
    const plain = JSON.parse((await sized("--json", "--block", "star")).out).blocks[0];
    const { out } = await sized(
      "--json",
      "--block",
      "star",
      "--seam-test",
      "4=4 3/8",
      "--off",
      "1/16",
    );
    const wide = JSON.parse(out);
    expect(wide.maker.seamBias).toBeCloseTo(1 / 48, 9);
    expect(wide.blocks[0].share).toBeLessThan(plain.share);
    expect(wide.blocks[0].leftWhenCutsAreOff.left).toBeCloseTo(
      2 * plain.leftWhenCutsAreOff.left,
      9,
    );
  });

  test.each([
    [["--samples", "12"], "--samples"],
    [["--samples", "1e9"], "--samples"],
    [["--seed", "-1"], "--seed"],
    [["--off", "3"], "--off"],
    [["--off", "0"], "--off"],
    [["--off", "some"], "--off"],
    [["--seam-test", "5=4"], "strips: 4 (four strips cut 1 1/2 in)"],
    [["--seam-test", "4=114"], "far off"],
    [["--seam-test", "4="], "nothing is measured"],
    [["--block", "moon"], "in it: star"],
  ])("%j is refused", async (more, told) => {
    const { code, out, err } = await sized(...more);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain(told);
  });

  test("progress on a terminal when it takes its time; stopped is code 4, and half a sample is no answer", async () => {
    const stop = new AbortController();
    let told = "";
    const { code, out } = await ran(["size", "-", "--samples", "1000000"], TEXT, {
      terminal: true,
      signal: stop.signal,
      err: (text) => {
        told += text;
        stop.abort();
      },
    });
    expect(told).toMatch(/^star: \d+ % sewn\n/);
    expect([code, out]).toEqual([4, ""]);
  });
});

describe("why: the readings of the page", () => {
  const why = (...texts: string[]) => ran(["why", "-", ...given(texts)], TEXT);

  test("one reading: what is missing is asked for, each cause has its range", async () => {
    const { code, out } = await why("across-one=8 1/4");
    expect(code).toBe(0);
    expect(out).toContain("Measure also");
    expect(out).toContain("What would tell the most now: wedge-height.");
    expect(out).toMatch(/19 times in 20\s+between 1\/32 in and 1\/16 in/);
    expect(out).not.toMatch(/\d\.\d/);
  });

  test.each([
    ["across-one", "acrossOne", "-8"],
    ["across-one", "acrossOne", "0"],
    ["across-one", "acrossOne", "216"],
    ["across-one", "acrossOne", "eight"],
    ["across-one", "acrossOne", "900 yd"],
    ["half-gap", "halfGap", "9"],
    ["center-offset", "centerOffset", "-1/8"],
    ["wedge-height", "wedgeHeight", "114.3"],
  ])("%s=%3$s is refused in the words of the page", async (name, key, text) => {
    const { code, out, err } = await why(`${name}=${text}`);
    expect([code, out]).toEqual([2, ""]);
    const kept = structuredClone(brief);
    keepReading("star", key, text)(kept);
    const row = whyTables(kept, answerBrief(brief))[0].rows.find((r) => r.name === key);
    expect(row?.problem).toBeDefined();
    expect(err).toBe(`eighthwise: why: --measured ${name}: ${row?.problem}\n`);
  });

  test("readings kept in the brief count; none at all is asked for", async () => {
    expect((await why()).err).toContain("at least one reading");
    const file = join(folder, "why.json");
    await ran(["why", "-", "-m", "across-one=8 1/4", "-o", file], TEXT);
    const both = await ran(["why", file, "-m", "wedge-height=4 1/2", "-m", "wedge-base=4 1/16"]);
    expect(both.out).toMatch(/^The seams are about 3\/64 in too wide, .*\(a tie; 8\d in/m);
    // One wedge alone may be off by anything: no size is made up for it.
    expect(both.out).toMatch(/^One wedge differs from the others\. \(\d in 100\)$/m);
    const json = await ran(["why", file, "--json"]);
    expect(JSON.parse(json.out).causes.length).toBeGreaterThan(1);
    expect(canonicalText(JSON.parse(json.out))).toBe(json.out);
  });
});
