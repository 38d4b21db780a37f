import type { Brief } from "../../brief/index.ts";
import { outerFabric } from "./roles.ts";
import { type Change, choiceWord, type WordSpec } from "./word.ts";

/** Most rows or columns a sentence takes: larger than any bed. */
const MOST_ACROSS = 100;

const isCount = (n: number): boolean => Number.isInteger(n) && n >= 1 && n <= MOST_ACROSS;

const gridProblem = { problem: `Rows and columns run from 1 to ${MOST_ACROSS}, such as 3 by 8.` };

const toGrid =
  (rows: number, columns: number): Change =>
  (d) => {
    d.quilt.rows = rows;
    d.quilt.columns = columns;
  };

/** Blocks in the arrangement: on point there is one more between every four. */
export const blocksIn = (q: Brief["quilt"], rows = q.rows, columns = q.columns): number =>
  q.arrangement === "on-point" ? rows * columns + (rows - 1) * (columns - 1) : rows * columns;

/** The grid with this many blocks nearest in shape to the one there is. */
export function gridFor(
  q: Brief["quilt"],
  blocks: number,
): { rows: number; columns: number } | undefined {
  const shape = Math.log(q.columns / q.rows);
  let best: { rows: number; columns: number; off: number } | undefined;
  for (let rows = 1; rows <= Math.min(blocks, MOST_ACROSS); rows++) {
    for (let columns = 1; columns <= Math.min(blocks, MOST_ACROSS); columns++) {
      if (blocksIn(q, rows, columns) !== blocks) continue;
      const off = Math.abs(Math.log(columns / rows) - shape);
      if (!best || off < best.off) best = { rows, columns, off };
    }
  }
  return best && { rows: best.rows, columns: best.columns };
}

/** "24 blocks": typed, it takes the grid with so many blocks nearest in shape. */
export function blocksWord(b: Brief): WordSpec {
  const q = b.quilt;
  const count = blocksIn(q);
  const say = (n: number): string => (n === 1 ? "1 block" : `${n} blocks`);
  const near = [
    [q.rows, q.columns - 1],
    [q.rows, q.columns],
    [q.rows, q.columns + 1],
  ].filter(([r, c]) => isCount(r) && isCount(c));
  const read = (text: string) => {
    const n = Number(/^(\d{1,5})(\s*blocks?)?$/.exec(text.trim())?.[1]);
    if (!Number.isInteger(n) || n < 1) return { problem: "Type how many blocks, such as 24." };
    const grid = gridFor(q, n);
    return grid
      ? toGrid(grid.rows, grid.columns)
      : { problem: `No rows and columns up to ${MOST_ACROSS} make ${n} blocks.` };
  };
  return {
    id: "blocks",
    role: "How many blocks",
    kind: "count",
    path: "quilt",
    text: say(count),
    decides: [],
    options: () => [
      ...near.map(([r, c]) => ({
        label: say(blocksIn(q, r, c)),
        change: toGrid(r, c),
        picture: "quilt" as const,
      })),
      { label: "a number you type", change: () => {}, picture: "quilt", typed: String(count) },
    ],
    read,
    step: (by) => (isCount(q.columns + by) ? toGrid(q.rows, q.columns + by) : undefined),
  };
}

/** "3 by 8": rows by columns. */
export function gridWord(b: Brief): WordSpec {
  const q = b.quilt;
  const say = (r: number, c: number): string => `${r} by ${c}`;
  const near: [number, number][] = [
    [q.rows, q.columns],
    [q.rows, q.columns + 1],
    [q.rows + 1, q.columns],
  ];
  return {
    id: "grid",
    role: "Rows by columns",
    kind: "grid",
    path: "quilt",
    text: say(q.rows, q.columns),
    decides: [],
    options: () => [
      ...near
        .filter(([r, c]) => isCount(r) && isCount(c))
        .map(([r, c]) => ({ label: say(r, c), change: toGrid(r, c), picture: "quilt" as const })),
      {
        label: "rows by columns you type",
        change: () => {},
        picture: "quilt",
        typed: say(q.rows, q.columns),
      },
    ],
    read: (text) => {
      const m = /^\s*(\d{1,3})\s*(?:by|x|×|\*|,)\s*(\d{1,3})\s*$/i.exec(text);
      const [r, c] = m ? [Number(m[1]), Number(m[2])] : [0, 0];
      return isCount(r) && isCount(c) ? toGrid(r, c) : gridProblem;
    },
    step: (by) => (isCount(q.columns + by) ? toGrid(q.rows, q.columns + by) : undefined),
  };
}

type Quilt = Brief["quilt"];

/** How the blocks lie, in words, each with how to lay them so. */
const ARRANGEMENTS: readonly {
  readonly text: string;
  readonly is: (q: Quilt) => boolean;
  readonly lay: (q: Quilt) => void;
}[] = [
  {
    text: "in straight rows",
    is: (q) => q.arrangement === "rows" && !q.offset,
    lay: (q) => {
      q.arrangement = "rows";
    },
  },
  {
    text: "in shifted rows",
    is: (q) => q.arrangement === "rows" && q.offset === true,
    lay: (q) => {
      q.arrangement = "rows";
      q.offset = true;
    },
  },
  {
    text: "on point",
    is: (q) => q.arrangement === "on-point" && q.edges !== "halves",
    lay: (q) => {
      q.arrangement = "on-point";
    },
  },
  {
    text: "on point with half blocks at the edges",
    is: (q) => q.arrangement === "on-point" && q.edges === "halves",
    lay: (q) => {
      q.arrangement = "on-point";
      q.edges = "halves";
    },
  },
];

const HEXAGONS = {
  text: "in offset rows",
  is: (q: Quilt): boolean => q.arrangement === "hexagon-rows",
  lay: (q: Quilt): void => {
    q.arrangement = "hexagon-rows";
  },
};

/** "in straight rows": how the blocks lie. Offset rows are for hexagons only. */
export function arrangementWord(b: Brief): WordSpec {
  const hexagons = b.blocks.some((k) => k.kind === "wedges" && k.outline === "hexagon");
  const all = [...ARRANGEMENTS, HEXAGONS];
  const now = all.find((a) => a.is(b.quilt)) ?? ARRANGEMENTS[0];
  const known = hexagons ? (now === HEXAGONS ? [HEXAGONS] : [now, HEXAGONS]) : ARRANGEMENTS;
  return choiceWord({
    id: "arrangement",
    role: "How the blocks lie",
    path: "quilt/arrangement",
    text: now.text,
    decides: ["setting-triangle", "corner-triangle"].map((role) => ({ role })),
    options: known.map(({ text, lay }) => ({
      label: text,
      change: (d) => {
        delete d.quilt.offset;
        delete d.quilt.edges;
        lay(d.quilt);
        if (d.quilt.arrangement === "on-point" && d.quilt.edges === undefined)
          d.quilt.setting ??= outerFabric(d, d.blocks[0]);
      },
      picture: "quilt",
    })),
  });
}
