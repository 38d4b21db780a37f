import type { Length } from "../measure/index.ts";

/** a . x <= b. The last unknown is the one to be made largest. */
export interface Constraint {
  readonly a: readonly number[];
  readonly b: Length;
}

/** Two values this near, in the document's unit, are the same best: far below any tolerance used. */
const SAME = 1e-10;

/**
 * The point whose last coordinate is largest under all constraints, by trying every corner of the
 * feasible region: exact but for float64, and quick for the two or three unknowns a placement has.
 * Where a whole edge or face is best, its middle (the mean of its corners). Undefined when no corner
 * is feasible; give box constraints for unknowns that might run away.
 */
export function highest(
  constraints: readonly Constraint[],
  unknowns: number,
): number[] | undefined {
  let best = Number.NEGATIVE_INFINITY;
  let corners: number[][] = [];
  for (const subset of subsets(constraints, unknowns)) {
    const x = solve(subset);
    if (!x || x[unknowns - 1] < best - SAME) continue;
    if (!constraints.every((c) => product(c.a, x) <= c.b + SAME)) continue;
    if (x[unknowns - 1] > best + SAME) corners = [];
    best = Math.max(best, x[unknowns - 1]);
    corners.push(x);
  }
  if (corners.length === 0) return undefined;
  return corners[0].map((_, i) => corners.reduce((s, c) => s + c[i], 0) / corners.length);
}

const product = (a: readonly number[], x: readonly number[]): number =>
  a.reduce((sum, ai, i) => sum + ai * x[i], 0);

function* subsets<T>(list: readonly T[], size: number, from = 0): Generator<T[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let i = from; i <= list.length - size; i++)
    for (const rest of subsets(list, size - 1, i + 1)) yield [list[i], ...rest];
}

/** Gauss with row choice; undefined when the boundaries have no single point in common. */
function solve(rows: readonly Constraint[]): number[] | undefined {
  const n = rows.length;
  const m = rows.map((r) => [...r.a, r.b]);
  for (let col = 0; col < n; col++) {
    let pivot = col;
    for (let r = col + 1; r < n; r++) if (Math.abs(m[r][col]) > Math.abs(m[pivot][col])) pivot = r;
    if (Math.abs(m[pivot][col]) < 1e-11) return undefined;
    [m[col], m[pivot]] = [m[pivot], m[col]];
    for (let r = 0; r < n; r++) {
      if (r === col) continue;
      const k = m[r][col] / m[col][col];
      for (let c = col; c <= n; c++) m[r][c] -= k * m[col][c];
    }
  }
  return m.map((row, i) => row[n] / row[i]);
}
