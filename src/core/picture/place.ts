import { type AlikePlace, layOnPhoto, type PhotoLook, undone } from "../fabric/index.ts";
import {
  add,
  applyTo,
  applyToPolygon,
  type Box,
  boundingBox,
  moving,
  type Point,
  point,
} from "../geometry/index.ts";
import type { Length, Unit } from "../measure/index.ts";
import type { Piece } from "../piece/types.ts";
import type { Recipe } from "../recipe/types.ts";
import { boxOf, picture, rectangle, roughWidth } from "./compose.ts";
import {
  captionMarks,
  cornerOf,
  type Frame,
  type InBlock,
  inBlock,
  nearestCorner,
  sewn,
  shownPatch,
} from "./lives.ts";
import type { Mark, Picture } from "./marks.ts";

export interface PlacePictureOptions extends InBlock {
  readonly piece: Piece;
  readonly recipe: Recipe;
  readonly unit: Unit;
  /** The print the piece is cut from, and where on it the piece lies. */
  readonly look: PhotoLook;
  readonly at: AlikePlace;
  readonly small: Length;
  /** The fabric over the other three, where there is no room beside them. */
  readonly stacked?: boolean;
}

export interface PlacePicture {
  readonly picture: Picture;
  /** Where the photo's lower left corner lies in the picture. */
  readonly origin: Point;
  /** The fabric that is shown, and the middle of the piece on it, in the picture. */
  readonly window: Box;
  readonly middle: Point;
}

/** Short: the whole width belongs to the pictures. */
const CAPTIONS = ["on the fabric", "cut", "sewn", "in the block"] as const;

/** Id of the piece as it lies on the fabric: what is dragged. */
export const ON_FABRIC = "on-fabric";

/**
 * Four lives of a piece of a print whose place is being chosen. The fabric stands still and the piece
 * lies on it where it is told; cut, sewn and in the block it stands level, and shows what is there.
 */
export function placePicture(o: PlacePictureOptions): PlacePicture {
  const { block, piece, recipe, small } = o;
  const shown = shownPatch(block, piece, recipe);
  const corner = nearestCorner(shown.patch);
  const lit = cornerOf(shown, corner);
  const onPhoto = layOnPhoto(recipe.patch, o.at);
  const fabric = fabricFrame(o, applyTo(onPhoto, lit));
  const others: Frame[] = [
    {
      lit,
      polygons: [recipe.polygon],
      marks: [
        {
          kind: "shape",
          polygon: recipe.polygon,
          fill: { kind: "fabric", fabricId: piece.fabricId, at: undone(onPhoto) },
          line: "cut",
        },
        { kind: "shape", polygon: recipe.patch, line: "seam" },
      ],
    },
    sewn(o, shown.patch, corner),
    inBlock(o, shown.patch, corner),
  ];
  return laidOut(fabric, others, o, small);
}

/** One repeat of the fabric and half a piece more on every side, with the piece on it. */
function fabricFrame(o: PlacePictureOptions, lit: Point): Frame {
  const { look, recipe } = o;
  const box = boundingBox(recipe.polygon);
  const more = look.repeat ? Math.max(box.right - box.left, box.top - box.bottom) / 2 : 0;
  const width = look.repeat?.across ?? look.width;
  const height = look.repeat?.along ?? look.height;
  const seen = rectangle(-more, -more, width + 2 * more, height + 2 * more);
  const onPhoto = layOnPhoto(recipe.patch, o.at);
  return {
    lit,
    polygons: [seen],
    marks: [
      {
        kind: "shape",
        polygon: seen,
        fill: { kind: "fabric", fabricId: look.fabricId },
        line: "hair",
      },
      { kind: "shape", polygon: rectangle(0, 0, width, height), line: "ghost" },
      {
        kind: "group",
        at: moving(0, 0),
        clip: seen,
        marks: [
          {
            kind: "shape",
            polygon: applyToPolygon(onPhoto, recipe.polygon),
            line: "lit",
            id: ON_FABRIC,
          },
          { kind: "shape", polygon: applyToPolygon(onPhoto, recipe.patch), line: "seam" },
        ],
      },
    ],
  };
}

/** The three others level at their lit points; the fabric before them, or over them. */
function laidOut(
  fabric: Frame,
  others: readonly Frame[],
  o: PlacePictureOptions,
  small: Length,
): PlacePicture {
  const gap = 2.2 * small;
  const row = inRow(others, gap, small);
  const own = boxOf(fabric.polygons);
  const [wide, high] = [own.right - own.left, own.top - own.bottom];
  const rowMiddle = (row.box.top + row.box.bottom) / 2;
  const bottom = o.stacked ? row.box.top + 3.4 * small : rowMiddle - high / 2;
  const origin = point(-own.left, bottom - own.bottom);
  const right = o.stacked ? 0 : Math.max(wide, roughWidth(CAPTIONS[0], small)) + gap;
  const lit = [add(fabric.lit, origin), ...row.lit.map((p) => add(p, point(right, 0)))];
  const low = o.stacked ? row.box.bottom : Math.min(bottom, row.box.bottom);
  const marks: Mark[] = [
    { kind: "line", line: "press", points: lit },
    { kind: "group", at: moving(origin.x, origin.y), marks: fabric.marks },
    ...others.map(
      (f, i): Mark => ({
        kind: "group",
        at: moving(row.shifts[i].x + right, row.shifts[i].y),
        marks: f.marks,
      }),
    ),
    ...lit.map((at): Mark => ({ kind: "dot", at, line: "lit" })),
    ...captionMarks(CAPTIONS[0], undefined, 0, bottom, small),
    ...others.flatMap((_, i) =>
      captionMarks(CAPTIONS[i + 1], undefined, row.lefts[i] + right, row.box.bottom, small),
    ),
  ];
  const window = {
    left: 0,
    right: wide,
    bottom,
    top: bottom + high,
  };
  return {
    origin,
    window,
    middle: point(origin.x + o.at.x, origin.y + o.at.y),
    picture: picture({
      title: `${o.piece.name} ${o.piece.letter}: on the fabric, cut, sewn, in the block`,
      unit: o.unit,
      box: {
        left: 0,
        right: o.stacked ? Math.max(wide, row.box.right) : right + row.box.right,
        bottom: low,
        top: Math.max(window.top, row.box.top),
      },
      marks,
      small,
      edges: { left: small * 0.3, right: small * 0.3, top: small * 0.3, bottom: small * 1.9 },
    }),
  };
}

/** Frames side by side, every lit point at height 0. */
function inRow(frames: readonly Frame[], gap: Length, small: Length) {
  const shifts: Point[] = [];
  const lefts: Length[] = [];
  let [x, right, bottom, top] = [0, 0, 0, 0];
  frames.forEach((f, i) => {
    const b = boxOf(f.polygons);
    shifts.push(point(x - b.left, -f.lit.y));
    lefts.push(x);
    bottom = Math.min(bottom, b.bottom - f.lit.y);
    top = Math.max(top, b.top - f.lit.y);
    right = x + Math.max(b.right - b.left, roughWidth(CAPTIONS[i + 1], small));
    x = right + gap;
  });
  return {
    shifts,
    lefts,
    lit: frames.map((f, i) => add(f.lit, shifts[i])),
    box: { left: 0, right, bottom, top },
  };
}
