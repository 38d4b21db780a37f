import { type Brief, blockIn, type Placed } from "../brief/index.ts";
import type { Length } from "../measure/index.ts";
import type { PlacedBlock } from "./types.ts";

type Plan = Brief["quilt"]["plan"];

/** The cell of the repeating plan that falls at row r, column c (both from 0, row 0 at the top). */
export function cellAt(plan: Plan, r: number, c: number): Placed {
  const row = plan[r % plan.length];
  return row[c % row.length];
}

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

/** Where every block lies: quilt frame, origin at the center of the quilt, y up. */
export function* placeRows(
  plan: Plan,
  rows: number,
  columns: number,
  pitch: { readonly x: Length; readonly y: Length },
): Generator<PlacedBlock> {
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      const cell = cellAt(plan, r, c);
      const turned = typeof cell === "string" ? { quarters: 0, mirrored: false } : cell;
      yield {
        id: `r${r + 1}c${c + 1}`,
        blockId: blockIn(cell),
        at: {
          turn: (turned.quarters * Math.PI) / 2,
          x: (c - (columns - 1) / 2) * pitch.x,
          y: ((rows - 1) / 2 - r) * pitch.y,
          mirrored: turned.mirrored,
        },
      };
    }
  }
}
