import type { Quilt } from "../brief/index.ts";
import { applyToPolygon, type Point, type Polygon, point } from "../geometry/index.ts";
import type { Length, Radian } from "../measure/index.ts";
import { linesOf, type OnPoint, onPointCenter, pitchOf } from "./onPoint.ts";
import { quartersTurned, rectangleAt } from "./shapes.ts";
import type { CountedPatch, QuiltPatch } from "./types.ts";

/** A quilt on point with a sash along every side of every block. */
export interface SashedOnPoint extends OnPoint {
  readonly sashing: NonNullable<Quilt["sashing"]>;
}

type Size = Pick<OnPoint, "rows" | "columns">;

/** Rows of sashes: one before, between and after the diagonal rows of blocks. */
export const sashRowsOf = ({ rows, columns }: Size): number => rows + columns;

/**
 * How many block sides row j of sashes runs along, the rows counted from the upper left corner: its
 * middle line is this many lattice steps long from edge to edge (docs/geometry/on-point.md).
 */
export const sashesInRow = ({ rows, columns }: Size, j: number): number =>
  2 * (Math.min(j + 1 / 2, columns) - Math.max(0, j + 1 / 2 - rows));

/** Does row j of sashes run from one side of the quilt to the opposite one? Its ends are parallel then. */
const endsParallel = ({ rows, columns }: Size, j: number): boolean => j < rows !== j < columns;

/** A diamond's upper corner cut off level: the half cornerstone of the lower edge, long side outside. */
const halfStone = (s: Length): Polygon => {
  const h = s / Math.SQRT2;
  return [point(0, h), point(-h, 0), point(h, 0)];
};

/**
 * The long sash of row j about its middle, running to the right as the row runs up to the right.
 * Where it ends its corner is cut off along the edge of the quilt.
 */
function longSash(g: SashedOnPoint, j: number): Polygon {
  const half = (sashesInRow(g, j) * (g.side + g.sash)) / 2;
  const s = g.sash / 2;
  // It begins at the left edge or at the bottom one, and ends at the top one or at the right one.
  const left = j < g.rows ? s : -s;
  const right = j < g.columns ? s : -s;
  return [
    point(-half - left, -s),
    point(half + right, -s),
    point(half - right, s),
    point(-half + left, s),
  ];
}

const HALF_OUTSIDE = [false, true, false];

/**
 * 4 r c sashes along the block sides, (r - 1) c + r (c - 1) cornerstones and 2 (r + c) halves of them
 * at the edges. Without cornerstones the rows of sashes are one long piece each.
 */
export function onPointSashKinds(g: SashedOnPoint): CountedPatch[] {
  const { rows, columns, side, sash } = g;
  const { fabric, cornerstone } = g.sashing;
  const between = { id: "sash/between", role: "sash", fabricId: fabric } as const;
  const block = { ...between, polygon: rectangleAt(0, 0, side, sash) };
  if (cornerstone === undefined) return [{ ...block, count: 2 * rows * columns }, ...longKinds(g)];
  const stone = { role: "cornerstone", fabricId: cornerstone } as const;
  const kinds: CountedPatch[] = [
    { ...block, count: 4 * rows * columns },
    {
      ...stone,
      id: "sash/cornerstone",
      polygon: rectangleAt(0, 0, sash, sash),
      count: (rows - 1) * columns + rows * (columns - 1),
    },
    {
      ...stone,
      id: "sash/cornerstone-half",
      polygon: halfStone(sash),
      outside: HALF_OUTSIDE,
      count: 2 * (rows + columns),
    },
  ];
  return kinds.filter((k) => k.count > 0);
}

const longId = (g: Size, j: number): string =>
  `sash/row-${sashesInRow(g, j)}${endsParallel(g, j) ? "-across" : ""}`;

/**
 * The long sashes, each length once; two of a length end alike, whichever corner they lie near. Their
 * ends on the quilt's edge are not named as outside: the sash lies along its strip, not its ends.
 */
function longKinds(g: SashedOnPoint): CountedPatch[] {
  const kinds = new Map<string, CountedPatch>();
  for (let j = 0; j < sashRowsOf(g); j++) {
    const id = longId(g, j);
    const known = kinds.get(id);
    kinds.set(id, {
      id,
      role: "sash",
      fabricId: g.sashing.fabric,
      polygon: known?.polygon ?? longSash(g, j),
      count: (known?.count ?? 0) + 1,
    });
  }
  return [...kinds.values()];
}

