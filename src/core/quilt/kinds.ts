import { type Brief, blockIn, type Placed } from "../brief/index.ts";
import type { Length } from "../measure/index.ts";
import { halvesKept, hexagonCenter } from "./hexagons.ts";
import { blocksInLine, linesOf, onPointCenter } from "./onPoint.ts";
import { halfToward, quarterToward } from "./parts.ts";
import { cellAt } from "./rows.ts";
import type { HalfKind } from "./types.ts";

type Plan = Brief["quilt"]["plan"];

/** One place of the arrangement: its cell of the plan, its center, and what part of a block it holds. */
export interface Spot {
  readonly id: string;
  readonly cell: Placed;
  readonly x: Length;
  readonly y: Length;
  /** Turn the arrangement gives, in eighths of a full turn; the cell's own quarters come first. */
  readonly eighths: number;
  /** Absent for a whole block. */
  readonly part?: HalfKind;
}

const idOf = (line: number, c: number): string => `r${line + 1}c${c + 1}`;

/**
 * Which part of a turned block to keep, from the side of the quilt that is kept (in eighths). The
 * block's own frame is turned back by what the arrangement and the cell turn it.
 */
function partOf(cell: Placed, keep: number, eighths: number, quarter = false): HalfKind {
  const own = typeof cell === "string" ? { quarters: 0, mirrored: false } : cell;
  const back = keep - eighths - 2 * own.quarters;
  const k = own.mirrored ? 4 - back : back;
  return (quarter ? quarterToward : halfToward)(blockIn(cell), k);
}

/** Every second row shifted by half a block, with a half block at both of its ends. */
export function* offsetSpots(
  plan: Plan,
  rows: number,
  columns: number,
  width: Length,
  height: Length,
): Generator<Spot> {
  for (let r = 0; r < rows; r++) {
    const shifted = r % 2 === 1;
    const places = columns + (shifted ? 1 : 0);
    for (let c = 0; c < places; c++) {
      const cell = cellAt(plan, r, c);
      const keep = !shifted ? undefined : c === 0 ? 0 : c === columns ? 4 : undefined;
      yield {
        id: idOf(r, c),
        cell,
        x: (c - (places - 1) / 2) * width,
        y: ((rows - 1) / 2 - r) * height,
        eighths: 0,
        ...(keep === undefined ? {} : { part: partOf(cell, keep, 0) }),
      };
    }
  }
}

/** Blocks standing on a corner, line by line; `pitch` from one of a line to the next. */
export function* onPointSpots(
  plan: Plan,
  rows: number,
  columns: number,
  pitch: Length,
): Generator<Spot> {
  const g = { rows, columns, side: pitch / Math.SQRT2, sash: 0 };
  for (let line = 0; line < linesOf(rows); line++) {
    for (let c = 0; c < blocksInLine(line, columns); c++) {
      const at = onPointCenter(g, line, c);
      yield { id: idOf(line, c), cell: cellAt(plan, line, c), ...at, eighths: 1 };
    }
  }
}

/** The halves and quarters that fill the edges of an on-point quilt instead of triangles. */
export function* onPointEdges(
  plan: Plan,
  rows: number,
  columns: number,
  d: Length,
): Generator<Spot> {
  for (let line = -1; line <= linesOf(rows); line++) {
    const odd = line % 2 !== 0;
    for (let c = odd ? -1 : 0; odd && c < columns; c++) {
      const x = (c + 0.5 - (columns - 1) / 2) * d;
      const y = ((rows - 1) / 2 - line / 2) * d;
      const top = line === -1;
      const bottom = line === linesOf(rows);
      const left = c === -1;
      const right = c === columns - 1;
      if (!(top || bottom || left || right)) continue;
      const cell = cellAt(plan, line, c);
      const upright = top ? 6 : bottom ? 2 : undefined;
      const level = left ? 0 : right ? 4 : undefined;
      const quarter = upright !== undefined && level !== undefined;
      const keep = quarter
        ? { "6-0": 7, "6-4": 5, "2-0": 1, "2-4": 3 }[`${upright}-${level}`]
        : (upright ?? level);
      yield {
        id: `e${line + 2}c${c + 2}`,
        cell,
        x,
        y,
        eighths: 1,
        part: partOf(cell, keep ?? 0, 1, quarter),
      };
    }
  }
}

/** Hexagons by halves, column by column; turned a quarter so that the halving line lies level. */
export function* hexagonSpots(
  plan: Plan,
  rows: number,
  columns: number,
  flats: Length,
): Generator<Spot> {
  for (let c = 0; c < columns; c++) {
    for (let k = 0; k < rows + (c % 2); k++) {
      const cell = cellAt(plan, k, c);
      const at = hexagonCenter({ rows, columns, flats }, k, c);
      const kept = halvesKept({ rows }, k, c);
      if (kept.upper)
        yield { id: `${idOf(k, c)}~upper`, cell, ...at, eighths: 2, part: partOf(cell, 2, 2) };
      if (kept.lower)
        yield { id: `${idOf(k, c)}~lower`, cell, ...at, eighths: 2, part: partOf(cell, 6, 2) };
    }
  }
}
