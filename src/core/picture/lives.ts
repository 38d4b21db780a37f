import type { AnswerBlock } from "../answer/types/answer.ts";
import type { Patch, SeamTree } from "../block/types.ts";
import type { PatchLook } from "../fabric/index.ts";
import {
  add,
  boundingBox,
  moving,
  norm,
  offset,
  type Point,
  type Polygon,
  point,
  type Rigid,
} from "../geometry/index.ts";
import type { Length, Unit } from "../measure/index.ts";
import type { Piece } from "../piece/types.ts";
import type { Recipe } from "../recipe/types.ts";
import { blockMarks, patchesOf, patchFill, seamsOf } from "./block.ts";
import { boxOf, picture, rectangle, roughWidth } from "./compose.ts";
import { coverMarks } from "./cover.ts";
import type { Mark, Picture } from "./marks.ts";
import { placing } from "./placing.ts";

/** A block with what shows in its patches. */
export interface InBlock {
  readonly block: AnswerBlock;
  readonly pieces: readonly Piece[];
  readonly looks?: readonly PatchLook[];
  readonly seam: Length;
}

export interface FourLivesOptions extends InBlock {
  readonly piece: Piece;
  readonly recipe: Recipe;
  readonly unit: Unit;
  /** Finished corner of the patch that is lit; default the one nearest the block's center. */
  readonly corner?: number;
  readonly captions?: readonly [string, string, string, string];
  readonly notes?: readonly [string, string, string, string];
  readonly small?: Length;
}

export const LIVES = ["on the fabric", "cut, with its allowance", "sewn", "in the block"] as const;

export interface Frame {
  readonly marks: readonly Mark[];
  readonly polygons: readonly Polygon[];
  /** The lit point in the frame's own coordinates. */
  readonly lit: Point;
}

/**
 * One piece on the fabric, cut, sewn to its neighbor, and in the block: one scale, the same corner
 * lit and at the same height in all four frames, a thin line running from one to the next behind.
 */
export function fourLives(options: FourLivesOptions): Picture {
  const { block, piece, recipe } = options;
  const shown = shownPatch(block, piece, recipe);
  const small = options.small ?? Math.max(block.width, block.height) / 18;
  const corner = options.corner ?? nearestCorner(shown.patch);
  const inPiece = cornerOf(shown, corner);
  const frames = [
    onFabric(options, inPiece),
    cutOut(options, inPiece),
    sewn(options, shown.patch, corner),
    inBlock(options, shown.patch, corner),
  ];
  return arranged(frames, options, small);
}

interface Shown {
  readonly patch: Patch;
  /** Carries the piece (and what its recipe yields) to the patch. */
  readonly at: Rigid;
}

/** Of the patches cut as this piece, the one turned least from the fabric. */
export function shownPatch(block: AnswerBlock, piece: Piece, recipe: Recipe): Shown {
  const slack = 1e-6 * Math.max(1, block.width);
  const all = block.patches
    .filter((p) => block.pieceOf[p.id] === piece.id)
    .flatMap((patch): Shown[] => {
      const at = placing(recipe.patch, patch.polygon, slack);
      return at ? [{ patch, at }] : [];
    });
  if (all.length === 0)
    throw new RangeError(`four lives: block ${block.id} has no patch cut as piece ${piece.id}`);
  return all.reduce((a, b) => (Math.abs(b.at.turn) < Math.abs(a.at.turn) - 1e-9 ? b : a));
}

export const nearestCorner = (patch: Patch): number => {
  const far = patch.polygon.map(norm);
  return far.indexOf(Math.min(...far));
};

/** The lit corner in the recipe's frame. */
export function cornerOf(shown: Shown, corner: number): Point {
  const target = shown.patch.polygon[corner];
  const { turn, mirrored, x, y } = shown.at;
  const p = point(target.x - x, target.y - y);
  const c = Math.cos(-turn);
  const s = Math.sin(-turn);
  const back = point(c * p.x - s * p.y, s * p.x + c * p.y);
  return mirrored ? point(-back.x, back.y) : back;
}

/** A stretch of the strip with the piece marked on it. */
function onFabric(o: FourLivesOptions, lit: Point): Frame {
  const box = boundingBox(o.recipe.polygon);
  const side = 0.35 * (box.right - box.left);
  const stretch = rectangle(
    box.left - side,
    box.bottom,
    box.right - box.left + 2 * side,
    box.top - box.bottom,
  );
  return {
    lit,
    polygons: [stretch],
    marks: [
      { kind: "shape", polygon: stretch, fill: { kind: "fabric", fabricId: o.piece.fabricId } },
      ...([0, 1] as const).map((i): Mark => {
        const y = i === 0 ? box.bottom : box.top;
        return {
          kind: "line",
          line: "cut",
          points: [point(box.left - side, y), point(box.right + side, y)],
        };
      }),
      { kind: "shape", polygon: o.recipe.polygon, line: "cut" },
      { kind: "shape", polygon: o.recipe.patch, line: "seam" },
    ],
  };
}

