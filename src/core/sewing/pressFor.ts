import type { BlockGeometry } from "../block/types.ts";
import { type Brief, blockIn } from "../brief/index.ts";
import { cellAt } from "../quilt/index.ts";
import type { Grid } from "./grid.ts";
import { type Pressing, type PressStyle, press } from "./pressing.ts";
import type { PatchKey } from "./same.ts";

/**
 * The rows of a quilt as pressing sees them, or undefined where blocks do not lie edge to edge in
 * rows (sashing between them, on point, hexagons): there no seam of one block meets another's, or
 * only at points where many meet, and every block is pressed by itself. A repeat is looked at whole,
 * but no more of the quilt than shows every pair of neighbors.
 */
export function gridOf(quilt: Brief["quilt"]): Grid | undefined {
  if (quilt.arrangement !== "rows" || quilt.sashing) return undefined;
  return {
    rows: quilt.rows,
    columns: quilt.columns,
    cell: (r, c) => {
      const cell = cellAt(quilt.plan, r, c);
      const turned = typeof cell === "string" ? { quarters: 0, mirrored: false } : cell;
      return { blockId: blockIn(cell), quarters: turned.quarters, mirrored: turned.mirrored };
    },
  };
}

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
