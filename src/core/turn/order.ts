import type { Design } from "./design.ts";
import type { FreeWord, Pin, Values } from "./types.ts";

/**
 * What sentences are ranked by. `target`: a size, a block or a number of blocks is pinned, or only what
 * is given: nearest to the pin, then nearest to the sentence as it is. `most`: only what there is of a
 * fabric is pinned: the largest quilt it makes.
 */
export type Aim = "target" | "most";

export function aimOf(pins: readonly Pin[]): Aim {
  const target = pins.some(
    (p) => p.kind === "size" || p.kind === "block" || (p.kind === "blocks" && p.relation !== "<="),
  );
  return !target && pins.some((p) => p.kind === "yardage") ? "most" : "target";
}

/** A sentence as it is ranked, before or after it is answered. */
export interface Ranked {
  readonly words: readonly FreeWord[];
  readonly values: Values;
  /** Whole steps it misses the pinned sizes by. */
  readonly steps: number;
  /** Finished top, to a millionth. */
  readonly area: number;
  /** How far its words are from what they say now. */
  readonly change: number;
}

/** Areas are compared to six figures behind the point: closer ones are equal. */
export const roundedArea = (width: number, height: number): number =>
  Math.round(width * height * 1e6) / 1e6;

/** Sum over the words of how many times larger or smaller they are now, in logarithms. */
export function changeOf(d: Design, v: Values): number {
  const { now } = d;
  const ratio = (a: number | undefined, b: number | undefined): number =>
    a === undefined || b === undefined || a === b
      ? 0
      : a === 0 || b === 0
        ? 1
        : Math.abs(Math.log(a / b));
  return (
    ratio(v.strip, now.strip) +
    (v.setting ? 1 : 0) +
    ratio(v.rows, now.rows) +
    ratio(v.columns, now.columns) +
    (v.setting ? 0 : ratio(v.side, now.side)) +
    ratio(v.sash, now.sash) +
    ratio(v.border, now.border) +
    (v.finer ? 0.1 : 0)
  );
}

/** Below 0: `a` before `b`. Nearest, or largest; then fewest words; then least changed; least fabric. */
export function compare(a: Ranked, b: Ranked, aim: Aim): number {
  return (
    a.steps - b.steps ||
    (aim === "most" ? b.area - a.area : 0) ||
    a.words.length - b.words.length ||
    (Math.abs(a.change - b.change) < 1e-9 ? 0 : a.change - b.change) ||
    a.area - b.area ||
    keyOf(a).localeCompare(keyOf(b))
  );
}

const keyOf = ({ values: v }: Ranked): string =>
  [v.setting, v.strip, v.side, v.sash, v.border, v.rows, v.columns, v.finer].join(" ");

/** One that changes all the words of another, and more, and comes no nearer, is not worth showing. */
export function outdone(a: Ranked, by: Ranked, aim: Aim): boolean {
  return (
    by.words.length < a.words.length &&
    by.words.every((w) => a.words.includes(w)) &&
    by.steps <= a.steps &&
    (aim === "target" || by.area >= a.area)
  );
}

/** Every choice of at most so many freed words, fewest first; the sentence as it is before all. */
export function waysOf(free: readonly FreeWord[], most: number): FreeWord[][] {
  let ways: FreeWord[][] = [[]];
  for (const word of free) ways = [...ways, ...ways.map((w) => [...w, word])];
  return ways
    .filter((w) => w.length <= most)
    .map((way, i) => ({ way, i }))
    .sort((a, b) => a.way.length - b.way.length || a.i - b.i)
    .map(({ way }) => way);
}
