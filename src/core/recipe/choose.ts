import type { Piece } from "../piece/index.ts";
import { mitredBorder } from "./mitred.ts";
import { anglesOf, type Bench, type CutPlan, near, type Way } from "./plan.ts";
import { cornerOff, halfSquareSliced, kite, template, twoMarks } from "./sliced.ts";
import { halfRectangle, squareOnce, squareTwice } from "./square.ts";
import { diamond, parallel, rectangle, trapezoid, wedge } from "./strip.ts";
import type { RecipeKind } from "./types.ts";

/** Every way of cutting, in the order in which they are preferred where several fit. */
const WAYS: readonly Way[] = [
  rectangle,
  mitredBorder,
  squareOnce,
  squareTwice,
  halfRectangle,
  wedge,
  kite,
  halfSquareSliced,
  trapezoid,
  diamond,
  parallel,
  cornerOff,
  twoMarks,
  template,
];

/** The ways in which the piece can be cut, the one to take by itself first. */
export function waysFor(piece: Piece, bench: Bench): Way[] {
  const fitting = WAYS.filter((w) => w.fits(piece, bench));
  const first = naturalKind(piece);
  return [...fitting.filter((w) => w.kind === first), ...fitting.filter((w) => w.kind !== first)];
}

/**
 * A half square whose grain rule lays its long side along the strip is cut from a square twice, else
 * once; a block's wedge is always cut as a wedge.
 */
function naturalKind(piece: Piece): RecipeKind | undefined {
  if (piece.setsSize) return "wedge";
  if (piece.cut.length !== 3) return undefined;
  return near(anglesOf(piece.cut)[2], 90) ? "square-twice" : undefined;
}

export const wayOf = (kind: string): Way | undefined => WAYS.find((w) => w.kind === kind);

export type { Bench, CutPlan, Way };
