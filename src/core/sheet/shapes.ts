import {
  applyToPolygon,
  clip,
  dot,
  leftHalfPlane,
  type Polygon,
  point,
  turning,
} from "../geometry/index.ts";
import { type Picture, piecePicture } from "../picture/index.ts";
import type { Piece } from "../piece/index.ts";
import { fabricLetter, fabricName, recipeOf, type SheetJob, smallAt, trueScale } from "./job.ts";

/** One shape to print, for all the pieces that are cut by it. */
export interface Template {
  readonly pieces: readonly Piece[];
  readonly cut: Polygon;
  readonly finished: Polygon;
}

/** Pieces of one shape share a template, unless a hand tells them apart. */
export function templatesOf(job: SheetJob): Template[] {
  const shapes = new Map<string, Piece[]>();
  const keyOf = (p: Piece): string =>
    `${p.hand} ${shapeOf(job, p)
      .map((v) => `${fixed(v.x)},${fixed(v.y)}`)
      .join(" ")}`;
  for (const p of [...job.answer.pieces].sort((a, b) => (a.letter < b.letter ? -1 : 1)))
    if (needed(job, p)) shapes.set(keyOf(p), [...(shapes.get(keyOf(p)) ?? []), p]);
  return [...shapes.values()].map((pieces) => ({
    pieces,
    cut: shapeOf(job, pieces[0]),
    finished: pieces[0].finished,
  }));
}

/** Without the sign of a zero. */
const fixed = (x: number): string => (Math.round(x * 1e4) / 1e4 + 0).toFixed(4);

/** Plain rectangles are cut with a ruler; a template of a long border would only cost paper. */
function needed(job: SheetJob, piece: Piece): boolean {
  return recipeOf(job, piece.id)?.kind !== "rectangle";
}

/** What is really cut where the cut sets the patch; else the exact piece, its sharp points trimmed. */
function shapeOf(job: SheetJob, piece: Piece): Polygon {
  const recipe = recipeOf(job, piece.id);
  if (
    recipe &&
    (recipe.kind === "wedge" || recipe.kind === "kite") &&
    recipe.verdict === "proved"
  ) {
    const shift = point(
      piece.finished[0].x - recipe.patch[0].x,
      piece.finished[0].y - recipe.patch[0].y,
    );
    const turned = Math.hypot(
      recipe.patch[1].x - recipe.patch[0].x - piece.finished[1].x + piece.finished[0].x,
      recipe.patch[1].y - recipe.patch[0].y - piece.finished[1].y + piece.finished[0].y,
    );
    if (turned < 1e-6) return recipe.polygon.map((v) => point(v.x + shift.x, v.y + shift.y));
  }
  return piece.trims.reduce<Polygon>((p, trim) => {
    const plane = leftHalfPlane(trim.from, trim.to);
    const inside = plane.c - dot(plane.n, piece.finished[0]);
    const other = piece.finished.some((v) => plane.c - dot(plane.n, v) > 1e-6);
    const kept = other || inside > 1e-6 ? plane : leftHalfPlane(trim.to, trim.from);
    return clip(p, kept, 1e-9);
  }, piece.cut);
}

/** `part`: what of the sewn shape one sheet of several shows; it has its words to itself. */
export function templatePicture(
  job: SheetJob,
  t: Template,
  upright = false,
  part?: Polygon,
): Picture {
  const small = smallAt(trueScale(job));
  const piece = t.pieces[0];
  const letters = t.pieces.map((p) => p.letter).join(" ");
  const counts = t.pieces.map(
    (p) => `${p.count} of ${fabricLetter(job, p.fabricId)}, ${fabricName(job, p.fabricId)}`,
  );
  return piecePicture(piece, {
    unit: job.brief.unit,
    small,
    letter: letters,
    words: [
      piece.name,
      ...counts.map((c) => `cut ${c}`),
      ...(piece.hand === "none" ? [] : ["right side up"]),
    ],
    trimmed: t.cut,
    center: centerOf(piece),
    upright,
    ...(part ? { within: part, shortEdges: false } : {}),
  });
}

/** The finished corner that comes to the block's center: the sharpest, of a wedge or a kite. */
function centerOf(piece: Piece): number {
  if (!/wedge|kite/.test(piece.name)) return -1;
  const n = piece.finished.length;
  const angles = piece.finished.map((v, i) => {
    const a = piece.finished[(i + n - 1) % n];
    const b = piece.finished[(i + 1) % n];
    const [ax, ay, bx, by] = [a.x - v.x, a.y - v.y, b.x - v.x, b.y - v.y];
    return Math.acos((ax * bx + ay * by) / (Math.hypot(ax, ay) * Math.hypot(bx, by)));
  });
  return angles.indexOf(Math.min(...angles));
}

/** The same shape lying on its side. */
export function quarterTurned(t: Template): Template {
  const turn = (p: Polygon): Polygon => applyToPolygon(turning(Math.PI / 2), p);
  const finished = turn(t.finished);
  const first = t.pieces[0];
  return {
    pieces: [{ ...first, finished, cut: turn(first.cut) }, ...t.pieces.slice(1)],
    cut: turn(t.cut),
    finished,
  };
}
