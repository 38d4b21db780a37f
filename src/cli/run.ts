import { version } from "../../package.json";
import { type Command, helpOf, read } from "./command.ts";
import { answer } from "./commands/answer.ts";
import { chart } from "./commands/chart.ts";
import { check } from "./commands/check.ts";
import { classCommand } from "./commands/class.ts";
import { from } from "./commands/from.ts";
import { ifOtherwise } from "./commands/if.ts";
import { kits } from "./commands/kits.ts";
import { make } from "./commands/make.ts";
import { measure } from "./commands/measure.ts";
import { newBrief } from "./commands/new.ts";
import { record } from "./commands/record.ts";
import { ripple } from "./commands/ripple.ts";
import { size } from "./commands/size.ts";
import { turn } from "./commands/turn.ts";
import { why } from "./commands/why.ts";
import { Ending, EXIT } from "./exit.ts";
import type { Io } from "./io.ts";

/** Every command, in the order they are listed. */
export const COMMANDS: readonly Command[] = [
  newBrief,
  answer,
  make,
  check,
  chart,
  turn,
  from,
  measure,
  size,
  why,
  ifOtherwise,
  kits,
  classCommand,
  record,
  ripple,
];

const overview = (): string =>
  [
    "eighthwise: from one decided wedge block to proved numbers and cutting plans",
    "",
    "usage: eighthwise COMMAND ...",
    "",
    ...COMMANDS.map((c) => `  ${c.name.padEnd(8)}${c.summary}`),
    "",
    "eighthwise COMMAND --help tells more. BRIEF may be - for standard input.",
    "exit codes: 0 fine, 1 a finding blocks cutting, 2 bad command or bad brief,",
    "3 cannot read or write, 4 stopped",
    "",
  ].join("\n");

async function dispatch(args: readonly string[], io: Io): Promise<number> {
  const [name, ...rest] = args;
  if (name === undefined || name === "--help" || name === "-h" || name === "help") {
    io.out(overview());
    return name === undefined ? EXIT.bad : EXIT.fine;
  }
  if (name === "--version") {
    io.out(`${version}\n`);
    return EXIT.fine;
  }
  const command = COMMANDS.find((c) => c.name === name);
  if (!command)
    throw new Ending(EXIT.bad, `there is no command "${name}"; eighthwise --help lists them`);
  const given = read(command, rest);
  if (given === "help") {
    io.out(helpOf(command));
    return EXIT.fine;
  }
  return command.run(given, io);
}

/** Text from a file may hold what a terminal obeys: shown as JSON would write it. */
const shown = (text: string): string =>
  text.replace(
    /(?![\t\n\r])[\p{Cc}\p{Bidi_Control}]/gu,
    (c) => `\\u${(c.codePointAt(0) ?? 0).toString(16).padStart(4, "0")}`,
  );

/** Runs one command line; returns its exit code. Results go to `out`, findings and refusals to `err`. */
export async function run(args: readonly string[], given: Io): Promise<number> {
  const io: Io = {
    ...given,
    out: (text) => given.out(shown(text)),
    err: (text) => given.err(shown(text)),
  };
  try {
    return await dispatch(args, io);
  } catch (e) {
    if (!(e instanceof Ending)) throw e;
    for (const line of e.lines) io.err(`eighthwise: ${line}\n`);
    return e.code;
  }
}