function cutOut(o: FourLivesOptions, lit: Point): Frame {
  return {
    lit,
    polygons: [o.recipe.polygon, o.recipe.patch],
    marks: coverMarks(o.recipe, { seam: o.seam, fabricId: o.piece.fabricId }),
  };
}

/** The smallest sewn unit that holds the patch, with its raw edges. */
export function sewn(o: InBlock, patch: Patch, corner: number): Frame {
  const unit = unitWith(o.block.tree, patch.id);
  const lit = patch.polygon[corner];
  if (!unit) return { lit, polygons: [patch.polygon], marks: [] };
  const raw = offset(
    unit.outline,
    unit.outline.map(() => o.seam),
  );
  const patches = patchesOf(unit).map(
    (p): Mark => ({ kind: "shape", polygon: p.polygon, fill: patchFill(o.block, p, o) }),
  );
  const seams = seamsOf(unit).map(
    (s): Mark => ({ kind: "line", line: "sewn", points: [s.seam.from, s.seam.to] }),
  );
  return {
    lit,
    polygons: [raw],
    marks: [
      { kind: "shape", polygon: raw, line: "cut", fill: { kind: "paper" } },
      ...patches,
      ...seams,
      { kind: "shape", polygon: unit.outline, line: "seam" },
    ],
  };
}

/** The lowest seam of the tree that has the patch on one side. */
function unitWith(
  tree: SeamTree,
  patchId: string,
): Extract<SeamTree, { kind: "seam" }> | undefined {
  if (tree.kind === "patch" || !patchesOf(tree).some((p) => p.id === patchId)) return undefined;
  for (const part of tree.parts) {
    const inner = unitWith(part, patchId);
    if (inner) return inner;
  }
  return tree;
}

export function inBlock(o: Omit<InBlock, "seam">, patch: Patch, corner: number): Frame {
  return {
    lit: patch.polygon[corner],
    polygons: [o.block.outline],
    marks: [
      ...blockMarks(o.block, o),
      { kind: "shape", polygon: patch.polygon, line: "lit", id: patch.id },
    ],
  };
}

/** Side by side, every lit point on the same line. */
function arranged(frames: readonly Frame[], o: FourLivesOptions, small: Length): Picture {
  const gap = 2.2 * small;
  const shifts: Point[] = [];
  const boxes = frames.map((f) => boxOf(f.polygons));
  let x = 0;
  const captions = o.captions ?? LIVES;
  const room = captions.map((text, i) =>
    Math.max(
      boxes[i].right - boxes[i].left,
      roughWidth(text, small),
      roughWidth(o.notes?.[i] ?? "", small),
    ),
  );
  boxes.forEach((b, i) => {
    shifts.push(point(x - b.left, -frames[i].lit.y));
    x += room[i] + gap;
  });
  const placed = boxes.map((b, i) => ({
    left: b.left + shifts[i].x,
    right: b.right + shifts[i].x,
    bottom: b.bottom + shifts[i].y,
    top: b.top + shifts[i].y,
  }));
  const box = {
    left: 0,
    right: placed[3].left + room[3],
    bottom: Math.min(...placed.map((p) => p.bottom)),
    top: Math.max(...placed.map((p) => p.top)),
  };
  const lit = frames.map((f, i) => add(f.lit, shifts[i]));
  const marks: Mark[] = [
    { kind: "line", line: "press", points: [lit[0], lit[3]] },
    ...frames.map(
      (f, i): Mark => ({ kind: "group", at: moving(shifts[i].x, shifts[i].y), marks: f.marks }),
    ),
    ...lit.map((at): Mark => ({ kind: "dot", at, line: "lit" })),
    ...captions.flatMap((text, i): Mark[] =>
      captionMarks(text, o.notes?.[i], placed[i].left, box.bottom, small),
    ),
  ];
  return picture({
    title: `${o.piece.name} ${o.piece.letter}: on the fabric, cut, sewn, in the block`,
    unit: o.unit,
    box,
    marks,
    small,
    edges: {
      left: small * 0.3,
      right: small * 0.3,
      top: small * 0.3,
      bottom: small * (o.notes ? 3.2 : 1.9),
    },
  });
}

export function captionMarks(
  text: string,
  note: string | undefined,
  left: Length,
  bottom: Length,
  small: Length,
): Mark[] {
  const at = point(left, bottom - 1.5 * small);
  const caption: Mark = { kind: "text", at, text, size: 1, anchor: "start", weight: "bold" };
  if (!note) return [caption];
  return [
    caption,
    {
      kind: "text",
      at: point(left, at.y - 1.3 * small),
      text: note,
      size: 1,
      anchor: "start",
      tone: "soft",
    },
  ];
}
