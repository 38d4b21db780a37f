import type { Answer } from "../answer/types/answer.ts";
import type { PatchLook } from "../fabric/index.ts";
import {
  add,
  applyToPolygon,
  boundingBox,
  distance,
  middle,
  moving,
  type Point,
  scale,
} from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import { spanAlong, type TopItem, type TopRow, type TopRows } from "../quilt/index.ts";
import { sharedEdge } from "../sewing/rowCrossings.ts";
import type { RowPressing } from "../sewing/rowPressing.ts";
import { blockMarks } from "./block.ts";
import { all, picture } from "./compose.ts";
import type { Mark, Picture } from "./marks.ts";

export interface PulledApartOptions {
  readonly small?: Length;
  readonly looks?: Readonly<Record<string, readonly PatchLook[]>>;
}

/**
 * The top in its rows, each drawn a little away from the next, numbered as they are sewn, with an
 * arrow over every seam inside a row to the side its allowance is pressed to. It is never turned over
 * for a left-handed maker: left and right are the quilt's.
 */
export function pulledApartPicture(
  answer: Answer,
  top: TopRows,
  pressing: RowPressing,
  options: PulledApartOptions = {},
): Picture {
  const { quilt } = answer;
  if (!quilt) throw new RangeError("rows of a top: the answer has no quilt (its findings say why)");
  const small = options.small ?? Math.max(quilt.width, quilt.height) / 40;
  const stamps: Record<string, Mark[]> = {};
  for (const block of answer.blocks)
    stamps[block.id] = blockMarks(block, {
      pieces: answer.pieces,
      ...(options.looks?.[block.id] ? { looks: options.looks[block.id] } : {}),
    });
  const down = { x: top.along.y, y: -top.along.x };
  const gap = 1.6 * small;
  const count = { blocks: 0, sashes: 0, corner: 0 };
  const drawn = top.rows.map((row, i) => {
    const shift = scale(down, i * gap);
    const nth = ++count[row.kind];
    return {
      box: row.items.map((item) => applyToPolygon(moving(shift.x, shift.y), item.polygon)),
      marks: [
        ...row.items.map((item) => itemMark(item, shift, stamps, answer)),
        ...arrowsOf(row, top.along, arrowWay(row, nth, pressing), small, shift),
        ...numberOf(row, nth, top.along, small, shift),
      ],
    };
  });
  return picture({
    title: `The top in its ${count.blocks} rows, each pressed as the arrows show`,
    unit: answer.unit,
    box: boundingBox(drawn.flatMap((d) => d.box.flat())),
    marks: drawn.flatMap((d) => d.marks),
    small,
    stamps,
    edges: { ...all(small * 0.3), left: small * 1.8, bottom: small * 1.2 },
  });
}

function itemMark(
  item: TopItem,
  shift: Point,
  stamps: Readonly<Record<string, readonly Mark[]>>,
  answer: Answer,
): Mark {
  if (item.at && stamps[item.of])
    return {
      kind: "stamp",
      of: item.of,
      id: item.id,
      at: { ...item.at, x: item.at.x + shift.x, y: item.at.y + shift.y },
    };
  const fabricId = answer.quilt?.extras.find((e) => e.id === item.of)?.fabricId ?? "";
  return {
    kind: "shape",
    id: item.id,
    polygon: applyToPolygon(moving(shift.x, shift.y), item.polygon),
    fill: { kind: "fabric", fabricId },
    line: "sewn",
  };
}

/** Which way a seam of this row is pressed: left, right, or to its sash and away from it. */
function arrowWay(row: TopRow, nth: number, p: RowPressing): "left" | "right" | "sash" | "away" {
  if (row.items.some((i) => i.what === "sash"))
    return row.kind === "blocks" ? p.sashes.blocks : p.sashes.cornerstones;
  return nth % 2 === 1 ? p.odd : p.even;
}

function arrowsOf(
  row: TopRow,
  along: Point,
  way: ReturnType<typeof arrowWay>,
  small: Length,
  shift: Point,
): Mark[] {
  return row.items.slice(1).flatMap((right, i): Mark[] => {
    const left = row.items[i];
    const seam = sharedEdge(left.polygon, right.polygon, small * 1e-6);
    // Between a sash and its cornerstone there is no room for an arrow that reads.
    if (!seam || distance(...seam) < 1.2 * small) return [];
    const toRight =
      way === "right" ||
      (way === "sash" && right.what === "sash") ||
      (way === "away" && right.what !== "sash");
    const at = add(middle(...seam), shift);
    const half = Math.min(0.7 * small, 0.45 * distance(...seam));
    const step = scale(along, toRight ? half : -half);
    return [{ kind: "arrow", line: "press", from: add(at, scale(step, -0.8)), to: add(at, step) }];
  });
}

/** Its number before the row, at half its height; corners and strips of sashing have none. */
function numberOf(row: TopRow, nth: number, along: Point, small: Length, shift: Point): Mark[] {
  if (row.kind !== "blocks") return [];
  const down = { x: along.y, y: -along.x };
  const first = row.items[0].polygon;
  const height = spanAlong(first, down);
  const start = add(
    scale(along, spanAlong(first, along).from - 0.9 * small),
    scale(down, (height.from + height.to) / 2),
  );
  const at = add(start, add(shift, { x: 0, y: -0.35 * small }));
  return [{ kind: "text", at, text: String(nth), size: 1, anchor: "middle", weight: "bold" }];
}
