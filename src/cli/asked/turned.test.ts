import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { ran } from "../ran.testing.ts";

/** Questions of docs/asked.md as the command line answers them: a chart, and questions turned round. */
const said = async (...args: string[]): Promise<string> => (await ran(args)).out;

interface Row {
  strip: number;
  wedgesPerStrip: number;
}
const chart = async (usable: string) =>
  JSON.parse(
    await said(
      ...["chart", "--angle", "45", "--wedges", "8", "--seam", "1/4", "--folds", "0", "--json"],
      ...["--point", "sharp", "--usable", usable, "--from", "3", "--to", "8", "--by", "1/2"],
    ),
  ) as Row[];
const at = (rows: Row[], strip: number): Row => rows.find((r) => r.strip === strip) as Row;

describe("questions asked at the counter", () => {
  test("2. my fabric is only 40 wide: wedges of a strip at 42 and at 40", async () => {
    const [wide, narrow] = [await chart("42"), await chart("40")];
    // floor(L / (W tan 22.5)) - 1: arithmetic.
    for (const [strip, a, b] of [
      [3, 32, 31],
      [4.5, 21, 20],
      [6, 15, 15],
      [8, 11, 11],
    ])
      expect([at(wide, strip).wedgesPerStrip, at(narrow, strip).wedgesPerStrip]).toEqual([a, b]);
  });

  test("8. can I make it 60 x 72: the deep block comes exact as it is", async () => {
    const args = ["--pin", "size = 60 x 72 within 0", "--free", "rows,columns", "--json"];
    const json = JSON.parse(await said("turn", "examples/quiet-field.json", ...args));
    expect(json.found[0]).toMatchObject({ width: 60, height: 72, words: [] });
  });

  test("9. 9 and not 9.19: the block pinned with its strip freed", async () => {
    const args = ["--pin", "block = 9 within 0", "--free", "strip", "--json"];
    const json = JSON.parse(await said("turn", "examples/lantern-throw.json", ...args));
    // 5.403 lies between the marks: nothing on the ruler is exact, and the pin to loosen is named.
    expect(json.found).toEqual([]);
    expect(json.loosened[0].to.within).toBeCloseTo(9 - 8.943, 2);
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
