import type { Answer } from "../core/answer/index.ts";
import type { Brief } from "../core/brief/index.ts";
import type { FabricLayout } from "../core/layout/index.ts";

/** How hard to look for the least fabric. */
export interface Search {
  readonly nodes: number;
  readonly stacks: boolean;
}

/** Answers a brief with the best cutting plans; `told` hears of every better one. */
export type BestAnswer = (
  brief: Brief,
  search: Search,
  told: (better: FabricLayout) => void,
  signal: { readonly aborted: boolean },
) => Promise<Answer>;

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
