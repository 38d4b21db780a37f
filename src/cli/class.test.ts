import { mkdtemp, readdir, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { ran } from "./ran.testing.ts";

const BRIEF = resolve(import.meta.dirname, "../../examples/tidepool-runner.json");
let folder: string;
let list: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "eighthwise-class-"));
  list = join(folder, "class.csv");
  await writeFile(
    list,
    "Name;Usable;Longest;Strips;Width;Size\nWren;20;;3;1 1/2;3 3/8\nLark;;8;;;\n;40;;;;\nFinch;wide;;;;\nSwift;;;3;1 1/2;\n",
  );
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test("a class with students of their own; rows that cannot be trusted are told and left out", async () => {
  const out = join(folder, "out");
  const r = await ran(["class", BRIEF, "--students", list, "--hours", "6", "--out", out]);
  expect(r.code).toBe(0);
  expect(r.out).toContain("in 6 h a student finishes");
  expect(r.out).toContain("What Wren brings (fabric 20 usable)");
  expect(r.out).toContain("Seam of Wren");
  expect(r.err).toMatch(/line 4 has no name.+line 5 has "wide".+line 6 has half a seam test/s);
  expect((await readdir(out)).sort()).toEqual([
    "class-everyone.pdf",
    "class-lark.pdf",
    "class-teacher.pdf",
    "class-wren.pdf",
    "minutes.csv",
  ]);
});

test("wrong numbers are told by their option", async () => {
  expect(await ran(["class", BRIEF, "--irons", "none"])).toMatchObject({ code: 2 });
  expect(await ran(["class", BRIEF, "--students", join(folder, "no.csv")])).toMatchObject({
    code: 3,
  });
});

test("students whom no brief could hold are told with their line; a class holds sixty", async () => {
  const rows = [
    `${"x".repeat(119)}\u{1F9F5},,`,
    "Wren\u0007,,",
    "Lark,99999,",
    "Swift,,0.0001",
    ...Array.from({ length: 58 }, (_, i) => `Finch ${i},40,`),
  ];
  await writeFile(list, `name,usable,longest\n${rows.join("\n")}\n`);
  const { code, out, err } = await ran(["class", BRIEF, "--students", list, "--json"]);
  expect(code).toBe(0);
  expect(err).toMatch(
    /line 2 has a name.*line 3 has a name.*line 4 has a usable.*line 5 has a longest/s,
  );
  expect(err).toMatch(/at most 60; what follows line 61 is left out/);
  expect(JSON.parse(out).students).toHaveLength(56);
});

test("a number that no brief could hold is refused with its place", async () => {
  const { code, err } = await ran(["class", BRIEF, "--hours", "0.1"]);
  expect(code).toBe(2);
  expect(err).toMatch(/class: class\/hours: /);
});
