import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { say } from "../findings/index.ts";
import { knownLength, stepOf } from "../measure/index.ts";
import { csvText, readTable } from "../table/index.ts";
import { readStock } from "./stock.ts";

const codes = (text: string) => readStock(text, "in").findings.map((f) => [f.place, f.code]);
const rows = (text: string) =>
  readStock(text, "in").pieces.map((p) => [p.fabric, p.kind, p.width, p.length, p.count]);

describe("a stock list", () => {
  test("with a heading in any order, units in the heading, kinds, costs and notes", () => {
    const text =
      "Note,Kind,Length (yd),Fabric,Width,How many,Cost\r\n" +
      'left shelf,bolt,2 1/2,Reed,40,,"12,50"\r\n' +
      ',quarter,18 in,"Sand, pale",21,3,$9.80\r\n';
    expect(readStock(text, "in")).toEqual({
      findings: [],
      heading: "Note | Kind | Length (yd) | Fabric | Width | How many | Cost",
      leftOut: [],
      pieces: [
        {
          line: 2,
          fabric: "Reed",
          kind: "bolt",
          width: "40",
          length: "2 1/2 yd",
          count: 1,
          cost: 1250,
          note: "left shelf",
        },
        {
          line: 3,
          fabric: "Sand, pale",
          kind: "quarter",
          width: "21",
          length: "18 in",
          count: 3,
          cost: 980,
        },
      ],
    });
  });

  test("typed without a heading: fabric, width, length, how many; a size in one cell", () => {
    expect(rows("Reed, 40, 2 yd\nSand, 18 x 21, , 3\nRust, 18 by 21 in\n")).toEqual([
      ["Reed", "scrap", "40", "2 yd", 1],
      ["Sand", "scrap", "18", "21", 3],
      ["Rust", "scrap", "18 in", "21 in", 1],
    ]);
  });

  test.each([
    ["semicolons and decimal commas", "fabric;width;length\nReed;45,5 cm;1,25 m"],
    ["tabs from a spreadsheet", "fabric\twidth\tlength\nReed\t45,5 cm\t1,25 m"],
    ["bars", "fabric|width|length\nReed|45,5 cm|1,25 m"],
    ["quotes", '"fabric","width","length"\n"Reed","45,5 cm","1,25 m"'],
    ["a byte order mark and old line ends", "\uFEFFfabric;width;length\rReed;45,5 cm;1,25 m\r"],
  ])("%s", (_, text) => {
    expect(rows(text)).toEqual([["Reed", "scrap", "45,5 cm", "1,25 m", 1]]);
  });

  test.each([
    ["12.95", 1295],
    ["$12,5", 1250],
    ["$12.95/yd", 1295],
    ["9.80 € a meter", 980],
    ["3 for 5", undefined],
    ["-3", undefined],
    ["12.345", undefined],
    ["99999999", undefined],
  ])("a price of %s", (text, cents) => {
    const { pieces, findings } = readStock(`fabric;width;length;cost\nReed;40;9;${text}`, "in");
    expect(pieces[0].cost).toBe(cents);
    expect(findings.map((f) => f.code)).toEqual(cents === undefined ? ["stock-cost-not-read"] : []);
  });

  test("every bad row is told by its line and kept aside; the good ones are read", () => {
    const text = [
      "fabric,width,length,how many,cost",
      "Reed,40,0,1,",
      "Reed,40,-3,1,",
      "Reed,40,some,1,",
      "Reed,40,,1,",
      ",40,12,1,",
      "Reed,18,5,21,5,3",
      "Reed,40,12,0,",
      "Reed,40,12,1 1/2,",
      "Reed,40,12,2,dear",
      "",
      "Reed,40,12,2,",
    ].join("\n");
    expect(codes(text)).toEqual([
      ["line 2", "stock-not-positive"],
      ["line 3", "stock-not-positive"],
      ["line 4", "stock-cell-not-read"],
      ["line 5", "stock-cell-missing"],
      ["line 6", "stock-cell-missing"],
      ["line 7", "stock-too-many-cells"],
      ["line 8", "stock-count"],
      ["line 9", "stock-count"],
      ["line 10", "stock-cost-not-read"],
    ]);
    const list = readStock(text, "in");
    expect(list.pieces.map((p) => p.line)).toEqual([10, 12]);
    expect(list.leftOut.map((r) => r.line)).toEqual([2, 3, 4, 5, 6, 7, 8, 9]);
    expect(list.leftOut[5].text).toBe("Reed | 18 | 5 | 21 | 5 | 3");
    for (const f of list.findings)
      expect(say(f, { step: stepOf("1/8", "in") })).toMatch(/^line \d+.+\.$/);
  });

  test("a missing column leaves every row out, and says which columns there are", () => {
    const list = readStock("fabric,width\nReed,40\nSand,18", "in");
    expect(list.findings[0]).toMatchObject({ code: "stock-column-missing", place: "line 1" });
    expect(list.leftOut).toHaveLength(2);
  });

  test("a quote that is never shut spoils its row alone", () => {
    const list = readStock('fabric,width,length\nSand,18,21\n"Reed,40,12\nRust,18,21', "in");
    expect(list.pieces.map((p) => p.fabric)).toEqual(["Sand"]);
    expect(list.findings.map((f) => f.code)).toEqual(["stock-quote-open"]);
    expect(list.leftOut[0].text).toContain("Rust");
  });

  test("nothing, a heading alone, and too many rows", () => {
    expect(codes("")).toEqual([["list", "stock-empty"]]);
    expect(codes("fabric,width,length\n")).toEqual([["list", "stock-empty"]]);
    const many = `fabric,width,length\n${"Reed,40,12\n".repeat(2003)}`;
    const list = readStock(many, "in");
    expect([list.pieces.length, list.leftOut.length]).toEqual([2000, 3]);
    expect(list.findings[0].code).toBe("stock-too-many-rows");
  });

  test("a bolt whose width is not said takes its fabric's; any other piece needs one", () => {
    expect(rows("fabric,kind,length\nReed,bolt,2 yd\nSand,,1 yd")).toEqual([
      ["Reed", "bolt", undefined, "2 yd", 1],
      ["Sand", "bolt", undefined, "1 yd", 1],
    ]);
    expect(codes("fabric,kind,length\nReed,scrap,12")).toEqual([["line 2", "stock-cell-missing"]]);
  });

  test("a formula stays text: inert when written, itself when read again", () => {
    const name = '=HYPERLINK("http://example.invalid";"x")';
    const out = csvText([
      ["fabric", "width", "length"],
      [name, 40, 12],
    ]);
    expect(out.split("\r\n")[1]).toBe(`"'=HYPERLINK(""http://example.invalid"";""x"")",40,12`);
    expect(readStock(out, "in").pieces[0].fabric).toBe(name);
  });

  test("law: any names written are read again, whatever they hold", () => {
    const name = fc
      .string({ minLength: 1, maxLength: 30 })
      .map((s) => s.replace(/\r\n?/g, "\n").trim())
      .filter((s) => s !== "" && !/^'[=+\-@]/.test(s));
    fc.assert(
      fc.property(fc.array(name, { minLength: 1, maxLength: 6 }), (names) => {
        const text = csvText([["fabric", "width", "length"], ...names.map((n) => [n, 40, 12])]);
        expect(readStock(text, "in").pieces.map((p) => p.fabric)).toEqual(names);
      }),
      { seed: 1018, numRuns: 200 },
    );
  });

  test("law: no text at all makes it throw, and no row is lost", () => {
    const cell = fc.constantFrom(
      "Reed",
      "18",
      "1,5",
      "-2",
      '"',
      "=1+1",
      "",
      ";",
      "\t",
      "2 yd",
      "x",
    );
    const text = fc.array(fc.array(cell, { maxLength: 6 }), { maxLength: 8 });
    fc.assert(
      fc.property(text, fc.constantFrom(",", ";", "\t"), (lines, by) => {
        const given = `fabric${by}width${by}length\n${lines.map((l) => l.join(by)).join("\n")}`;
        const list = readStock(given, "in");
        const table = readTable(given);
        for (const p of list.pieces) expect(knownLength(p.length, "in")).toBeGreaterThan(0);
        const headed = list.findings.every((f) => f.code !== "stock-empty");
        if (headed && table.rows[0].line === 1)
          expect(list.pieces.length + list.leftOut.length).toBeGreaterThanOrEqual(
            table.rows.length - 1,
          );
      }),
      { seed: 2218, numRuns: 300 },
    );
  });
});
