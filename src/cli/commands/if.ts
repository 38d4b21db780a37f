import { type Answer, answerBrief, askBow, askHole, askOneHand } from "../../core/answer/index.ts";
import type { Brief } from "../../core/brief/index.ts";
import type { Command, Given } from "../command.ts";
import { Ending, EXIT } from "../exit.ts";
import { readInput } from "../files.ts";
import { wrap } from "../text.ts";

const bad = (message: string): Ending => new Ending(EXIT.bad, `if: ${message}`);

/** "1/2 over 40" or "C1=48": two texts with a word or a sign between. */
function two(text: string, between: string, as: string): [string, string] {
  const at = text.indexOf(between);
  if (at < 1) throw bad(`${as}, got "${text}"`);
  return [text.slice(0, at), text.slice(at + between.length)];
}

function asked(given: Given, brief: Brief, answer: Answer): [string, string[]][] {
  const [hole, bow, hand] = ["hole", "bow", "one-hand"].map((name) => given.text(name));
  const out: [string, string[]][] = [];
  if (hole !== undefined)
    out.push([`A hole of ${hole} in the middle`, askHole(brief, answer, hole)]);
  if (bow !== undefined) {
    const [gap, long] = two(bow, " over ", "--bow is said as GAP over LENGTH");
    out.push([`A strip set that bows by ${bow}`, askBow(brief, answer, gap, long)]);
  }
  if (hand !== undefined) {
    const [letter, cut] = two(hand, "=", "--one-hand is said as LETTER=COUNT");
    out.push([`All ${letter} cut one hand`, askOneHand(brief, answer, letter, cut)]);
  }
  return out;
}

/** What follows when a design goes otherwise than it is drawn. */
export const ifOtherwise: Command = {
  name: "if",
  arguments: { usage: "BRIEF", least: 1, most: 1 },
  summary: "when it goes otherwise: a hole for the center, a bowed strip set, pieces of one hand",
  options: {
    hole: {
      type: "string",
      value: "LENGTH",
      help: "a hole in the middle instead of points, across flats when finished",
    },
    bow: {
      type: "string",
      value: '"GAP over LENGTH"',
      help: "a strip set that bows: the gap at its middle, and its length",
    },
    "one-hand": {
      type: "string",
      value: "LETTER=COUNT",
      help: "so many of a piece with lefts and rights, all cut one hand",
    },
  },
  examples: [
    "eighthwise if lantern.json --hole 2",
    'eighthwise if reef.json --bow "1/2 over 40"',
    "eighthwise if quiet.json --one-hand C1=48",
  ],
  run: async (given, io) => {
    const { brief } = await readInput(given.arguments[0], io);
    const answer = answerBrief(brief);
    const found = asked(given, brief, answer);
    if (found.length === 0) throw bad("say what goes otherwise: --hole, --bow or --one-hand");
    for (const [title, lines] of found)
      io.out(`${[title, ...lines.map((l) => wrap(l, "  "))].join("\n")}\n`);
    return EXIT.fine;
  },
};
