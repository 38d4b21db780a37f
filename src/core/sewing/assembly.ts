import type { Length } from "../measure/index.ts";

/** The seams that join blocks into a top: how many of which length, in the order they are sewn. */
export interface AssemblyStep {
  readonly what:
    | "blocks-into-rows"
    | "sashes-into-rows"
    | "rows-together"
    | "corners-on"
    | "borders-on";
  readonly seams: number;
  /** Of all seams of the step together, finished. */
  readonly length: Length;
}

export interface Assembly {
  readonly steps: readonly AssemblyStep[];
  readonly seams: number;
  readonly length: Length;
}

export interface RowsToSew {
  readonly rows: number;
  readonly columns: number;
  readonly width: Length;
  readonly height: Length;
  /** Strips between the blocks, with or without a square where they cross. */
  readonly sashing?: { readonly width: Length; readonly cornerstones: boolean };
  /** Finished widths of the borders, from the inside out, all butted: two sides, then top and bottom. */
  readonly borders?: readonly Length[];
}

const assembled = (all: readonly AssemblyStep[]): Assembly => {
  const steps = all.filter((s) => s.seams > 0);
  return {
    steps,
    seams: steps.reduce((n, s) => n + s.seams, 0),
    length: steps.reduce((sum, s) => sum + s.length, 0),
  };
};

/** Blocks side by side into rows, then row to row, then borders. */
export function assembleRows(q: RowsToSew): Assembly {
  const between = q.columns - 1;
  const joints = q.rows - 1;
  const gap = q.sashing?.width ?? 0;
  const across = q.columns * q.width + between * gap;
  const down = q.rows * q.height + joints * gap;
  const inRows = q.rows * between * (q.sashing ? 2 : 1);
  const inSashes = q.sashing?.cornerstones ? joints * between * 2 : 0;
  const rowJoins = joints * (q.sashing ? 2 : 1);
  return assembled([
    { what: "blocks-into-rows", seams: inRows, length: inRows * q.height },
    { what: "sashes-into-rows", seams: inSashes, length: inSashes * gap },
    { what: "rows-together", seams: rowJoins, length: rowJoins * across },
    ...bordersOn(across, down, q.borders ?? []),
  ]);
}

function bordersOn(across: Length, down: Length, borders: readonly Length[]): AssemblyStep[] {
  let width = across;
  let height = down;
  return borders.map((b): AssemblyStep => {
    const length = 2 * height + 2 * (width + 2 * b);
    width += 2 * b;
    height += 2 * b;
    return { what: "borders-on", seams: 4, length };
  });
}

/**
 * Blocks on point, `rows` by `columns` of them corner to corner with others between, setting
 * triangles at the row ends: diagonal rows, then row to row, then the last two corners.
 */
export function assembleOnPoint(
  q: Pick<RowsToSew, "rows" | "columns" | "borders"> & { side: Length },
): Assembly {
  const { rows, columns, side } = q;
  const diagonal = side * Math.SQRT2;
  const blocks = rows * columns + (rows - 1) * (columns - 1);
  const diagonalRows = rows + columns - 1;
  const sideTriangles = 2 * (rows + columns - 2);
  // Every piece of a row but its first is a seam; two of the four corners stand in the rows.
  const inRows = blocks + sideTriangles + 2 - diagonalRows;
  const width = columns * diagonal;
  const height = rows * diagonal;
  const chord = (m: number): Length =>
    Math.SQRT2 * (Math.min(m * diagonal, width) - Math.max(0, m * diagonal - height));
  let joined = 0;
  for (let m = 1; m < diagonalRows; m++) joined += chord(m + 1 / 2);
  return assembled([
    { what: "blocks-into-rows", seams: inRows, length: inRows * side },
    { what: "rows-together", seams: diagonalRows - 1, length: joined },
    { what: "corners-on", seams: 2, length: 2 * chord(1 / 2) },
    ...bordersOn(width, height, q.borders ?? []),
  ]);
}
