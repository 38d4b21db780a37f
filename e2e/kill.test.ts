import { expect, test } from "vitest";
import { killInMidEdit } from "./killing.ts";

const SEED = 4;

// The long form is scripts/fault-kill.ts.
test(`a browser killed in mid-edit loses no edit that was kept (seed ${SEED})`, async () => {
  const { kills, confirmed, lost, took, taken } = await killInMidEdit(6, SEED, { takeEvery: 3 });
  expect(kills).toBe(6);
  expect(took).toBe(2);
  expect(taken).toBe(2);
  expect(confirmed).toBeGreaterThan(6);
  expect(lost).toEqual([]);
});
