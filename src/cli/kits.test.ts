import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { ran } from "./ran.testing.ts";

const BRIEF = resolve(import.meta.dirname, "../../examples/tidepool-runner.json");
let folder: string;
let shelf: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "eighthwise-kits-"));
  shelf = join(folder, "shelf.csv");
  await writeFile(
    shelf,
    'Fabric;Kind;Length;Cost\nKelp;bolt;8 yd;12,95\nFoam;bolt;433;11\nCurrent;bolt;14 yd;13,50\nBasalt;bolt;5 yd;9,80\nRust;bolt;-3;4\n"=CMD()";bolt;2 yd;1\n',
  );
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test("kits from a shelf with semicolons, decimal commas, a bad row and a bolt of another name", async () => {
  const r = await ran(["kits", BRIEF, "--bolts", shelf, "--from", "Shell=Foam"]);
  expect(r.code).toBe(0);
  expect(r.out).toContain("9 kits can be cut.");
  expect(r.out).toContain("Basalt: 1 in more on one bolt gives 10 kits.");
  expect(r.err).toContain("line 6");
});

test("everything is written: sheets, lists, and the shelf after the run with formulas inert", async () => {
  const out = join(folder, "out");
  const args = ["--from", "shell=Foam", "-n", "6", "--out", out, "--date", "2026-11-25"];
  expect((await ran(["kits", BRIEF, "--bolts", shelf, ...args])).code).toBe(0);
  expect((await readdir(out)).sort()).toEqual([
    "kit-costs.pdf",
    "kit-labels.pdf",
    "labels.csv",
    "run-sheet.pdf",
    "run.csv",
    "shelf-after.csv",
  ]);
  const after = await readFile(join(out, "shelf-after.csv"), "utf8");
  // Six kits of 18 and an end of 1 from 180.
  expect(after).toContain("Basalt,bolt,,71 in,9.80");
  expect(after).toContain("'=CMD()");
  const cuts = (await readFile(join(out, "run.csv"), "utf8")).trim().split("\r\n");
  expect(cuts).toHaveLength(1 + 4 + 24);
});

test("more than the bolts give is told, with code 1; wrong words are told by their option", async () => {
  const short = await ran([
    "kits",
    BRIEF,
    "--bolts",
    shelf,
    "--from",
    "Shell=Foam",
    "--kits",
    "12",
  ]);
  expect(short.code).toBe(1);
  expect(short.out).toContain("12 kits are wanted, 9 can be cut.");
  for (const [option, value] of [
    ["--kits", "0"],
    ["--basis", "metres"],
    ["--from", "Nothing=Foam"],
    ["--from", "Shell"],
    ["--labels", "round"],
  ])
    expect(await ran(["kits", BRIEF, "--bolts", shelf, option, value])).toMatchObject({ code: 2 });
  expect((await ran(["kits", BRIEF, "--bolts", join(folder, "none.csv")])).code).toBe(3);
});

test("what was handed out is remembered; after a change it is told, with a slip to print", async () => {
  const kept = join(folder, "kept.json");
  const args = [
    "--handed-out",
    "pattern",
    "--to",
    "spring class",
    "--date",
    "2026-11-25",
    "-o",
    kept,
  ];
  expect((await ran(["record", BRIEF, ...args])).code).toBe(0);
  expect((await ran(["ripple", kept])).out).toBe("Nothing that left this design is wrong.\n");
  const brief = JSON.parse(await readFile(kept, "utf8"));
  brief.quilt.rows += 1;
  await writeFile(kept, JSON.stringify(brief));
  expect((await ran(["check", kept])).err).toContain(
    "One thing that left this design is now wrong.",
  );
  const out = join(folder, "slip");
  const told = await ran(["ripple", kept, "--out", out]);
  expect(told.out).toContain("the top, finished: it says 64 × 24 in; read 64 × 32 in");
  expect((await readdir(out)).sort()).toEqual(["brief-corrected.json", "correction.pdf"]);
  const corrected = await ran(["ripple", join(out, "brief-corrected.json")]);
  expect(corrected.out).toBe("Nothing that left this design is wrong.\n");
  expect(await ran(["record", BRIEF, "--printed", "poster"])).toMatchObject({ code: 2 });
});

test("what would leave a brief that does not open again is not noted", async () => {
  for (const given of [
    ["--to", "Wren\u0007"],
    ["--edition", "1\u202e2"],
    ["--to", `${"x".repeat(119)}\u{1F9F5}`],
  ]) {
    const { code, out, err } = await ran(["record", BRIEF, "--handed-out", "pattern", ...given]);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(/^eighthwise: record: record\/\d+\/\w+: .*control characters/);
  }
});
