import type { Command } from "../../src/cli/command.ts";
import { ran } from "../../src/cli/ran.testing.ts";
import { COMMANDS } from "../../src/cli/run.ts";
import { canonicalText, readBrief } from "../../src/core/brief/index.ts";
import { baseOf, typed } from "./asked.ts";
import { harmedText } from "./harm.ts";
import type { Broken } from "./laws.ts";
import type { Luck } from "./luck.ts";

export interface CommandCase {
  readonly base: number;
  /** The brief on standard input is that base, or this text. */
  readonly input?: string;
  readonly args: readonly string[];
}

/** Below a file there is no folder. */
const NOWHERE = "/dev/null/out";

/** What an option may be given, by what its value is called in the help; anything else besides. */
const VALUES: Readonly<Record<string, readonly string[]>> = {
  LENGTH: ["4 1/2", "1/4", "7 mm", "0", "-1", "1/64", "9999", "0.001"],
  N: ["1", "4", "0", "-2", "1.5", "1e9", "x", "100"],
  DEGREES: ["45", "60", "0", "-45", "1e-9"],
  POINT: ["sharp", "blunt", "blunt:3/16", "flat:3/8", "flat:-1", "blunt:99"],
  RULE: ["kite=strip-1/2", "corner=", "background=leg+7/8", "kite=2*strip-1=3"],
  PIN: ["size = 60 x 72", "blocks = 9", "ruler <= 5", "yardage A <= 1 yd"],
  WORDS: ["rows,columns", "strip", "mood", ","],
  WHAT: ["pattern", "kits", "card", "toString"],
  FILE: ["/dev/null", NOWHERE, "nowhere.csv", "package.json"],
  SIZE: ["letter 30", "4 x 2", "1 x 1 on a4", "0 x 0"],
  TEXT: ["spring class", "", "x".repeat(130), `${"x".repeat(119)}\u{1F9F5}`, "a\u0007b", "a\nb"],
  ID: ["block-0", "block-1", "constructor"],
  "YYYY-MM-DD": ["2026-11-25", "2026-02-30", "9999-99-99", "yesterday", "-1"],
  "STOP=LENGTH": ["U1=8 7/16", "U2 gap=-1/16", "U1=", "=4", "U99=1"],
  "NAME=LENGTH": ["acrossOne=7 1/2", "halfGap=-1", "toString=4", "wedgeBase="],
  "STRIPS=LENGTH": ["4=4 7/16", "2=1e9", "4=0", "five=5"],
  "LETTER=COUNT": ["C1=48", "A1=-1", "B=0", "C1=1e300", "=3"],
  "FABRIC=BOLT": ["reef=Reef", "foam=", "=x", "Reef=None"],
  FABRIC: ["reef", "Foam & spray", "none"],
  '"GAP over LENGTH"': ["1/2 over 40", "0 over 0", "-1 over 3", "9 over 1"],
  QUESTIONS: ["cover", "cover,enough", "all", "toString", ","],
};

/** Dear and bounded by their own tests: blocks sewn in numbers, plans searched with the solver. */
const DEAR = new Set(["samples", "best"]);

/** One command line: sound, nearly so, or with anything in any place. */
export function command(luck: Luck): CommandCase {
  const one: Command = luck.pick(COMMANDS);
  const name = luck.once(30) ? typed(luck) : one.name;
  const options = Object.entries(one.options).filter(([option]) => !DEAR.has(option));
  const given = options
    .filter(() => luck.once(Math.max(2, options.length / 2)))
    .flatMap(([option, o]) => {
      const key = `--${luck.once(40) ? typed(luck) : option}`;
      if (o.type === "boolean" && !luck.once(20)) return [key];
      // Nothing is ever written: what is said of the answer counts here.
      if (option === "out") return ["--out", NOWHERE];
      const known = VALUES[o.value ?? ""] ?? (o.value ?? "").split("|");
      return [key, luck.once(4) ? typed(luck) : luck.pick(known)];
    });
  const files = one.arguments.least + (luck.once(12) ? luck.int(-1, 1) : 0);
  const positional = Array.from({ length: Math.max(0, files) }, () =>
    luck.once(12) ? luck.pick(["nowhere.json", "/dev/null", ".", "--", typed(luck)]) : "-",
  );
  // "new" writes what it is given the name of.
  if (one.name === "new" && positional.length > 0) positional.splice(0, 1, NOWHERE);
  const quick = one.name === "size" ? ["--samples", "100"] : [];
  const base = luck.int(0, 3);
  return {
    base,
    ...(luck.once(5) && { input: harmedText(canonicalText(baseOf(base)), luck) }),
    args: [name, ...positional, ...given, ...quick],
  };
}

const CODES = new Set([0, 1, 2, 3, 4]);

/** What holds of every command line: a code of the list, a sentence for every refusal, no slip of ours. */
export async function ofCommand(
  c: CommandCase,
): Promise<{ readonly end: "accepted" | "refused"; readonly broken: readonly Broken[] }> {
  const input = c.input ?? canonicalText(baseOf(c.base));
  const { code, out, err } = await ran(c.args, input);
  const said = `${out}\n${err}`;
  const theirs = `${input} ${c.args.join(" ")}`;
  const found: Broken[] = [];
  const no = (law: string): void =>
    void found.push({ law, detail: `${JSON.stringify(c.args)}: ${code}, ${err.slice(0, 200)}` });
  if (!CODES.has(code)) no("a command ends with a code of the list");
  if (code >= 2 && !/^eighthwise: .{5}/m.test(err)) no("a command that is refused says why");
  if (code === 2 && out !== "") no("a command that is refused prints no result");
  if (/(?![\t\n\r])\p{Cc}/u.test(said)) no("nothing that a terminal obeys is printed");
  for (const [slip] of said.matchAll(/\b(undefined|NaN|Infinity)\b|\[object/g))
    if (!theirs.includes(slip)) no(`what is printed holds no "${slip}"`);
  if (out.startsWith("{") && out.includes('"eighthwise-brief"') && !readBrief(out).ok)
    no("a brief that is printed reads back");
  return { end: code >= 2 ? "refused" : "accepted", broken: found.slice(0, 3) };
}
