/** The streams of one run, so that a test can be the terminal. */
export interface Io {
  readonly input: () => AsyncIterable<Uint8Array>;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Set when the maker stops the run. */
  readonly signal: AbortSignal;
}
