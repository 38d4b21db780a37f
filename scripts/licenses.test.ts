import { resolve } from "node:path";
import { expect, test } from "vitest";
import { allows, installed, refused } from "./licenses.mjs";

test("every installed package may be used where it is used", () => {
  const packages = installed(resolve(import.meta.dirname, ".."));
  expect(packages.length).toBeGreaterThan(100);
  expect(refused(packages)).toEqual([]);
});

test("an expression is read as SPDX means it; a license that is not known may not be", () => {
  expect(allows("(MIT OR GPL-3.0-only)", ["MIT"])).toBe(true);
  expect(allows("MIT AND GPL-3.0-only", ["MIT"])).toBe(false);
  const tool = { place: "a", license: "MPL-2.0", tool: true };
  expect(refused([tool])).toEqual([]);
  for (const other of [
    { ...tool, tool: false },
    { ...tool, license: "none" },
  ])
    expect(refused([other])).toEqual([other]);
});
