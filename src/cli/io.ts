import type { BestAnswer } from "./best.ts";

/** The streams of one run, so that a test can be the terminal. */
export interface Io {
  readonly input: () => AsyncIterable<Uint8Array>;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Set when the maker stops the run. */
  readonly signal: AbortSignal;
  /** Is standard error a terminal, where progress may be shown? */
  readonly terminal?: boolean;
  /** Where the best plans are looked for; in this thread unless told. */
  readonly best?: BestAnswer;
}
