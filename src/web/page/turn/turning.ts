import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { FreeWord } from "../../../core/turn/types.ts";

/** How the words of a sentence are freed and held while an answer is pinned. */
export interface Freeing {
  /** True or false: it may move, and does or does not. Undefined: it cannot. */
  readonly free: (word: string) => boolean | undefined;
  /** Frees a held word, holds a freed one; `role` is how it is called. */
  readonly turn: (word: string, role: string) => void;
}

/** A question turned round: answers that are pinned, as texts, and the words that may move. */
export interface TurnState {
  readonly pins: readonly string[];
  readonly free: readonly FreeWord[];
  /** Words that can move in this design; null until the search has told. */
  readonly may: readonly FreeWord[] | null;
  /** How these words of the sentence are freed and held; comes with the first pin. */
  readonly freeing?: (state: TurnState, words: readonly string[]) => Freeing | undefined;
}

export const turning = createStore<TurnState>(() => ({ pins: [], free: [], may: null }));

export const useTurning = <T>(pick: (s: TurnState) => T): T => useStore(turning, pick);
