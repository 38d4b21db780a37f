import type { Drawing, Op } from "../../../core/picture/draw.ts";
import { FRACTION_SLASH, type Run } from "../../../core/picture/fraction.ts";
import type { Stroke } from "../../../core/picture/theme.ts";

type Ctx = CanvasRenderingContext2D;
type Points = readonly { readonly x: number; readonly y: number }[];

const photos = new Map<string, HTMLImageElement>();

/** A photo by its data address; painted once it has been decoded. */
function photoOf(data: string, ready: () => void): HTMLImageElement | null {
  const there = photos.get(data);
  if (there) return there.complete && there.naturalWidth > 0 ? there : null;
  const image = new Image();
  photos.set(data, image);
  image.onload = ready;
  image.src = data;
  return null;
}

function trace(ctx: Ctx, points: Points, closed: boolean): void {
  points.forEach((p, i) => {
    if (i === 0) ctx.moveTo(p.x, p.y);
    else ctx.lineTo(p.x, p.y);
  });
  if (closed) ctx.closePath();
}

function setStroke(ctx: Ctx, s: Stroke): void {
  ctx.strokeStyle = s.color;
  ctx.lineWidth = s.width;
  ctx.setLineDash(s.dash ? [...s.dash] : []);
  ctx.lineCap = s.round ? "round" : "butt";
}

/** Paints a drawing's list. `stamp` puts a stamp down; without it stamps are painted stroke by stroke. */
export interface PaintOptions {
  readonly drawing: Drawing;
  readonly ready: () => void;
  readonly stamp?: (ctx: Ctx, op: Extract<Op, { op: "use" }>) => void;
}

export function paintOps(ctx: Ctx, ops: readonly Op[], o: PaintOptions): void {
  for (const op of ops) paintOp(ctx, op, o);
}

function paintOp(ctx: Ctx, op: Op, o: PaintOptions): void {
  switch (op.op) {
    case "path":
      ctx.beginPath();
      trace(ctx, op.points, op.closed);
      fillAndStroke(ctx, op.fill, op.stroke);
      return;
    case "strokes":
      ctx.beginPath();
      for (const s of op.segments) trace(ctx, s, false);
      setStroke(ctx, op.stroke);
      ctx.stroke();
      return;
    case "circle":
      ctx.beginPath();
      ctx.arc(op.at.x, op.at.y, op.radius, 0, 2 * Math.PI);
      fillAndStroke(ctx, op.fill, op.stroke);
      return;
    case "group":
      if (op.clip) {
        ctx.save();
        ctx.beginPath();
        trace(ctx, op.clip, true);
        ctx.clip();
      }
      paintOps(ctx, op.ops, o);
      if (op.clip) ctx.restore();
      return;
    case "use":
      if (o.stamp) {
        o.stamp(ctx, op);
        return;
      }
      ctx.save();
      ctx.transform(...six(op.matrix));
      paintOps(ctx, o.drawing.stamps[op.of] ?? [], o);
      ctx.restore();
      return;
    case "image":
      paintPhoto(ctx, op, o);
      return;
    case "text":
      paintText(ctx, op);
  }
}

export const six = (m: readonly number[]): [number, number, number, number, number, number] => [
  m[0],
  m[1],
  m[2],
  m[3],
  m[4],
  m[5],
];

function fillAndStroke(ctx: Ctx, fill: string | undefined, stroke: Stroke | undefined): void {
  if (fill && fill !== "none") {
    ctx.fillStyle = fill;
    ctx.fill();
  }
  if (!stroke) return;
  setStroke(ctx, stroke);
  ctx.stroke();
}

function paintPhoto(ctx: Ctx, op: Extract<Op, { op: "image" }>, o: PaintOptions): void {
  const photo = photoOf(op.data, o.ready);
  if (!photo) return;
  ctx.save();
  ctx.beginPath();
  trace(ctx, op.clip, true);
  ctx.clip();
  for (const tile of op.tiles) {
    ctx.save();
    ctx.transform(...six(tile));
    ctx.drawImage(photo, 0, -op.height, op.width, op.height);
    ctx.restore();
  }
  ctx.restore();
}

/** Whole numbers stand apart from their fraction; the canvas font forms the fraction at the slash. */
const plain = (run: Run): string =>
  run.kind === "text"
    ? run.text
    : `${run.whole ? `${run.whole}\u2009` : ""}${run.above}${FRACTION_SLASH}${run.below}`;

function paintText(ctx: Ctx, op: Extract<Op, { op: "text" }>): void {
  ctx.save();
  ctx.translate(op.at.x, op.at.y);
  ctx.rotate((op.turn * Math.PI) / 180);
  ctx.font = `${op.bold ? 700 : 400} ${op.size}px "Alegreya Sans", sans-serif`;
  ctx.textAlign = op.anchor === "middle" ? "center" : op.anchor;
  const text = op.runs.map(plain).join("");
  if (op.halo) {
    ctx.strokeStyle = op.halo.color;
    ctx.lineWidth = op.halo.width;
    ctx.lineJoin = "round";
    ctx.setLineDash([]);
    ctx.strokeText(text, 0, 0);
  }
  ctx.fillStyle = op.color;
  ctx.fillText(text, 0, 0);
  ctx.restore();
}
