import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { ran } from "./ran.testing.ts";

/** The questions of docs/asked.md that end in a number. Arithmetic unless a source is named. */
const said = async (...args: string[]): Promise<string> => (await ran(args)).out;

interface Row {
  strip: number;
  finished: number;
  wedgesPerStrip: number;
}
const chart = async (point: string, usable: string, from: string, to: string, by = "1/2") =>
  JSON.parse(
    await said(
      ...["chart", "--angle", "45", "--wedges", "8", "--seam", "1/4", "--folds", "0", "--json"],
      ...["--point", point, "--usable", usable, "--from", from, "--to", to, "--by", by],
    ),
  ) as Row[];
const at = (rows: Row[], strip: number): Row => rows.find((r) => r.strip === strip) as Row;

describe("questions asked at the counter", () => {
  test("2. my fabric is only 40 wide: wedges of a strip at 42 and at 40", async () => {
    const [wide, narrow] = [
      await chart("sharp", "42", "3", "8"),
      await chart("sharp", "40", "3", "8"),
    ];
    // floor(L / (W tan 22.5)) - 1: arithmetic.
    for (const [strip, a, b] of [
      [3, 32, 31],
      [4.5, 21, 20],
      [6, 15, 15],
      [8, 11, 11],
    ])
      expect([at(wide, strip).wedgesPerStrip, at(narrow, strip).wedgesPerStrip]).toEqual([a, b]);
  });

  test("3. I only have quarters: 10 wedges of a 21 in strip, 8 of an 18 in one", async () => {
    expect(at(await chart("sharp", "21", "4 1/2", "4 1/2"), 4.5).wedgesPerStrip).toBe(10);
    expect(at(await chart("sharp", "18", "4 1/2", "4 1/2"), 4.5).wedgesPerStrip).toBe(8);
  });

  test("8. can I make it 60 x 72: the next line up, 7, and the deep block that comes exact", async () => {
    const { finished } = at(await chart("sharp", "40", "7", "7"), 7);
    expect([5 * finished, 6 * finished].map((x) => x.toFixed(2))).toEqual(["60.97", "73.16"]);
    const args = ["--pin", "size = 60 x 72 within 0", "--free", "rows,columns", "--json"];
    const json = JSON.parse(await said("turn", "examples/quiet-field.json", ...args));
    expect(json.found[0]).toMatchObject({ width: 60, height: 72, words: [] });
  });

  test("9. 9 and not 9.19: what a 5 1/2 strip makes, and the block pinned with its strip freed", async () => {
    expect(at(await chart("sharp", "40", "5 1/2", "5 1/2"), 5.5).finished).toBeCloseTo(9.193, 3);
    const args = ["--pin", "block = 9 within 0", "--free", "strip", "--json"];
    const json = JSON.parse(await said("turn", "examples/lantern-throw.json", ...args));
    // 5.403 lies between the marks: nothing on the ruler is exact, and the pin to loosen is named.
    expect(json.found).toEqual([]);
    expect(json.loosened[0].to.within).toBeCloseTo(9 - 8.943, 2);
  });

  test("10. two rulers, one number: 7.193 with a sharp point, 8 with a blunt one", async () => {
    expect(at(await chart("sharp", "40", "4 1/2", "4 1/2"), 4.5).finished).toBeCloseTo(7.193, 3);
    expect(at(await chart("blunt", "40", "4 1/2", "4 1/2"), 4.5).finished).toBeCloseTo(8, 9);
  });

  test("11. my ruler stops at 5: the strip is freed, and stays under it", async () => {
    const args = ["--pin", "ruler <= 5", "--free", "strip", "--json"];
    const json = JSON.parse(await said("turn", "examples/lantern-throw.json", ...args));
    expect(json.found[0].brief.blocks[0].strip).toBe("5");
  });
});

test("every question has its number, its way and no empty cell", () => {
  const text = readFileSync("docs/asked.md", "utf8");
  const rows = text.split("\n").filter((l) => /^\| \d+ \|/.test(l));
  expect(rows.map((r) => Number(r.split("|")[1])).sort((a, b) => a - b)).toEqual(
    Array.from({ length: 32 }, (_, i) => i + 1),
  );
  for (const r of rows)
    expect(
      r
        .split("|")
        .slice(1, 4)
        .every((c) => c.trim() !== ""),
    ).toBe(true);
});
