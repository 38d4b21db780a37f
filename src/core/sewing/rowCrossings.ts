import type { BlockGeometry } from "../block/types.ts";
import {
  add,
  centroid,
  cross,
  distance,
  dot,
  edges,
  normalized,
  type Point,
  type Polygon,
  scale,
  subtract,
} from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import { spanAlong, type TopItem, type TopRow, type TopRows } from "../quilt/index.ts";
import { endsOn, type LaidSeam, laidSeams, meetings, type SeamEnd } from "./crossings.ts";
import type { Crossing } from "./types.ts";

/** Names a seam of a block; blocks of the other pressing are marked. */
export const otherPressing = (seamId: string): string => `${seamId}*`;
/** Seams inside the rows, the first row odd: toward their first part is to the left. */
export const ODD_ROWS = "rows/odd";
export const EVEN_ROWS = "rows/even";
/** Seams between sashes and blocks, and between sashes and cornerstones: their first part is the sash. */
export const SASHED_ROWS = "rows/sashes";
export const STONE_ROWS = "rows/cornerstones";
export const ROW_JOIN = "rows/join";

/** A row with the seams of its blocks and the seams that join what lies in it. */
interface LaidRow {
  readonly seams: readonly LaidSeam[];
  readonly joins: readonly { readonly seam: LaidSeam; readonly left: number }[];
  readonly inItem: readonly (readonly LaidSeam[])[];
}

/**
 * Every crossing where blocks meet blocks: along the seams inside the rows, and along the seams that
 * join the rows, where the seams inside the rows count too. Alike ones are one, counted. `second`
 * says which blocks are pressed the other way; `fanned` names, by block, the seam pressed in two arms.
 */
export function crossingsInRows(
  blocks: ReadonlyMap<string, BlockGeometry>,
  top: TopRows,
  second: (item: TopItem) => boolean,
  fanned: ReadonlyMap<string, string>,
  near: Length,
): Crossing[] {
  const found = new Map<string, { crossing: Crossing; count: number }>();
  const note = (crossings: readonly Crossing[]) => {
    for (const x of crossings) {
      const key = `${x.joinedBy} ${x.seams.join(" ")} ${x.differ}`;
      const known = found.get(key);
      if (known) known.count += x.count;
      else found.set(key, { crossing: x, count: x.count });
    }
  };
  const seamsOf = (item: TopItem): LaidSeam[] => {
    const block = blocks.get(item.of);
    if (item.what !== "block" || !block) return [];
    return laidSeams(block.tree, fanned.get(item.of), item.at).map((l) =>
      second(item) ? { ...l, id: otherPressing(l.id) } : l,
    );
  };
  let nth = 0;
  let above: LaidRow | undefined;
  const down = { x: top.along.y, y: -top.along.x };
  for (const row of top.rows) {
    const laid = laidRow(row, nth, seamsOf, near);
    if (row.kind === "blocks") nth++;
    for (const { seam, left } of laid.joins) {
      const [a, b] = [laid.inItem[left], laid.inItem[left + 1]].map((seams) =>
        endsOn(seams, seam.from, seam.to, near),
      );
      note(meetings(a, b, seam.from, seam.to, seam.id, near));
    }
    if (above) {
      const [from, to] = joinLine(row, top.along, down);
      const ends = (r: LaidRow): SeamEnd[] => endsOn(r.seams, from, to, near);
      note(meetings(ends(above), ends(laid), from, to, ROW_JOIN, 4 * near));
    }
    above = laid;
  }
  return [...found.values()].map(({ crossing, count }) => ({ ...crossing, count }));
}

function laidRow(
  row: TopRow,
  nth: number,
  seamsOf: (item: TopItem) => LaidSeam[],
  near: Length,
): LaidRow {
  const inItem = row.items.map(seamsOf);
  const joins = row.items.slice(1).flatMap((right, i) => {
    const left = row.items[i];
    const shared = sharedEdge(left.polygon, right.polygon, near);
    if (!shared) return [];
    const first = centroid((right.what === "sash" ? right : left).polygon);
    const [from, to] = shared;
    return [{ seam: { id: seamName(row, left, right, nth), from, to, first }, left: i }];
  });
  return { inItem, joins, seams: [...inItem.flat(), ...joins.map((j) => j.seam)] };
}

function seamName(row: TopRow, left: TopItem, right: TopItem, nth: number): string {
  if (left.what !== "sash" && right.what !== "sash") return nth % 2 === 0 ? ODD_ROWS : EVEN_ROWS;
  return row.kind === "sashes" ? STONE_ROWS : SASHED_ROWS;
}

/** The stretch that two polygons lying side by side have in common; undefined when they do not touch. */
export function sharedEdge(
  a: Polygon,
  b: Polygon,
  near: Length,
): readonly [Point, Point] | undefined {
  for (const e of edges(a)) {
    const along = normalized(subtract(e.to, e.from));
    const length = distance(e.from, e.to);
    for (const f of edges(b)) {
      const [from, to] = [subtract(f.from, e.from), subtract(f.to, e.from)];
      if (Math.abs(cross(along, from)) > near || Math.abs(cross(along, to)) > near) continue;
      const low = Math.max(0, Math.min(dot(along, from), dot(along, to)));
      const high = Math.min(length, Math.max(dot(along, from), dot(along, to)));
      if (high - low > near)
        return [add(e.from, scale(along, low)), add(e.from, scale(along, high))];
    }
  }
  return undefined;
}

/** The upper edge of a row, as long as the row reaches. */
function joinLine(row: TopRow, along: Point, down: Point): [Point, Point] {
  const reach = row.items.map((i) => spanAlong(i.polygon, along));
  const upper = Math.min(...row.items.map((i) => spanAlong(i.polygon, down).from));
  const at = (x: Length): Point => add(scale(along, x), scale(down, upper));
  return [at(Math.min(...reach.map((r) => r.from))), at(Math.max(...reach.map((r) => r.to)))];
}
