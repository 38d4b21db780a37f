import { distance, dot, type Point } from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import { spanAlong, type TopRow, type TopRows } from "../quilt/index.ts";
import { sharedEdge } from "./rowCrossings.ts";

/** Seams sewn one after another, and the finished length of all of them together. */
export interface SeamsToSew {
  readonly seams: number;
  readonly length: Length;
}

/** The seams that join blocks into a top: inside each row, then row to row, corners last. */
export interface Assembly extends SeamsToSew {
  readonly rows: readonly SeamsToSew[];
  readonly joins: SeamsToSew;
}

/** Every seam between what lies side by side in the rows, and between the rows, measured as it lies. */
export function assemble(top: TopRows, near: Length): Assembly {
  const rows = top.rows.map((row) => inside(row, near));
  const down = { x: top.along.y, y: -top.along.x };
  const lengths = top.rows.slice(1).map((row) => upperEdge(row, top.along, down, near));
  const joins = { seams: lengths.length, length: total(lengths) };
  const all = [...rows, joins];
  return {
    rows,
    joins,
    seams: total(all.map((s) => s.seams)),
    length: total(all.map((s) => s.length)),
  };
}

const total = (xs: readonly number[]): number => xs.reduce((a, b) => a + b, 0);

function inside({ items }: TopRow, near: Length): SeamsToSew {
  const lengths = items.slice(1).flatMap((item, i) => {
    const shared = sharedEdge(items[i].polygon, item.polygon, near);
    return shared ? [distance(...shared)] : [];
  });
  return { seams: lengths.length, length: total(lengths) };
}

/** How long a row lies against the one before it: from the first of its corners there to the last. */
function upperEdge(row: TopRow, along: Point, down: Point, near: Length): Length {
  const upper = Math.min(...row.items.map((i) => spanAlong(i.polygon, down).from));
  const at = row.items
    .flatMap((i) => i.polygon)
    .filter((v) => dot(v, down) - upper <= near)
    .map((v) => dot(v, along));
  return Math.max(...at) - Math.min(...at);
}
