import type { BlockGeometry } from "../block/types.ts";
import { type Brief, blockIn } from "../brief/index.ts";
import { layOutQuilt, type TopItem, type TopRows, topRows } from "../quilt/index.ts";
import { type Pressing, type PressStyle, press } from "./pressing.ts";
import type { PatchKey } from "./same.ts";

/**
 * The rows of a quilt as pressing sees them, or undefined where its blocks do not lie together or
 * there is but one. A repeat is looked at whole, but no more of the quilt than shows every pair of
 * neighbors.
 */
export function rowsToPress(blocks: readonly BlockGeometry[], brief: Brief): TopRows | undefined {
  const { plan, rows, columns } = brief.quilt;
  const few: Brief = {
    ...brief,
    quilt: {
      ...brief.quilt,
      rows: Math.min(rows, mostOf([plan.length])),
      columns: Math.min(columns, mostOf(plan.map((row) => row.length))),
    },
  };
  const { geometry } = layOutQuilt(few, blocks);
  const outlines = new Map(blocks.map((b) => [b.id, b.outline]));
  if (!geometry) return undefined;
  const top = topRows(few, geometry, (id) => outlines.get(id));
  return top.rows.flatMap((r) => r.items).length > 1 ? top : undefined;
}

/** Two whole repeats, of an even number each: every pair of neighbors there is, both ways of a row. */
function mostOf(lengths: readonly number[]): number {
  const repeat = lengths.reduce((a, b) => (a * b) / greatestCommon(a, b), 2);
  return Math.min(2 * repeat, MOST_LOOKED_AT);
}

const MOST_LOOKED_AT = 40;
const greatestCommon = (a: number, b: number): number => (b === 0 ? a : greatestCommon(b, a % b));

/** Every second block of a row, by its place: on point every second line of them, else as on a checkerboard. */
export const secondBlocks =
  ({ arrangement }: Pick<Brief["quilt"], "arrangement">) =>
  ({ id }: TopItem): boolean => {
    const place = /^r(\d+)c(\d+)/.exec(id);
    if (!place) return false;
    const [r, c] = [Number(place[1]), Number(place[2])];
    return (arrangement === "on-point" ? r - 1 : r + c) % 2 === 1;
  };

/**
 * All kinds of block of a quilt pressed together, so that they nest where they meet too. `wholes` are
 * the blocks of the plan where the quilt has halves of them alone.
 */
export function pressFor(
  blocks: readonly BlockGeometry[],
  brief: Brief,
  key: PatchKey,
  near: number,
  style: PressStyle = "side",
  wholes: readonly BlockGeometry[] = [],
): Pressing {
  const { quilt } = brief;
  const there = new Set(blocks.map((b) => b.id));
  const laid = [...blocks, ...wholes.filter((b) => !there.has(b.id))];
  const known = new Set(laid.map((b) => b.id));
  const all = quilt.plan.every((row) => row.every((cell) => known.has(blockIn(cell))));
  const rows = all ? rowsToPress(laid, brief) : undefined;
  // Where sashes part them no block meets another; halves of hexagons are pressed each by itself.
  const checkered = rows && !quilt.sashing && quilt.arrangement !== "hexagon-rows";
  return press(blocks, {
    style,
    key,
    near,
    ...(rows && { rows }),
    ...(checkered && { second: secondBlocks(quilt) }),
  });
}
