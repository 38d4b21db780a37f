import type { Pressing } from "./pressing.ts";
import { EVEN_ROWS, ODD_ROWS, ROW_JOIN, SASHED_ROWS, STONE_ROWS } from "./rowCrossings.ts";

/** How the seams between blocks are pressed, and what meets there, for the whole quilt. */
export interface RowPressing {
  /** The first row is odd. */
  readonly odd: "left" | "right";
  readonly even: "left" | "right";
  readonly sashes: Pressing["sashes"];
  /** Seams that every second block has pressed the other way; empty where all are pressed alike. */
  readonly second: readonly string[];
  /** Crossings in as many rows and columns as show every pair of neighbors, and how many nest. */
  readonly crossings: number;
  readonly nesting: number;
  /** The kinds of crossing that do not: on which seam, and the two that meet there. */
  readonly misses: readonly {
    readonly joinedBy: string;
    readonly seams: readonly [string, string];
  }[];
}

const BETWEEN: ReadonlySet<string> = new Set([
  ODD_ROWS,
  EVEN_ROWS,
  SASHED_ROWS,
  STONE_ROWS,
  ROW_JOIN,
]);

export const isBetweenBlocks = (seamId: string): boolean => BETWEEN.has(seamId);

export function rowPressingOf(p: Pressing): RowPressing {
  const between = p.crossings.filter((x) => isBetweenBlocks(x.joinedBy));
  const sum = (all: readonly { readonly count: number }[]): number =>
    all.reduce((n, x) => n + x.count, 0);
  const misses = between.filter((x) => !x.nests);
  const others = p.otherBlocks ?? p.bySeam;
  return {
    ...p.rows,
    sashes: p.sashes,
    second: Object.keys(p.bySeam)
      .filter((id) => others[id] !== p.bySeam[id])
      .sort(),
    crossings: sum(between),
    nesting: sum(between) - sum(misses),
    misses: misses.map(({ joinedBy, seams }) => ({ joinedBy, seams })),
  };
}
