import { type Length, roundDown, roundNearest, roundUp, type Step } from "../measure/index.ts";
import { hexagonSize } from "./hexagons.ts";
import { onPointSize } from "./onPoint.ts";
import { centerSize } from "./sashing.ts";
import type { Arrangement } from "./types.ts";

/** What decides the size of a finished top, apart from its rows and columns. */
export interface TopShape {
  readonly arrangement: Arrangement;
  /** Finished block; a hexagon by its width across flats. */
  readonly block: { readonly width: Length; readonly height: Length };
  readonly sash: Length;
  /** All borders of one side together. */
  readonly borders: Length;
}

/** The finished top, from its shape alone: the same numbers as laying the quilt out. */
export function topSize(
  shape: TopShape,
  rows: number,
  columns: number,
): { readonly width: Length; readonly height: Length } {
  const { width, height } = centerOf(shape, rows, columns);
  return { width: width + 2 * shape.borders, height: height + 2 * shape.borders };
}

function centerOf({ arrangement, block, sash }: TopShape, rows: number, columns: number) {
  const { width, height } = block;
  if (arrangement === "on-point") return onPointSize({ rows, columns, side: width, sash });
  if (arrangement === "hexagon-rows") return hexagonSize({ rows, columns, flats: width });
  return centerSize({ rows, columns, width, height, sash, sashing: undefined });
}

/** What may change to bring a quilt to size: blocks alone, or blocks and one length. */
export type SizeWay = "blocks" | "float" | "strip" | "sashing" | "borders";

/** The one length that is free, and the shape it makes. Every side of the top is a line in it. */
export interface FreeLength {
  readonly way: Exclude<SizeWay, "blocks">;
  /** As it is now; 0 where the quilt has none. */
  readonly now: Length;
  readonly least: Length;
  readonly most: Length;
  readonly shape: (length: Length) => TopShape;
}

export interface Wanted {
  readonly width: Length;
  readonly length: Length;
}

/** The nearest that one way comes to a size. */
export interface SizePlan {
  readonly way: SizeWay;
  readonly rows: number;
  readonly columns: number;
  /** The length that changes, on the maker's ruler; absent by blocks alone. */
  readonly length?: Length;
  /** The same before it was rounded. */
  readonly exactLength?: Length;
  /** It brings a part the quilt does not have now: its first sashing or border. */
  readonly adds: boolean;
  /** Finished top. */
  readonly width: Length;
  readonly height: Length;
  /** Above 0: more than asked for; below 0: less. */
  readonly over: Wanted;
}

/** Most rows or columns looked at: larger than any bed. */
const MOST_ACROSS = 100;

/** The larger of the two differences. */
export const missedBy = (p: Pick<SizePlan, "over">): Length =>
  Math.max(Math.abs(p.over.width), Math.abs(p.over.length));

/** Rows and columns nearest to the size, the rest left as it is. Each side is looked at by itself. */
export function planByBlocks(shape: TopShape, wanted: Wanted): SizePlan {
  const one = topSize(shape, 1, 1);
  const two = topSize(shape, 2, 2);
  const nearest = (first: Length, pitch: Length, size: Length): number =>
    Math.min(MOST_ACROSS, Math.max(1, Math.round(1 + (size - first) / pitch)));
  const columns = nearest(one.width, two.width - one.width, wanted.width);
  const rows = nearest(one.height, two.height - one.height, wanted.length);
  return { way: "blocks", adds: false, ...sized(shape, rows, columns, wanted) };
}

function sized(shape: TopShape, rows: number, columns: number, wanted: Wanted) {
  const { width, height } = topSize(shape, rows, columns);
  const over = { width: width - wanted.width, length: height - wanted.length };
  return { rows, columns, width, height, over };
}

/**
 * Blocks and one free length: for each number of rows and columns the length that shares the
 * difference between the sides, put on the step. Of all these the one that misses by the fewest
 * steps, then the one that changes the length least, then the larger. Undefined when the length has
 * no room.
 */
export function planByLength(free: FreeLength, wanted: Wanted, step: Step): SizePlan | undefined {
  const least = roundUp(free.least, step);
  const most = roundDown(free.most, step);
  if (least > most) return undefined;
  const columnLines = linesOf(free, "width", wanted.width);
  const rowLines = linesOf(free, "height", wanted.length);
  const size = step.size.valueOf();
  let best: { plan: SizePlan; steps: number; change: Length } | undefined;
  columnLines.forEach((across, c) => {
    rowLines.forEach((down, r) => {
      const exact = between(across, down);
      if (exact === undefined) return;
      const length = Math.min(most, Math.max(least, roundNearest(exact, step)));
      const found = sized(free.shape(length), r + 1, c + 1, wanted);
      const steps = Math.ceil(missedBy(found) / size - 1e-6);
      const change = Math.abs(length - free.now);
      if (best && !before({ steps, change, width: found.width }, best)) return;
      const plan = { way: free.way, adds: free.now === 0, length, exactLength: exact, ...found };
      best = { plan, steps, change };
    });
  });
  return best?.plan;
}

function before(
  a: { steps: number; change: Length; width: Length },
  b: { steps: number; change: Length; plan: SizePlan },
): boolean {
  if (a.steps !== b.steps) return a.steps < b.steps;
  if (Math.abs(a.change - b.change) > 1e-9) return a.change < b.change;
  return a.width > b.plan.width + 1e-9;
}

/** A side of the top as slope x length, short of what is wanted by `missing` at length 0. */
interface SideLine {
  readonly slope: number;
  readonly missing: Length;
}

/** The line of one side for 1, 2, 3 ... blocks, until the least it can be is more than is wanted. */
function linesOf(free: FreeLength, side: "width" | "height", wanted: Length): SideLine[] {
  const zero = free.shape(0);
  const one = free.shape(1);
  const smallest = free.shape(free.least);
  const lines: SideLine[] = [];
  for (let n = 1; n <= MOST_ACROSS; n++) {
    const at0 = topSize(zero, n, n)[side];
    lines.push({ slope: topSize(one, n, n)[side] - at0, missing: wanted - at0 });
    if (topSize(smallest, n, n)[side] > wanted) break;
  }
  return lines;
}

/** The length at which one side is as much over as the other is under; at two equal ones, neither is. */
function between(p: SideLine, q: SideLine): Length | undefined {
  const slope = p.slope + q.slope;
  if (slope < 1e-12) return undefined;
  if (p.slope < 1e-12) return q.missing / q.slope;
  if (q.slope < 1e-12) return p.missing / p.slope;
  return (p.missing + q.missing) / slope;
}
