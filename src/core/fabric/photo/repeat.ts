import type { Finding } from "../../findings/index.ts";
import { type Field, fieldOf } from "./field.ts";
import { checkPixels, finish, type Pixels, type Progress } from "./pixels.ts";
import { shrunk } from "./shape.ts";

/** A print's repeat as found in a picture, in its pixels; the picture should stand level. */
export interface RepeatFound {
  readonly sure: boolean;
  readonly why?: string;
  /** Pixels of one repeat to the right and upward; 0 where none is seen. */
  readonly across: number;
  readonly along: number;
  /** Each second column of motifs set half a repeat higher. */
  readonly halfDrop: boolean;
  /** Agreement of the picture with itself one repeat on, in each direction: -1 to 1. */
  readonly agreesAcross: number;
  readonly agreesAlong: number;
}

const WORKING = 160;
const LEAST_REPEAT = 8;
const LEAST_AGREES = 0.7;
/** A shorter move that agrees nearly as well leaves the repeat in doubt. */
const RIVAL = 0.1;
/** A repeat is believed when the picture holds it once and this much of it again. */
const LARGEST_SHARE = 0.6;

interface Move {
  readonly at: number;
  readonly agrees: number;
}

/**
 * Finds how far a print must be moved to the right, and upward, to fall on itself. Moves are tried
 * one by one and compared over what overlaps, so neither edges nor uneven light mislead. Unsure when
 * the picture shows too little of a second repeat, or a shorter move does nearly as well. Yields its
 * progress.
 */
export function* findRepeat(pixels: Pixels): Generator<Progress, RepeatFound> {
  checkPixels(pixels);
  const work = shrunk(pixels, WORKING);
  let small: Pixels;
  for (;;) {
    const step = work.next();
    if (step.done) {
      small = step.value;
      break;
    }
    yield { done: step.value.done * 0.2 };
  }
  const field = fieldOf(small);
  const scale = Math.max(pixels.width, pixels.height) / Math.max(small.width, small.height);
  yield { done: 0.2 };
  const across = moves(field, field.width, (k) => [k, 0]);
  yield { done: 0.6 };
  const along = moves(field, field.height, (k) => [0, k]);
  yield { done: 0.95 };
  return judged(field, across, along, scale);
}

export const repeatFoundIn = (pixels: Pixels): RepeatFound => finish(findRepeat(pixels));

function judged(
  f: Field,
  across: readonly number[],
  along: readonly number[],
  scale: number,
): RepeatFound {
  const [x, y] = [bestMove(across), bestMove(along)];
  const halfDrop =
    x !== undefined &&
    y !== undefined &&
    agreement(f, Math.round(x.at / 2), Math.round(y.at / 2)) >= LEAST_AGREES;
  const found = {
    across: (x?.at ?? 0) * scale,
    along: (y?.at ?? 0) * scale,
    halfDrop,
    agreesAcross: x?.agrees ?? 0,
    agreesAlong: y?.agrees ?? 0,
  };
  const why = doubt("across", x, across) ?? doubt("along", y, along);
  return why ? { ...found, sure: false, why } : { ...found, sure: true };
}

function moves(f: Field, size: number, to: (k: number) => [number, number]): number[] {
  const most = Math.floor(size * LARGEST_SHARE) + 1;
  return Array.from({ length: most + 1 }, (_, k) => (k < 2 ? 1 : agreement(f, ...to(k))));
}

/** Agreement of the field with itself moved by (dx, dy) pixels, over what overlaps. */
function agreement(f: Field, dx: number, dy: number): number {
  let product = 0;
  let first = 0;
  let second = 0;
  for (const v of f.values)
    for (let y = 0; y + dy < f.height; y++) {
      const row = y * f.width;
      const other = (y + dy) * f.width + dx;
      for (let x = 0; x + dx < f.width; x++) {
        const p = v[row + x];
        const q = v[other + x];
        product += p * q;
        first += p * p;
        second += q * q;
      }
    }
  return first > 0 && second > 0 ? product / Math.sqrt(first * second) : 0;
}

/** The shortest move that agrees nearly as well as the best, between whole pixels. */
function bestMove(agrees: readonly number[]): Move | undefined {
  const peaks = peakMoves(agrees);
  const best = Math.max(0, ...peaks.map((p) => p.agrees));
  return peaks.find((p) => p.agrees >= best - 0.05 && p.agrees > 0.3);
}

function peakMoves(agrees: readonly number[]): Move[] {
  const out: Move[] = [];
  for (let k = LEAST_REPEAT; k + 1 < agrees.length; k++) {
    const [a, b, c] = [agrees[k - 1], agrees[k], agrees[k + 1]];
    if (b <= a || b < c) continue;
    const bend = a - 2 * b + c;
    const shift = bend < 0 ? (a - c) / (2 * bend) : 0;
    out.push({ at: k + shift, agrees: b - ((a - c) * shift) / 4 });
  }
  return out;
}

function doubt(
  word: string,
  move: Move | undefined,
  agrees: readonly number[],
): string | undefined {
  if (!move) return `no repeat is seen ${word} the fabric`;
  if (move.agrees < LEAST_AGREES)
    return `it does not fall on itself well enough ${word} the fabric`;
  const rival = peakMoves(agrees).find(
    (p) => p.at < move.at * 0.9 && p.agrees > move.agrees - RIVAL,
  );
  return rival ? `a shorter move does nearly as well ${word} the fabric` : undefined;
}

export const repeatFindings = (fabricId: string, r: RepeatFound): Finding[] =>
  r.sure
    ? []
    : [{ code: "repeat-unsure", severity: "draft", place: fabricId, words: { why: r.why ?? "" } }];
