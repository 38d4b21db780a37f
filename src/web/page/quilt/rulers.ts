import type { Unit } from "../../../core/measure/unit.ts";
import type { Theme } from "../../../core/picture/theme.ts";
import type { Stand, Window } from "./stand.ts";

export interface Size {
  readonly width: number;
  readonly height: number;
  /** Texts of the whole length, as the core prints it. */
  readonly widthText: string;
  readonly heightText: string;
}

const STEPS = {
  in: [1 / 8, 1 / 4, 1 / 2, 1, 2, 4, 8, 16, 32],
  mm: [1, 5, 10, 50, 100, 200, 500, 1000],
} as const;

/** The finest marks at least this many pixels apart, and figures at least so many. */
const MARK_PX = 7;
const FIGURE_PX = 64;

const stepFor = (unit: Unit, scale: number, pixels: number): number =>
  STEPS[unit].find((s) => s * scale >= pixels) ?? STEPS[unit][STEPS[unit].length - 1];

/** Tapes along the lower and the left side of the quilt; they stay at the window when it leaves. */
export function paintRulers(
  ctx: CanvasRenderingContext2D,
  stand: Stand,
  w: Window,
  size: Size,
  unit: Unit,
  theme: Theme,
  sides: { readonly left: boolean },
): void {
  const midX = (w.left + w.right) / 2;
  const midY = (w.top + w.bottom) / 2;
  const x = (v: number): number => midX + (v - stand.x) * stand.scale;
  const y = (v: number): number => midY - (v - stand.y) * stand.scale;
  ctx.strokeStyle = theme.ink;
  ctx.fillStyle = theme.ink;
  ctx.lineWidth = 1;
  ctx.setLineDash([]);
  const foot = Math.min(w.bottom, y(-size.height / 2)) + 11.5;
  const side = Math.max(w.left, x(-size.width / 2)) - 11.5;
  const tape = { unit, scale: stand.scale };
  alongX(ctx, tape, x, foot, [w.left, w.right], size.width, size.widthText);
  if (sides.left) alongY(ctx, tape, y, side, [w.top, w.bottom], size.height, size.heightText);
}

interface Along {
  readonly unit: Unit;
  readonly scale: number;
}

function marks({ unit, scale }: Along, length: number) {
  const mark = stepFor(unit, scale, MARK_PX);
  const figure = Math.max(stepFor(unit, scale, FIGURE_PX), unit === "in" ? 1 : 10);
  const count = Math.floor(length / mark + 1e-9);
  const every = Math.max(1, Math.round(figure / mark));
  return { mark, count, every };
}

function alongX(
  ctx: CanvasRenderingContext2D,
  tape: Along,
  x: (v: number) => number,
  foot: number,
  [from, to]: readonly [number, number],
  length: number,
  text: string,
): void {
  const { mark, count, every } = marks(tape, length);
  const start = -length / 2;
  const a = Math.max(from, x(start));
  const b = Math.min(to, x(-start));
  if (b <= a) return;
  ctx.beginPath();
  ctx.moveTo(a, foot);
  ctx.lineTo(b, foot);
  const end = x(-start);
  const bold = '700 17px "Alegreya Sans", sans-serif';
  ctx.font = bold;
  const room = ctx.measureText(text).width + 14;
  ctx.font = '400 17px "Alegreya Sans", sans-serif';
  ctx.textAlign = "center";
  for (let i = 0; i <= count; i++) {
    const at = Math.round(x(start + i * mark)) + 0.5;
    if (at < a - 1 || at > b + 1) continue;
    const whole = i % every === 0;
    ctx.moveTo(at, foot);
    ctx.lineTo(at, foot + (whole ? 10 : i % (every / 2) === 0 ? 7 : 4.5));
    if (whole && i > 0 && at < end - room) ctx.fillText(String(i * mark), at, foot + 26);
  }
  ctx.moveTo(Math.min(b, Math.round(end) - 0.5), foot);
  ctx.lineTo(Math.min(b, Math.round(end) - 0.5), foot + 10);
  ctx.stroke();
  if (end > to + 1) return;
  ctx.font = bold;
  ctx.textAlign = "right";
  ctx.fillText(text, end, foot + 26);
}

function alongY(
  ctx: CanvasRenderingContext2D,
  tape: Along,
  y: (v: number) => number,
  side: number,
  [from, to]: readonly [number, number],
  length: number,
  text: string,
): void {
  const { mark, count, every } = marks(tape, length);
  const start = -length / 2;
  const a = Math.max(from, y(-start));
  const b = Math.min(to, y(start));
  if (b <= a) return;
  ctx.beginPath();
  ctx.moveTo(side, a);
  ctx.lineTo(side, b);
  for (let i = 0; i <= count; i++) {
    const at = Math.round(y(start + i * mark)) - 0.5;
    if (at < a - 1 || at > b + 1) continue;
    ctx.moveTo(side, at);
    ctx.lineTo(side - (i % every === 0 ? 10 : i % (every / 2) === 0 ? 7 : 4.5), at);
  }
  ctx.stroke();
  ctx.save();
  ctx.translate(side - 16, (a + b) / 2);
  ctx.rotate(-Math.PI / 2);
  ctx.font = '700 17px "Alegreya Sans", sans-serif';
  ctx.textAlign = "center";
  ctx.fillText(text, 0, 0);
  ctx.restore();
}
