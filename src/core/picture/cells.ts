import {
  andThen,
  applyToPolygon,
  area,
  boundingBox,
  centroid,
  moving,
  type Polygon,
  point,
  type Rigid,
  turning,
} from "../geometry/index.ts";
import type { Demand } from "../layout/types.ts";
import type { Length } from "../measure/index.ts";
import type { Piece } from "../piece/types.ts";
import type { Recipe } from "../recipe/types.ts";
import { rectangle, roughWidth } from "./compose.ts";
import { commonPart } from "./cover.ts";
import type { Mark } from "./marks.ts";

export interface Copies {
  /** Letter of a piece; default its own. */
  readonly letterOf?: (piece: Piece) => string;
  /** In a small picture: of copies in a row only the first is lettered. */
  readonly firstLettered?: boolean;
}

export interface Cells extends Copies {
  readonly demand: Demand;
  readonly copies: number;
  readonly turned: boolean;
  readonly width: Length;
  readonly height: Length;
  readonly fabricId: string;
  readonly pieces: readonly Piece[];
  readonly recipes: readonly Recipe[];
  readonly small: Length;
  /** Second layer of a strip cut double. */
  readonly turnedOver?: boolean;
}

interface Cell {
  readonly outline: Polygon;
  readonly parts: readonly { readonly polygon: Polygon; readonly piece?: Piece }[];
}

/** Copies of one shape in a row, from the origin to the right: what the strip is cut into. */
export function cellMarks(c: Cells): Mark[] {
  const nested = c.demand.shape.kind === "nested";
  // Wedges cut along the length: the strip stands, its lower edge at the left.
  const lying = nested && c.turned ? LYING : undefined;
  const at = lying && andThen(lying, moving(0, c.height));
  const cells = nested ? nestedCells(c).map((cell) => movedCell(cell, at)) : boxCells(c);
  const every = letteredEvery(c);
  return cells.flatMap((cell, i): Mark[] => [
    { kind: "shape", polygon: cell.outline, line: "cut", id: c.demand.id },
    ...cell.parts.flatMap((part): Mark[] => [
      {
        kind: "shape",
        polygon: part.polygon,
        fill: { kind: "fabric", fabricId: c.fabricId, faint: true, ...(at ? { at } : {}) },
        line: "cut",
        ...(part.piece ? { id: part.piece.id } : {}),
      },
      ...(i % every === 0 ? letter(part.polygon, part.piece, c) : []),
    ]),
  ]);
}

const letterOf = (piece: Piece, c: Cells): string => c.letterOf?.(piece) ?? piece.letter;

const LYING = turning(-Math.PI / 2);

const movedCell = (cell: Cell, at: Rigid | undefined): Cell =>
  at
    ? {
        outline: applyToPolygon(at, cell.outline),
        parts: cell.parts.map((p) => ({ ...p, polygon: applyToPolygon(at, p.polygon) })),
      }
    : cell;

/**
 * Letters of wedges head to tail stand a third of the height above and below one another. Where they
 * would still touch, only every so many copies are lettered, so that each piece still has its own.
 */
function letteredEvery(c: Cells): number {
  if (c.firstLettered) return Math.max(1, c.copies);
  const { kind, pitch, height } = c.demand.shape;
  if (kind !== "nested") return 1;
  const pieces = piecesOf(c);
  const wide = Math.max(0, ...pieces.map((p) => roughWidth(letterOf(p, c), c.small)));
  const [along, across] = c.turned ? [1.1 * c.small, wide] : [wide, 0.9 * c.small];
  if (pitch >= along || (headToTail(c) && height / 3 >= across)) return 1;
  const every = Math.ceil((along + 0.4 * c.small) / pitch);
  return pieces.length % 2 === 0 && every % 2 === 0 ? every + 1 : every;
}

/** Every other copy is turned half round. */
const headToTail = ({ demand: { turns, up, shape } }: Cells): boolean =>
  turns !== "none" && !up && shape.pitch < shape.first - 1e-9;

function letter(polygon: Polygon, piece: Piece | undefined, c: Cells): Mark[] {
  const text = piece ? letterOf(piece, c) : "";
  const box = boundingBox(polygon);
  const room = Math.min(box.right - box.left, box.top - box.bottom);
  if (text === "" || room < 1.3 * c.small) return [];
  const at = centroid(polygon);
  return [
    {
      kind: "text",
      at: point(at.x, at.y - 0.35 * c.small),
      text,
      size: 1,
      anchor: "middle",
      weight: "bold",
      tone: "on-fabric",
    },
  ];
}

