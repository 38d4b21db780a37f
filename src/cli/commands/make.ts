import { type Answer, looksOf } from "../../core/answer/index.ts";
import { type Brief, canonicalText } from "../../core/brief/index.ts";
import { say } from "../../core/findings/index.ts";
import { stepOf } from "../../core/measure/index.ts";
import { makeSheet, type SheetOptions, sheetJob, sheetNames } from "../../core/sheet/index.ts";
import { nodeFonts } from "../../pdf/fonts.node.ts";
import { writePdf } from "../../pdf/index.ts";
import { PLANNING, plannedAnswer } from "../best.ts";
import type { Command, Given } from "../command.ts";
import { Ending, EXIT } from "../exit.ts";
import { readInput, writeAll } from "../files.ts";
import { listFiles } from "../lists.ts";
import { pictureFiles } from "../pictures.ts";
import { answerText } from "../text.ts";
import { exitOf } from "./answer.ts";

/** Every text file `make` writes, by name. */
export function filesOf(brief: Brief, answer: Answer): Map<string, string | Uint8Array> {
  return new Map<string, string | Uint8Array>([
    ["answer.txt", answerText(brief, answer)],
    ["answer.json", canonicalText(answer)],
    ["brief.json", canonicalText(brief)],
    ...listFiles(brief, answer),
    ...pictureFiles(brief, answer, looksOf(brief, answer)),
  ]);
}

/** What is said on the command line about the printed sheets. */
function sheetOptions(given: Given): SheetOptions & { created: Date } {
  const paper = given.text("paper");
  if (paper !== undefined && paper !== "letter" && paper !== "a4")
    throw new Ending(EXIT.bad, `make: --paper is letter or a4, got "${paper}"`);
  const text = given.text("date");
  const created = text === undefined ? new Date() : new Date(`${text}T12:00:00Z`);
  if (Number.isNaN(created.getTime()))
    throw new Ending(EXIT.bad, `make: --date is said as 2026-11-25, got "${text}"`);
  const date = created.toLocaleDateString("en-US", {
    day: "numeric",
    month: "long",
    year: "numeric",
    timeZone: "UTC",
  });
  return {
    ...(paper && { paper }),
    leftHanded: given.flag("left-handed"),
    version: given.text("edition") ?? "1",
    date,
    created,
  };
}

export const make: Command = {
  name: "make",
  arguments: { usage: "BRIEF --out DIR", least: 1, most: 1 },
  summary: "write everything there is to a folder: text, JSON, CSV, pictures, printed sheets",
  options: {
    ...PLANNING,
    out: { type: "string", short: "o", value: "DIR", help: "the folder to write to" },
    paper: {
      type: "string",
      value: "letter|a4",
      help: "letter, or a4 (which metric briefs take unless told)",
    },
    "left-handed": { type: "boolean", help: "cutting and pressing pictures turned over" },
    edition: { type: "string", value: "TEXT", help: "version printed on the sheets", default: "1" },
    date: {
      type: "string",
      value: "YYYY-MM-DD",
      help: "date printed on the sheets (today unless told)",
    },
  },
  examples: ["eighthwise make tidepool.json --out tidepool"],
  run: async (given, io) => {
    const out = given.text("out");
    if (out === undefined) throw new Ending(EXIT.bad, "make: say where to write with --out DIR");
    const { created, ...options } = sheetOptions(given);
    const { brief, path } = await readInput(given.arguments[0], io);
    const { answer, stopped } = await plannedAnswer(brief, given, io, "make");
    const files = filesOf(brief, answer);
    const job = sheetJob(brief, answer, options);
    for (const name of sheetNames(job)) {
      if (io.signal.aborted && !stopped)
        throw new Ending(EXIT.stopped, "stopped; nothing was written");
      io.err(`setting ${name}\n`);
      const bytes = await writePdf([makeSheet(job, name)], {
        fonts: nodeFonts(),
        created,
        version: options.version,
      });
      files.set(`${name}.pdf`, bytes);
    }
    await writeAll(out, files, path);
    const speech = { step: stepOf(brief.step, brief.unit) };
    for (const f of answer.findings) io.err(`${f.severity}: ${say(f, speech)}\n`);
    for (const name of files.keys()) io.out(`${name}\n`);
    return stopped ? EXIT.stopped : exitOf(answer);
  },
};
