import { type ParseArgsConfig, parseArgs } from "node:util";
import { Ending, EXIT } from "./exit.ts";
import type { Io } from "./io.ts";

/** An option of a command: one table for parsing and for `--help`. */
export interface OptionWords {
  readonly type: "string" | "boolean";
  readonly short?: string;
  /** What its value is called in the help: `--step LENGTH`. */
  readonly value?: string;
  readonly help: string;
  readonly default?: string;
  readonly multiple?: boolean;
}

export interface Given {
  readonly arguments: readonly string[];
  readonly text: (name: string) => string | undefined;
  readonly texts: (name: string) => readonly string[];
  readonly flag: (name: string) => boolean;
}

export interface Command {
  readonly name: string;
  /** "BRIEF", "[FILE]": shown in the usage line; lower bound and upper bound of how many. */
  readonly arguments: { readonly usage: string; readonly least: number; readonly most: number };
  readonly summary: string;
  readonly options: Readonly<Record<string, OptionWords>>;
  readonly examples: readonly string[];
  readonly run: (given: Given, io: Io) => Promise<number>;
}

/** Reads a command's arguments by its own table. Wrong ones end it with code 2 and the usage line. */
export function read(command: Command, args: readonly string[]): Given | "help" {
  const options: ParseArgsConfig["options"] = { help: { type: "boolean", short: "h" } };
  for (const [name, o] of Object.entries(command.options)) {
    options[name] = {
      type: o.type,
      ...(o.short ? { short: o.short } : {}),
      ...(o.multiple ? { multiple: true } : {}),
    };
  }
  const parsed = parse(command, [...args], options);
  if (parsed.values.help) return "help";
  const { least, most } = command.arguments;
  const n = parsed.positionals.length;
  if (n < least || n > most)
    throw bad(
      command,
      n < least
        ? "an argument is missing"
        : `too many arguments: ${parsed.positionals.slice(most).join(" ")}`,
    );
  const all = (name: string): string[] => {
    const v = parsed.values[name] ?? command.options[name]?.default;
    return v === undefined ? [] : (Array.isArray(v) ? v : [v]).map(String);
  };
  return {
    arguments: parsed.positionals,
    text: (name) => all(name).at(-1),
    texts: all,
    flag: (name) => parsed.values[name] === true,
  };
}

type Values = Readonly<Record<string, string | boolean | (string | boolean)[] | undefined>>;

function parse(command: Command, args: string[], options: ParseArgsConfig["options"]) {
  try {
    const { positionals, values } = parseArgs({
      args,
      options,
      allowPositionals: true,
      strict: true,
    });
    return { positionals, values: values as Values };
  } catch (e) {
    throw bad(command, (e as Error).message.split(". To specify")[0]);
  }
}

const bad = (command: Command, what: string): Ending =>
  new Ending(EXIT.bad, `${command.name}: ${what}`, `usage: ${usage(command)}`);

const usage = (c: Command): string =>
  `eighthwise ${c.name} ${c.arguments.usage} [options]`.replaceAll("  ", " ");

/** The help of one command, from the table that also parses it. */
export function helpOf(command: Command): string {
  const rows = Object.entries(command.options).map(([name, o]) => {
    const left = `  ${o.short ? `-${o.short}, ` : "    "}--${name}${o.type === "string" ? ` ${o.value ?? "TEXT"}` : ""}`;
    return [left, `${o.help}${o.default ? ` (${o.default} unless told)` : ""}`];
  });
  rows.push(["  -h, --help", "this text"]);
  const width = Math.max(...rows.map(([left]) => left.length)) + 2;
  return [
    `${command.summary}`,
    "",
    `usage: ${usage(command)}`,
    "",
    ...rows.map(([left, right]) => left.padEnd(width) + right),
    ...(command.examples.length > 0
      ? ["", "examples:", ...command.examples.map((e) => `  ${e}`)]
      : []),
    "",
  ].join("\n");
}
