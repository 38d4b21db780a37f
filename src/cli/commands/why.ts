import {
  type Answer,
  answerBrief,
  type CauseRow,
  changed,
  judgeReadings,
  type WhyTable,
  whyCircles,
  whyTables,
} from "../../core/answer/index.ts";
import {
  type Brief,
  canonicalText,
  computedText,
  keepReading,
  recorded,
} from "../../core/brief/index.ts";
import { say } from "../../core/findings/index.ts";
import { stepOf } from "../../core/measure/index.ts";
import {
  type Diagnosis,
  READING_WORDS,
  READINGS,
  type ReadingName,
} from "../../core/sewing/index.ts";
import type { Command, Given } from "../command.ts";
import { Ending, EXIT } from "../exit.ts";
import { readable, readInput, writeNew } from "../files.ts";
import { wrap } from "../text.ts";

const bad = (message: string): Ending => new Ending(EXIT.bad, `why: ${message}`);

/** `across-one` on the command line is `acrossOne` in the core. */
const typedName = (name: ReadingName): string =>
  name.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`);

/** "across-one=8 1/4": which reading, and its text as typed. */
function takenFrom(text: string): { name: ReadingName; size: string } {
  const at = text.indexOf("=");
  const name = READINGS.find((n) => typedName(n) === text.slice(0, Math.max(0, at)).trim());
  if (!name)
    throw bad(
      `--measured is said as ${READINGS.map(typedName).join(", ")} and = and a length, got "${text}"`,
    );
  return { name, size: text.slice(at + 1).trim() };
}

/** The circle that was measured, and the brief with the readings kept in it as the page keeps them. */
function measured(given: Given, brief: Brief, answer: Answer) {
  const circles = whyCircles(brief, answer);
  const id = given.text("block");
  const found = circles.find((c) => id === undefined || c.block.id === id);
  const known = circles.map((c) => c.block.id).join(", ") || "none";
  if (!found) throw bad(`--block ${id ?? ""}: blocks of wedges in this brief: ${known}`);
  const { block, circle } = found;
  const taken = given.texts("measured").map(takenFrom);
  const kept = changed(brief, (d) => {
    for (const { name, size } of taken) keepReading(block.id, name, size)(d);
  });
  const readings = recorded(kept, "reading").filter((e) => e.block === block.id);
  const empty = taken.find((t) => t.size === "");
  if (empty) throw bad(`--measured ${typedName(empty.name)}: nothing is measured`);
  const judged = judgeReadings(kept, circle, readings);
  if (judged.refused.length > 0)
    throw new Ending(
      EXIT.bad,
      ...judged.refused.map((n) => `why: --measured ${typedName(n)}: ${judged.problems.get(n)}`),
    );
  if (!judged.diagnosis) throw bad("say at least one reading with --measured NAME=LENGTH");
  const table = whyTables(kept, answer).find((t) => t.block.id === block.id) as WhyTable;
  return { kept, table, diagnosis: judged.diagnosis };
}

function text(table: WhyTable, d: Diagnosis, brief: Brief): string {
  const step = stepOf(brief.step, brief.unit);
  const wanted = table.rows.find((r) => r.wanted);
  const cause = (c: CauseRow): string[] => [
    "",
    wrap(`${c.text} (${[c.tied ? "a tie" : "", c.chance, c.range].filter(Boolean).join("; ")})`),
    ...c.remedies.map((line) => wrap(line, "  ")),
  ];
  return `${[
    table.outcome,
    ...d.findings.map((f) => wrap(`${f.severity}: ${say(f, { step })}`)),
    ...(wanted
      ? [wrap(`What would tell the most now: ${typedName(wanted.name)}. ${wanted.how}`)]
      : []),
    ...table.causes.flatMap(cause),
  ].join("\n")}\n`;
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
    out: {
      type: "string",
      short: "o",
      value: "FILE",
      help: "a new file for the brief with the readings kept in it",
    },
    json: { type: "boolean", help: "the diagnosis as JSON" },
  },
  examples: [
    'eighthwise why tidepool.json --measured "across-one=8 1/4" --measured "across-two=8 1/4"',
  ],
  run: async (given, io) => {
    const { brief } = await readInput(given.arguments[0], io);
    const { kept, table, diagnosis } = measured(given, brief, answerBrief(brief));
    io.out(given.flag("json") ? computedText(diagnosis) : text(table, diagnosis, brief));
    const out = given.text("out");
    if (out !== undefined) await writeNew(out, canonicalText(readable("why", kept)));
    return EXIT.fine;
  },
};
