import type { BlockGeometry } from "../block/types.ts";
import { type Brief, blockIn } from "../brief/index.ts";
import { cellAt } from "../quilt/index.ts";
import type { Grid } from "./grid.ts";
import { type Pressing, type PressStyle, press } from "./pressing.ts";
import type { PatchKey } from "./same.ts";

/**
 * The rows of a quilt as pressing sees them, or undefined where blocks do not lie edge to edge in
 * rows (sashing between them, shifted rows, on point, hexagons): there no seam of one block meets another's, or
 * only at points where many meet, and every block is pressed by itself. A repeat is looked at whole,
 * but no more of the quilt than shows every pair of neighbors.
 */
export function gridOf(quilt: Brief["quilt"]): Grid | undefined {
  if (quilt.arrangement !== "rows" || quilt.sashing || quilt.offset) return undefined;
  return {
    rows: Math.min(quilt.rows, mostOf([quilt.plan.length])),
    columns: Math.min(quilt.columns, mostOf(quilt.plan.map((row) => row.length))),
    cell: (r, c) => {
      const cell = cellAt(quilt.plan, r, c);
      const turned = typeof cell === "string" ? { quarters: 0, mirrored: false } : cell;
      return { blockId: blockIn(cell), quarters: turned.quarters, mirrored: turned.mirrored };
    },
  };
}

/** Two whole repeats, of an even number each: every pair of neighbors there is, both ways of a row. */
function mostOf(lengths: readonly number[]): number {
  const repeat = lengths.reduce((a, b) => (a * b) / greatestCommon(a, b), 2);
  return Math.min(2 * repeat, MOST_LOOKED_AT);
}

const MOST_LOOKED_AT = 40;
const greatestCommon = (a: number, b: number): number => (b === 0 ? a : greatestCommon(b, a % b));

/** All kinds of block of a quilt pressed together, so that they nest where they meet too. */
export function pressFor(
  blocks: readonly BlockGeometry[],
  quilt: Brief["quilt"],
  key: PatchKey,
  near: number,
  style: PressStyle = "side",
): Pressing {
  const all = gridOf(quilt);
  const known = new Set(blocks.map((b) => b.id));
  const placed =
    all &&
    quilt.plan.every((row) => row.every((cell) => known.has(blockIn(cell)))) &&
    all.rows * all.columns > 1;
  return press(blocks, { style, key, near, ...(placed && { grid: all }) });
}
