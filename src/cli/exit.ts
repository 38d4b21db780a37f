/** Exit codes of the command line. Documented in docs/command-line.md. */
export const EXIT = {
  fine: 0,
  /** A finding blocks cutting. */
  blocked: 1,
  /** Bad command or bad brief. */
  bad: 2,
  /** Cannot read or write. */
  io: 3,
  /** Stopped by the maker. */
  stopped: 4,
} as const;

/** Ends a command with a code and lines for standard error. The only thing commands throw. */
export class Ending extends Error {
  readonly code: number;
  readonly lines: readonly string[];
  constructor(code: number, ...lines: string[]) {
    super(lines[0] ?? "");
    this.code = code;
    this.lines = lines;
  }
}
