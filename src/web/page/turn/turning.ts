import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { FreeWord } from "../../../core/turn/types.ts";

/** A question turned round: answers that are pinned, as texts, and the words that may move. */
export interface TurnState {
  readonly pins: readonly string[];
  readonly free: readonly FreeWord[];
}

export const turning = createStore<TurnState>(() => ({ pins: [], free: [] }));

export const useTurning = <T>(pick: (s: TurnState) => T): T => useStore(turning, pick);

/** Pins an answer; the first pin frees the words a maker would move first. */
export function pinIt(pin: string): void {
  turning.setState(({ pins, free }) => ({
    pins: pins.includes(pin) ? pins : [...pins, pin],
    free: free.length > 0 ? free : ["strip", "rows", "columns"],
  }));
}

export const letGo = (): void => turning.setState({ pins: [], free: [] });

/** Words of the sentence that a freed word moves, by the first part of their ids. */
const SAYS: Readonly<Record<FreeWord, readonly string[]>> = {
  strip: ["strip"],
  setting: ["setting"],
  rows: ["grid", "blocks"],
  columns: ["grid", "blocks"],
  float: ["side"],
  sashing: ["sashing"],
  borders: ["borders", "border"],
  step: ["step"],
};

/** Is this word of the sentence free to move? */
export const isFreed = (free: readonly FreeWord[], wordId: string): boolean =>
  free.some((w) => SAYS[w].includes(wordId.split("/")[0]));
