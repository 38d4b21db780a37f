import { resolve } from "node:path";
import { expect, test } from "vitest";
import { allows, installed, knownFaults, refused } from "./licenses.mjs";

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

test("known faults are counted where a registry answers; where none does, that is no fault", () => {
  const vulnerabilities = { info: 0, low: 2, moderate: 1, high: 1, critical: 1, total: 5 };
  const answered = JSON.stringify({ auditReportVersion: 2, metadata: { vulnerabilities } });
  expect(knownFaults(answered)).toEqual({ total: 5, grave: 2 });
  for (const none of [
    '{"message": "405 Method Not Allowed", "statusCode": 405}',
    '{"error": {"code": "ENOTFOUND"}}',
    "",
    null,
  ])
    expect(knownFaults(none)).toBeUndefined();
});
