import { type Brief, canonicalText, computedText } from "../../core/brief/index.ts";
import { say } from "../../core/findings/index.ts";
import { stepOf } from "../../core/measure/index.ts";
import {
  formFiles,
  makeSheet,
  OPENED,
  type Opened,
  printedDate,
  type SheetJob,
  type SheetOptions,
  sheetJob,
  sheetNames,
} from "../../core/sheet/index.ts";
import { livingPattern } from "../../core/sheet/living.ts";
import { lastVersion } from "../../core/shop/index.ts";
import { nodeFonts } from "../../pdf/fonts.node.ts";
import { writePdf } from "../../pdf/index.ts";
import { PLANNING, plannedAnswer } from "../best.ts";
import type { Command, Given } from "../command.ts";
import { Ending, EXIT } from "../exit.ts";
import { readInput, writeAll } from "../files.ts";
import { livingTemplate } from "../living.ts";
import { answerText } from "../text.ts";
import { exitOf } from "./answer.ts";

/** Every text file `make` writes, by name. */
export function textFiles(job: SheetJob): Map<string, string | Uint8Array> {
  const { brief, answer } = job;
  return new Map<string, string | Uint8Array>([
    ["answer.txt", answerText(brief, answer)],
    ["answer.json", computedText(answer)],
    ["brief.json", canonicalText(brief)],
    ...formFiles(job),
  ]);
}

const isOpened = (text: string): text is Opened => (OPENED as readonly string[]).includes(text);

/** What is said on the command line about the printed sheets. */
function sheetOptions(given: Given, brief: Brief): SheetOptions & { created: Date } {
  const paper = given.text("paper");
  if (paper !== undefined && paper !== "letter" && paper !== "a4")
    throw new Ending(EXIT.bad, `make: --paper is letter or a4, got "${paper}"`);
  const day = given.text("date") ?? new Date().toISOString().slice(0, 10);
  const date = printedDate(day);
  if (date === undefined)
    throw new Ending(EXIT.bad, `make: --date is said as 2026-11-25, got "${day}"`);
  const opened = given.text("open")?.split(",") ?? [];
  if (!opened.every(isOpened))
    throw new Ending(
      EXIT.bad,
      `make: --open takes ${OPENED.join(", ")} with commas between, got "${given.text("open")}"`,
    );
  return {
    ...(paper && { paper }),
    leftHanded: given.flag("left-handed"),
    opened,
    version: given.text("edition") ?? lastVersion(brief),
    date,
    created: new Date(`${day}T12:00:00Z`),
  };
}

export const make: Command = {
  name: "make",
  arguments: { usage: "BRIEF --out DIR", least: 1, most: 1 },
  summary: "write everything there is to a folder: text, JSON, CSV, SVG, DXF, printed sheets",
  options: {
    ...PLANNING,
    out: { type: "string", short: "o", value: "DIR", help: "the folder to write to" },
    paper: {
      type: "string",
      value: "letter|a4",
      help: "letter, or a4 (which metric briefs take unless told)",
    },
    "left-handed": { type: "boolean", help: "cutting pictures turned over" },
    open: {
      type: "string",
      value: "QUESTIONS",
      help: "what the pattern says at length: cover, enough, measure, with commas between",
    },
    edition: {
      type: "string",
      value: "TEXT",
      help: "version printed on the sheets (the one that left the design last, or 1, unless told)",
    },
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
    const { brief, path } = await readInput(given.arguments[0], io);
    const { created, ...options } = sheetOptions(given, brief);
    const { answer, stopped } = await plannedAnswer(brief, given, io, "make");
    const job = sheetJob(brief, answer, options);
    const files = textFiles(job);
    const template = await livingTemplate();
    if (template) files.set("living-pattern.html", livingPattern(template, brief, answer, options));
    else io.err("the living pattern is left out: npm run -s build:living makes its template\n");
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
    await writeAll(out, files, { inputs: [path] });
    const speech = { step: stepOf(brief.step, brief.unit) };
    for (const f of answer.findings) io.err(`${f.severity}: ${say(f, speech)}\n`);
    for (const name of files.keys()) io.out(`${name}\n`);
    return stopped ? EXIT.stopped : exitOf(answer);
  },
};