const piecesOf = (c: Cells): Piece[] =>
  c.demand.pieceIds.flatMap((id) => c.pieces.filter((p) => p.id === id));

/** Head to tail: every other copy is turned half round, or is the piece cut that way up. */
function nestedCells(c: Cells): Cell[] {
  const pieces = piecesOf(c);
  const { pitch, height, first } = c.demand.shape;
  const cells: Cell[] = [];
  for (let i = 0; i < c.copies; i++) {
    const piece = pieces[i % Math.max(1, pieces.length)];
    const shape = shapeOf(piece, c, first, height);
    const flipped = headToTail(c) && i % 2 === 1 && !isSlanted(shape);
    const own = flipped ? halfTurned(shape) : shape;
    const polygon = applyToPolygon(moving(i * pitch, 0), cornered(own));
    cells.push({ outline: polygon, parts: [{ polygon, piece }] });
  }
  return cells;
}

/** What one copy yields, in its own frame: the recipe's shape, or the exact piece. */
function shapeOf(piece: Piece | undefined, c: Cells, width: Length, height: Length): Polygon {
  const recipe = c.recipes.find((r) => r.pieceId === piece?.id);
  return recipe?.polygon ?? piece?.cut ?? rectangle(0, 0, width, height);
}

/** Equal to itself after half a turn: it nests without being turned. */
function isSlanted(p: Polygon): boolean {
  const a = cornered(p);
  const b = cornered(halfTurned(p));
  return a.every((v) => b.some((w) => Math.hypot(v.x - w.x, v.y - w.y) < 1e-6));
}

const halfTurned = (p: Polygon): Polygon => applyToPolygon(turning(Math.PI), p);

/** A polygon moved so that its box has its lower left corner at the origin. */
export function cornered(p: Polygon): Polygon {
  const b = boundingBox(p);
  return applyToPolygon(moving(-b.left, -b.bottom), p);
}

/** Squares and rectangles side by side, each cut further into its pieces. */
function boxCells(c: Cells): Cell[] {
  const { first, height } = c.demand.shape;
  const wide = c.turned ? height : first;
  const high = c.turned ? first : height;
  const across = Math.max(1, Math.floor(c.width / wide + 1e-9));
  const cells: Cell[] = [];
  for (let i = 0; i < c.copies; i++) {
    const x = (i % across) * wide;
    const y = Math.floor(i / across) * high;
    const outline = rectangle(x, y, wide, high);
    cells.push({ outline, parts: partsOf(c, i, x, y, wide, high) });
  }
  return cells;
}

/**
 * The pieces of one square or rectangle. The first lies as its recipe has it; each further one is
 * turned by quarters, evenly round if it can be, and moved into the cell's corners, until it overlaps none before it.
 */
function partsOf(
  c: Cells,
  index: number,
  x: Length,
  y: Length,
  wide: Length,
  high: Length,
): Cell["parts"] {
  const pieces = piecesOf(c);
  const { piecesEach } = c.demand;
  const parts: { polygon: Polygon; piece?: Piece }[] = [];
  for (let k = 0; k < piecesEach; k++) {
    const piece = pieces[(piecesEach === 1 ? index : k) % Math.max(1, pieces.length)];
    const own = shapeOf(piece, c, wide, high);
    const shape = c.turned ? applyToPolygon(turning(-Math.PI / 2), own) : own;
    const polygon = freePlace(shape, parts, { x, y, wide, high }, (k * 4) / piecesEach);
    parts.push(piece ? { polygon, piece } : { polygon });
  }
  return parts;
}

interface Room {
  readonly x: Length;
  readonly y: Length;
  readonly wide: Length;
  readonly high: Length;
}

function freePlace(
  shape: Polygon,
  taken: readonly { readonly polygon: Polygon }[],
  room: Room,
  first: number,
): Polygon {
  // Turned on evenly first: two free quarters of a square may leave no room for the other two.
  const places = [first, 0, 2, 1, 3].flatMap((quarters) => {
    const turned = cornered(applyToPolygon(turning((quarters * Math.PI) / 2), shape));
    const box = boundingBox(turned);
    return [0, room.wide - box.right].flatMap((dx) =>
      [0, room.high - box.top].map((dy) =>
        applyToPolygon(moving(room.x + dx, room.y + dy), turned),
      ),
    );
  });
  const least = 1e-6 * room.wide * room.high;
  const free = places.find((p) => taken.every((t) => overlap(p, t.polygon) <= least));
  return free ?? places[0];
}

function overlap(a: Polygon, b: Polygon): number {
  const part = commonPart(a, b);
  return part.length < 3 ? 0 : area(part);
}
