import { answerBrief, measuresOf } from "../../core/answer/index.ts";
import { type Brief, computedText } from "../../core/brief/index.ts";
import { say } from "../../core/findings/index.ts";
import { exactIn, type Length, parseLength, stepOf } from "../../core/measure/index.ts";
import { rulerOf } from "../../core/recipe/index.ts";
import {
  type Diagnosis,
  diagnose,
  READING_WORDS,
  READINGS,
  type ReadingName,
  type Readings,
  type SewnCircle,
  sayCause,
  sayConfidence,
  sayRemedy,
  sewnCircleOf,
  usualError,
} from "../../core/sewing/index.ts";
import type { Command, Given } from "../command.ts";
import { Ending, EXIT } from "../exit.ts";
import { readInput } from "../files.ts";

const bad = (message: string): Ending => new Ending(EXIT.bad, `why: ${message}`);

/** `across-one` on the command line is `acrossOne` in the core. */
const typedName = (name: ReadingName): string =>
  name.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`);

/** "across-one=8 1/4": a minus is allowed, because a gap and a ripple are the two ways of one reading. */
function readingsOf(given: Given, brief: Brief): Readings {
  const entries = given.texts("measured").map((text): [ReadingName, Length] => {
    const at = text.indexOf("=");
    const name = READINGS.find((n) => typedName(n) === text.slice(0, at).trim());
    if (at < 0 || !name)
      throw bad(
        `--measured is said as ${READINGS.map(typedName).join(", ")} and = and a length, got "${text}"`,
      );
    const size = text.slice(at + 1).trim();
    const negative = size.startsWith("-");
    const r = parseLength(negative ? size.slice(1) : size, brief.unit);
    if (!r.ok) throw bad(`--measured ${typedName(name)}: "${size}" is not a length`);
    const value = exactIn(r.length, brief.unit).valueOf();
    return [name, negative ? -value : value];
  });
  if (entries.length === 0) throw bad("say at least one reading with --measured NAME=LENGTH");
  return Object.fromEntries(entries);
}

function circleOf(brief: Brief, blockId: string | undefined): SewnCircle {
  const answer = answerBrief(brief);
  const wedges = answer.blocks.filter((b) => b.radial);
  const block = blockId === undefined ? wedges[0] : wedges.find((b) => b.id === blockId);
  const known = wedges.map((b) => b.id).join(", ") || "none";
  if (!block) throw bad(`--block ${blockId ?? ""}: blocks of wedges in this brief: ${known}`);
  const ruler = rulerOf(brief.ruler, block.radial!.n, brief.unit);
  return sewnCircleOf(block, measuresOf(brief).seam, ruler.missing, brief.unit)!;
}

function text(d: Diagnosis, brief: Brief): string {
  const step = stepOf(brief.step, brief.unit);
  const lines = [
    sayConfidence(d),
    ...d.findings.map((f) => `${f.severity}: ${say(f, { step })}`),
    ...d.causes.flatMap((c) => [
      "",
      `${sayCause(c, brief.unit)} (${Math.round(100 * c.chance)} in 100)`,
      ...(c.remedy ? sayRemedy(c.remedy, brief.unit).map((line) => `  ${line}`) : []),
    ]),
  ];
  return `${lines.join("\n")}\n`;
}

const NAMES = READINGS.map((n) => `${typedName(n)} (${READING_WORDS[n]})`).join("; ");

export const why: Command = {
  name: "why",
  arguments: { usage: "BRIEF --measured NAME=LENGTH ...", least: 1, most: 1 },
  summary: "why a sewn block is off: readings in, likely causes and remedies out",
  options: {
    measured: {
      type: "string",
      short: "m",
      value: "NAME=LENGTH",
      multiple: true,
      help: `a reading; names: ${NAMES}`,
    },
    block: {
      type: "string",
      value: "ID",
      help: "which block was measured (the first of wedges unless told)",
    },
    json: { type: "boolean", help: "the diagnosis as JSON" },
  },
  examples: [
    'eighthwise why tidepool.json --measured "across-one=8 1/4" --measured "across-two=8 1/4"',
  ],
  run: async (given, io) => {
    const { brief } = await readInput(given.arguments[0], io);
    const readings = readingsOf(given, brief);
    const result = diagnose(circleOf(brief, given.text("block")), readings, usualError(brief.unit));
    io.out(given.flag("json") ? computedText(result) : text(result, brief));
    return EXIT.fine;
  },
};
