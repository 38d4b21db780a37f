import type { BlockGeometry } from "../block/types.ts";
import { type Point, point, type Rigid } from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import { endsOn, type LaidSeam, laidSeams, meetings, type SeamEnd } from "./crossings.ts";
import type { Crossing } from "./types.ts";

/** A block as it lies in the rows: turned by quarters anticlockwise after mirroring. */
export interface GridCell {
  readonly blockId: string;
  readonly quarters: number;
  readonly mirrored: boolean;
}

/** Blocks set edge to edge in rows, row 0 at the top. */
export interface Grid {
  readonly rows: number;
  readonly columns: number;
  readonly cell: (row: number, column: number) => GridCell;
}

/** Names a seam of a block; blocks of the other pressing are marked. */
export const otherPressing = (seamId: string): string => `${seamId}*`;
export const ODD_ROWS = "rows/odd";
export const EVEN_ROWS = "rows/even";
export const ROW_JOIN = "rows/join";

interface Cell extends GridCell {
  /** Pressed the other way: every second block of the checkerboard, where that is asked for. */
  readonly other: boolean;
}

const nameOf = (c: Cell): string =>
  `${c.blockId} ${((c.quarters % 4) + 4) % 4} ${c.mirrored} ${c.other}`;

/**
 * Every crossing where blocks meet blocks: along the seams inside the rows, and along the seams that
 * join the rows, where the seams inside the rows count too. Equal neighbors are looked at once.
 * `fanned` names, by block, the seam that is pressed in two arms.
 */
export function crossingsBetween(
  blocks: ReadonlyMap<string, BlockGeometry>,
  grid: Grid,
  checkerboard: boolean,
  fanned: ReadonlyMap<string, string>,
  near: Length,
): Crossing[] {
  const first = blocks.get(grid.cell(0, 0).blockId);
  if (!first) return [];
  const look = looker(blocks, fanned, first.width, first.height, near);
  const found = new Map<string, { crossings: Crossing[]; times: number }>();
  const note = (key: string, find: () => Crossing[]) => {
    const known = found.get(key);
    if (known) known.times++;
    else found.set(key, { crossings: find(), times: 1 });
  };
  const cell = (r: number, c: number): Cell | undefined =>
    r < 0 || c < 0 || r >= grid.rows || c >= grid.columns
      ? undefined
      : { ...grid.cell(r, c), other: checkerboard && (r + c) % 2 === 1 };
  for (let r = 0; r < grid.rows; r++) {
    const row = r % 2 === 0 ? ODD_ROWS : EVEN_ROWS;
    for (let c = -1; c < grid.columns; c++) {
      const here = cell(r, c);
      const right = cell(r, c + 1);
      const below = cell(r + 1, c);
      if (here && right)
        note(`${row}|${nameOf(here)}|${nameOf(right)}`, () => look.beside(here, right, row));
      if (here && below) note(`/${nameOf(here)}/${nameOf(below)}`, () => look.under(here, below));
      if (r + 1 < grid.rows) {
        const four = [here, right, below, cell(r + 1, c + 1)] as const;
        note(`${row}+${four.map((f) => (f ? nameOf(f) : "")).join("+")}`, () =>
          look.corner(four, row),
        );
      }
    }
  }
  return [...found.values()].flatMap(({ crossings, times }) =>
    crossings.map((x) => ({ ...x, count: x.count * times })),
  );
}

function looker(
  blocks: ReadonlyMap<string, BlockGeometry>,
  fanned: ReadonlyMap<string, string>,
  width: Length,
  height: Length,
  near: Length,
) {
  const seams = (c: Cell, dx: Length, dy: Length): LaidSeam[] => {
    const block = blocks.get(c.blockId);
    if (!block) throw new RangeError(`crossingsBetween: no block ${JSON.stringify(c.blockId)}`);
    const at: Rigid = { turn: (c.quarters * Math.PI) / 2, x: dx, y: dy, mirrored: c.mirrored };
    return laidSeams(block.tree, fanned.get(c.blockId), at).map((l) =>
      c.other ? { ...l, id: otherPressing(l.id) } : l,
    );
  };
  const x = width / 2;
  const y = height / 2;
  const inside = (ends: SeamEnd[]): SeamEnd[] =>
    ends.filter((e) => Math.abs(e.at.x) < x - 10 * near);
  return {
    beside: (a: Cell, b: Cell, row: string): Crossing[] => {
      const [from, to] = [point(x, -y), point(x, y)];
      const ends = (c: Cell, dx: Length) => endsOn(seams(c, dx, 0), from, to, near);
      return meetings(ends(a, 0), ends(b, width), from, to, row, near);
    },
    under: (a: Cell, b: Cell): Crossing[] => {
      const [from, to] = [point(-x, -y), point(x, -y)];
      const ends = (c: Cell, dy: Length) => inside(endsOn(seams(c, 0, dy), from, to, near));
      return meetings(ends(a, 0), ends(b, -height), from, to, ROW_JOIN, near);
    },
    corner: (four: readonly (Cell | undefined)[], row: string): Crossing[] => {
      const [aboveLeft, aboveRight, belowLeft, belowRight] = four;
      const at = point(x, -y);
      const [from, to] = [point(x - near, -y), point(x + near, -y)];
      const ends = (c: Cell | undefined, dx: Length, dy: Length): SeamEnd[] =>
        c ? endsOn(seams(c, dx, dy), from, to, 2 * near) : [];
      const upright = (l: Cell | undefined, r: Cell | undefined, id: string, end: Point) =>
        l && r
          ? endsOn([{ id, from: at, to: end, first: point(at.x - 1, at.y) }], from, to, near)
          : [];
      const next = row === ODD_ROWS ? EVEN_ROWS : ODD_ROWS;
      const above = [
        ...ends(aboveLeft, 0, 0),
        ...upright(aboveLeft, aboveRight, row, point(x, y)),
        ...ends(aboveRight, width, 0),
      ];
      const below = [
        ...ends(belowLeft, 0, -height),
        ...upright(belowLeft, belowRight, next, point(x, -3 * y)),
        ...ends(belowRight, width, -height),
      ];
      return meetings(above, below, from, to, ROW_JOIN, 4 * near);
    },
  };
}