/** Up to the right, the way the diagonal rows run; and square to it. */
const ALONG_ROW: Radian = Math.PI / 4;
const ACROSS_ROW: Radian = -Math.PI / 4;

const laid = (polygon: Polygon, turn: Radian, { x, y }: Point): Polygon =>
  applyToPolygon({ turn, x, y, mirrored: false }, polygon);

/** Every sash and cornerstone where it lies, for drawing. */
export function* placedOnPointSashes(g: SashedOnPoint): Generator<QuiltPatch> {
  const { rows, columns, side, sash } = g;
  const { fabric, cornerstone } = g.sashing;
  const strip = rectangleAt(0, 0, side, sash);
  const quarter = pitchOf(g) / 4;
  // Every sash lies beside one block of the lines of c blocks: each of those has all four of its own.
  for (let line = 0; line < linesOf(rows); line += 2)
    for (let c = 0; c < columns; c++) {
      const at = onPointCenter(g, line, c);
      const id = `r${line + 1}c${c + 1}`;
      for (const [name, dx, dy] of SIDES) {
        const inRow = dx === dy;
        if (!inRow && cornerstone === undefined) continue;
        yield {
          id: `sash/between/${id}-${name}`,
          role: "sash",
          fabricId: fabric,
          polygon: laid(
            strip,
            inRow ? ACROSS_ROW : ALONG_ROW,
            point(at.x + dx * quarter, at.y + dy * quarter),
          ),
        };
      }
    }
  if (cornerstone === undefined) yield* placedLong(g);
  else yield* placedStones(g, cornerstone);
}

/** Sides of a block that stands on a corner, and which way they lie from its middle. */
const SIDES = [
  ["upper-right", 1, 1],
  ["upper-left", -1, 1],
  ["lower-left", -1, -1],
  ["lower-right", 1, -1],
] as const;

function* placedLong(g: SashedOnPoint): Generator<QuiltPatch> {
  for (let j = 0; j < sashRowsOf(g); j++)
    yield {
      id: `${longId(g, j)}/${j + 1}`,
      role: "sash",
      fabricId: g.sashing.fabric,
      polygon: laid(longSash(g, j), ALONG_ROW, middleOfSashRow(g, j)),
    };
}

/** Middle of row j of sashes, counted from the upper left corner. */
function middleOfSashRow(g: Omit<OnPoint, "fabricId">, j: number): Point {
  const d = pitchOf(g);
  const [left, top] = [(-g.columns * d) / 2, (g.rows * d) / 2];
  const start =
    j < g.rows ? point(left, top - (j + 1 / 2) * d) : point(left + (j - g.rows + 1 / 2) * d, -top);
  const half = (sashesInRow(g, j) * d) / 4;
  return point(start.x + half, start.y + half);
}

function* placedStones(g: SashedOnPoint, fabricId: string): Generator<QuiltPatch> {
  const { rows, columns, sash } = g;
  const d = pitchOf(g);
  const h = sash / Math.SQRT2;
  const diamond = [point(0, -h), point(h, 0), point(0, h), point(-h, 0)];
  const half = halfStone(sash);
  // Above and below every block of the long lines; then left and right of each.
  const places = [
    ...grid(rows + 1, columns).map(([i, c]) => ({
      at: point((c - (columns - 1) / 2) * d, (rows / 2 - i) * d),
      edge: i === 0 ? 2 : i === rows ? 0 : undefined,
    })),
    ...grid(rows, columns + 1).map(([i, c]) => ({
      at: point((c - columns / 2) * d, ((rows - 1) / 2 - i) * d),
      edge: c === 0 ? 3 : c === columns ? 1 : undefined,
    })),
  ];
  for (const [n, { at, edge }] of places.entries())
    yield {
      id: `sash/cornerstone${edge === undefined ? "" : "-half"}/${n + 1}`,
      role: "cornerstone",
      fabricId,
      polygon: laid(edge === undefined ? diamond : quartersTurned(half, edge), 0, at),
    };
}

const grid = (rows: number, columns: number): [number, number][] =>
  Array.from({ length: rows * columns }, (_, n) => [Math.floor(n / columns), n % columns]);
