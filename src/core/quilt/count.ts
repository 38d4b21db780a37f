import { type Brief, blockIn, type Placed } from "../brief/index.ts";
import { spotsOf } from "./placing.ts";
import { countKinds } from "./rows.ts";
import type { HalfKind } from "./types.ts";

export interface Counted {
  readonly counts: Readonly<Record<string, number>>;
  readonly halves: readonly HalfKind[];
}

/**
 * Blocks and halves of each kind. Straight rows are counted on the plan's repeat. The others repeat
 * too, away from their edges: they are counted on two small quilts and carried on, because every
 * count grows evenly with whole repeats (docs/geometry/counting.md).
 */
export function countIn(brief: Brief): Counted {
  const { plan, rows, columns, arrangement, offset } = brief.quilt;
  if (arrangement === "rows" && !offset)
    return { counts: countKinds(plan, rows, columns), halves: [] };
  const period = {
    rows: 2 * plan.length,
    columns: 2 * plan.map((r) => r.length).reduce(leastCommon, 1),
  };
  return extended(brief, small(rows, period.rows), small(columns, period.columns), period);
}

const leastCommon = (a: number, b: number): number => (a * b) / greatestCommon(a, b);
const greatestCommon = (a: number, b: number): number => (b === 0 ? a : greatestCommon(b, a % b));

interface Span {
  /** The size to count at, at most two periods, and how many whole periods were left out. */
  readonly base: number;
  readonly times: number;
}

function small(size: number, period: number): Span {
  const times = Math.max(0, Math.floor(size / period) - 1);
  return { base: size - times * period, times };
}

/** count(R, C) is bilinear in whole periods: four small counts give every larger one. */
function extended(
  brief: Brief,
  rows: Span,
  columns: Span,
  period: { readonly rows: number; readonly columns: number },
): Counted {
  const at = (dr: number, dc: number): Map<string, number> =>
    walked(brief, rows.base + dr * period.rows, columns.base + dc * period.columns);
  const c00 = at(0, 0);
  const halves = halvesOf(brief, rows.base + period.rows, columns.base + period.columns);
  if (rows.times === 0 && columns.times === 0) return counted(c00, halves);
  const [c10, c01, c11] = [at(1, 0), at(0, 1), at(1, 1)];
  const total = new Map<string, number>();
  for (const id of c11.keys()) {
    const n = (m: Map<string, number>): number => m.get(id) ?? 0;
    const base = n(c00);
    const perRow = n(c10) - base;
    const perColumn = n(c01) - base;
    const perBoth = n(c11) - n(c10) - n(c01) + base;
    total.set(
      id,
      base + perRow * rows.times + perColumn * columns.times + perBoth * rows.times * columns.times,
    );
  }
  return counted(total, halves);
}

function counted(
  counts: ReadonlyMap<string, number>,
  halves: ReadonlyMap<string, HalfKind>,
): Counted {
  const present = [...counts].filter(([, n]) => n > 0).sort(([a], [b]) => (a < b ? -1 : 1));
  return {
    counts: Object.fromEntries(present),
    halves: present.flatMap(([id]) => halves.get(id) ?? []),
  };
}

const sized = (brief: Brief, rows: number, columns: number): Brief => ({
  ...brief,
  quilt: { ...brief.quilt, rows, columns },
});

const UNIT_PITCH = { pitch: { x: 1, y: 1 } };

function walked(brief: Brief, rows: number, columns: number): Map<string, number> {
  const counts = new Map<string, number>();
  for (const spot of spotsOf(sized(brief, rows, columns), UNIT_PITCH)) {
    const id = idOf(spot);
    counts.set(id, (counts.get(id) ?? 0) + 1);
  }
  return counts;
}

function halvesOf(brief: Brief, rows: number, columns: number): Map<string, HalfKind> {
  const found = new Map<string, HalfKind>();
  for (const { part } of spotsOf(sized(brief, rows, columns), UNIT_PITCH))
    if (part) found.set(part.id, part);
  return found;
}

const idOf = (spot: { readonly cell: Placed; readonly part?: HalfKind }): string =>
  spot.part?.id ?? blockIn(spot.cell);
