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
