import { answerBrief } from "../../core/answer/index.ts";
import { canonicalText } from "../../core/brief/index.ts";
import {
  LEAVES,
  type Leaf,
  type Left,
  lastVersion,
  leaving,
  remembering,
} from "../../core/shop/index.ts";
import type { Command, Given } from "../command.ts";
import { Ending, EXIT } from "../exit.ts";
import { readable, readInput, writeNew } from "../files.ts";

const bad = (message: string): Ending => new Ending(EXIT.bad, `record: ${message}`);
const WAYS = ["printed", "cut", "handed-out"] as const;

/** Today in the maker's own calendar, or the day that is said. */
export function dayOf(given: Given, command: string): string {
  const text = given.text("date");
  if (text === undefined) return new Date().toISOString().slice(0, 10);
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text) || Number.isNaN(Date.parse(text)))
    throw new Ending(EXIT.bad, `${command}: --date is said as 2026-11-25, got "${text}"`);
  return text;
}

const leafCalled = (text: string): Leaf => {
  const found = LEAVES.find((l) => l === text.trim());
  if (!found) throw bad(`"${text}" is not one of: ${LEAVES.join(", ")}`);
  return found;
};

export const record: Command = {
  name: "record",
  arguments: { usage: "BRIEF --handed-out WHAT ...", least: 1, most: 1 },
  summary: "remember in a brief what was printed, cut or handed out, with its numbers",
  options: {
    printed: {
      type: "string",
      value: "WHAT",
      multiple: true,
      help: `what was printed: ${LEAVES.join(", ")}`,
    },
    cut: { type: "string", value: "WHAT", multiple: true, help: "what was cut: kits" },
    "handed-out": { type: "string", value: "WHAT", multiple: true, help: "what was handed out" },
    to: { type: "string", value: "TEXT", help: "to whom, or where it lies" },
    count: { type: "string", value: "N", help: "how many" },
    edition: {
      type: "string",
      value: "TEXT",
      help: "the version printed on it (the last one noted, or 1, unless told)",
    },
    date: { type: "string", value: "YYYY-MM-DD", help: "when (today unless told)" },
    out: {
      type: "string",
      short: "o",
      value: "FILE",
      help: "a new file for the brief (standard output unless told)",
    },
  },
  examples: [
    'eighthwise record tidepool.json --handed-out pattern --to "spring class" -o tidepool-2.json',
  ],
  run: async (given, io) => {
    const { brief } = await readInput(given.arguments[0], io);
    const count = given.text("count");
    if (count !== undefined && !(Number.isInteger(Number(count)) && Number(count) > 0))
      throw bad(`--count is a whole number above 0, got "${count}"`);
    const to = given.text("to")?.slice(0, 120);
    const date = dayOf(given, "record");
    const answer = answerBrief(brief);
    const entries = WAYS.flatMap((what) =>
      given.texts(what).map(
        (text): Left =>
          leaving(brief, answer, {
            what,
            of: leafCalled(text),
            version: given.text("edition") ?? lastVersion(brief),
            date,
            ...(to && { to }),
            ...(count !== undefined && { count: Number(count) }),
          }),
      ),
    );
    if (entries.length === 0) throw bad("say what with --printed, --cut or --handed-out");
    const changed = structuredClone(brief);
    remembering(entries)(changed);
    const out = given.text("out");
    const text = canonicalText(readable("record", changed));
    if (out === undefined) io.out(text);
    else await writeNew(out, text);
    return EXIT.fine;
  },
};
