import { type Brief, blockIn, type Placed } from "../brief/index.ts";

type Plan = Brief["quilt"]["plan"];

/** The cell of the repeating plan that falls at row r, column c (both from 0, row 0 at the top). */
export function cellAt(plan: Plan, r: number, c: number): Placed {
  const row = plan[wrapped(r, plan.length)];
  return row[wrapped(c, row.length)];
}

const wrapped = (i: number, period: number): number => ((i % period) + period) % period;

/**
 * How many blocks of each kind a quilt of `rows` by `columns` holds. Works on the plan's repeat, so
 * its cost does not grow with the quilt.
 */
export function countKinds(plan: Plan, rows: number, columns: number): Record<string, number> {
  const counts: Record<string, number> = {};
  plan.forEach((row, r) => {
    const rowTimes = timesOf(r, plan.length, rows);
    row.forEach((cell, c) => {
      const n = rowTimes * timesOf(c, row.length, columns);
      if (n > 0) counts[blockIn(cell)] = (counts[blockIn(cell)] ?? 0) + n;
    });
  });
  return counts;
}

/** How often index i of a repeat of length `period` falls among 0 .. total - 1. */
const timesOf = (i: number, period: number, total: number): number =>
  i >= total ? 0 : Math.floor((total - 1 - i) / period) + 1;
