import type { FreeWord } from "../../../core/turn/types.ts";
import { sayAloud } from "../view.ts";
import { type Freeing, type TurnState, turning } from "./turning.ts";

/** What a pin is about, whatever it is held at: "yardage B". */
const subjectOf = (pin: string): string =>
  pin
    .split(/[<>=≤≥]/)[0]
    .trim()
    .toLowerCase();

/** Is this answer pinned, at whatever it was changed to since? */
export const isPinned = (pins: readonly string[], pin: string): boolean =>
  pins.some((p) => subjectOf(p) === subjectOf(pin));

/** Pins an answer, or lets it go; the first pin frees the words a maker would move first. */
export function pinIt(pin: string): void {
  const { pins, free } = turning.getState();
  if (isPinned(pins, pin)) {
    const left = pins.filter((p) => subjectOf(p) !== subjectOf(pin));
    if (left.length === 0) letGo();
    else turning.setState({ pins: left });
    return;
  }
  turning.setState({
    freeing: freeingOf,
    pins: [...pins, pin],
    free: free.length > 0 ? free : ["strip", "rows", "columns"],
  });
}

export const letGo = (): void => turning.setState({ pins: [], free: [], may: null });

/** What a word of the sentence frees, by its id; `border` of them only the outermost. */
const FREES: Readonly<Record<string, readonly FreeWord[]>> = {
  strip: ["strip"],
  setting: ["setting"],
  grid: ["rows", "columns"],
  blocks: ["rows", "columns"],
  side: ["float"],
  sashing: ["sashing"],
  borders: ["borders"],
  step: ["step"],
};

/** Nothing where no answer is pinned: a word then opens as it always does. */
function freeingOf({ pins, free, may }: TurnState, words: readonly string[]): Freeing | undefined {
  if (pins.length === 0) return undefined;
  const outer = words.filter((w) => /^border\/\d+$/.test(w)).at(-1);
  const movesOf = (word: string): readonly FreeWord[] =>
    (word === outer ? FREES.borders : (FREES[word.split("/")[0]] ?? [])).filter(
      (w) => may === null || may.includes(w),
    );
  const freed = (word: string): boolean => movesOf(word).some((w) => free.includes(w));
  return {
    free: (word) => (movesOf(word).length === 0 ? undefined : freed(word)),
    turn: (word, role) => {
      const on = !freed(word);
      const moves = movesOf(word);
      turning.setState({
        free: [...free.filter((w) => !moves.includes(w)), ...(on ? moves : [])],
      });
      sayAloud(`${role}: ${on ? "free to move" : "held as it is"}.`);
    },
  };
}
