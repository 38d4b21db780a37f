import type { Brief } from "../brief/index.ts";
import {
  applyToPolygon,
  centroid,
  dot,
  type Point,
  type Polygon,
  point,
  type Rigid,
} from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import { placedPatches, placements } from "./placing.ts";
import type { QuiltGeometry } from "./types.ts";

/** One thing that is laid in a row: a block, a part of one, or a patch of the quilt. Quilt frame. */
export interface TopItem {
  /** `r2c3`, or the patch where it lies. */
  readonly id: string;
  /** The kind of block or half (`star~upper`), or the counted patch it is one of (`sash/between`). */
  readonly of: string;
  readonly what: "block" | "triangle" | "sash" | "cornerstone";
  /** Where a block lies. */
  readonly at?: Rigid;
  readonly polygon: Polygon;
}

/** A straight row of the top: what is sewn side by side before the rows are joined. */
export interface TopRow {
  /** The last corners of a quilt on point are rows of one triangle. */
  readonly kind: "blocks" | "sashes" | "corner";
  /** In the order they lie, from the left. */
  readonly items: readonly TopItem[];
}

export interface TopRows {
  /** The way the rows run; they follow one another on its right. */
  readonly along: Point;
  readonly rows: readonly TopRow[];
}

const UP_TO_THE_RIGHT: Point = point(Math.SQRT1_2, Math.SQRT1_2);

/** Everything of the top inside its borders, row by row; `outlineOf` knows blocks and halves. */
export function topRows(
  brief: Brief,
  g: QuiltGeometry,
  outlineOf: (blockId: string) => Polygon | undefined,
): TopRows {
  const along = g.arrangement === "on-point" ? UP_TO_THE_RIGHT : point(1, 0);
  const down = point(along.y, -along.x);
  const items: TopItem[] = [];
  for (const { id, blockId, at } of placements(brief, g)) {
    const outline = outlineOf(blockId);
    if (!outline) continue;
    items.push({ id, of: blockId, what: "block", at, polygon: applyToPolygon(at, outline) });
  }
  for (const { id, role, polygon } of placedPatches({ ...brief, quilt: unbordered(brief) }, g))
    items.push({ id, of: id.slice(0, id.lastIndexOf("/")), what: whatOf(role), polygon });
  const near = Math.max(g.width, g.height) * 1e-9;
  const ordered = grouped(items, down, near).map((row) =>
    row.sort((a, b) => dot(centroid(a.polygon), along) - dot(centroid(b.polygon), along)),
  );
  return { along, rows: ordered.map((row) => ({ kind: kindOf(row), items: row })) };
}

const unbordered = ({ quilt }: Brief): Brief["quilt"] => ({ ...quilt, borders: [] });

const whatOf = (role: string): TopItem["what"] =>
  role === "sash" ? "sash" : role === "cornerstone" ? "cornerstone" : "triangle";

/** How far an item reaches in a direction. */
export function spanAlong(p: Polygon, d: Point): { readonly from: Length; readonly to: Length } {
  const at = p.map((v) => dot(v, d));
  return { from: Math.min(...at), to: Math.max(...at) };
}

/** Items whose middles lie on one line: all that is as high as the row, whatever its shape. */
function grouped(items: readonly TopItem[], down: Point, near: Length): TopItem[][] {
  const at = items
    .map((item) => {
      const { from, to } = spanAlong(item.polygon, down);
      return { item, middle: (from + to) / 2 };
    })
    .sort((a, b) => a.middle - b.middle);
  const rows: TopItem[][] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (const { item, middle } of at) {
    if (middle > last + near) rows.push([]);
    rows[rows.length - 1].push(item);
    last = middle;
  }
  return rows;
}

function kindOf(row: readonly TopItem[]): TopRow["kind"] {
  if (row.length === 1 && row[0].of === "setting/corner") return "corner";
  if (row.length === 1 && row[0].of.endsWith("-quarter")) return "corner";
  return row.some((i) => i.what === "block") ? "blocks" : "sashes";
}
