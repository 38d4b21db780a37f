import { type Command, helpOf, read } from "./command.ts";
import { answer } from "./commands/answer.ts";
import { chart } from "./commands/chart.ts";
import { check } from "./commands/check.ts";
import { make } from "./commands/make.ts";
import { newBrief } from "./commands/new.ts";
import { EXIT, Ending } from "./exit.ts";
import { version } from "../../package.json";

const COMMANDS: readonly Command[] = [newBrief, answer, make, check, chart];

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

/** Runs one command line; returns its exit code. Results go to stdout, findings to stderr. */
export async function run(args: readonly string[], signal: AbortSignal): Promise<number> {
  const [name, ...rest] = args;
  if (name === undefined || name === "--help" || name === "-h" || name === "help") {
    process.stdout.write(overview());
    return name === undefined ? EXIT.bad : EXIT.fine;
  }
  if (name === "--version") {
    process.stdout.write(`${version}\n`);
    return EXIT.fine;
  }
  const command = COMMANDS.find((c) => c.name === name);
  if (!command) throw new Ending(EXIT.bad, `there is no command "${name}"; eighthwise --help lists them`);
  const given = read(command, rest);
  if (given === "help") {
    process.stdout.write(helpOf(command));
    return EXIT.fine;
  }
  return command.run(given, signal);
}

async function main(): Promise<void> {
  const stopping = new AbortController();
  process.once("SIGINT", () => stopping.abort());
  process.stdout.on("error", (e: NodeJS.ErrnoException) => process.exit(e.code === "EPIPE" ? EXIT.fine : EXIT.io));
  try {
    process.exitCode = await run(process.argv.slice(2), stopping.signal);
  } catch (e) {
    if (!(e instanceof Ending)) throw e;
    for (const line of e.lines) process.stderr.write(`eighthwise: ${line}\n`);
    process.exitCode = e.code;
  }
}

await main();
