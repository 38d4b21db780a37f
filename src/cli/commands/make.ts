import { type Answer, answerBrief, looksOf } from "../../core/answer/index.ts";
import { type Brief, canonicalText } from "../../core/brief/index.ts";
import { say } from "../../core/findings/index.ts";
import { stepOf } from "../../core/measure/index.ts";
import type { Command } from "../command.ts";
import { Ending, EXIT } from "../exit.ts";
import { readInput, writeAll } from "../files.ts";
import { listFiles } from "../lists.ts";
import { pictureFiles } from "../pictures.ts";
import { answerText } from "../text.ts";
import { exitOf } from "./answer.ts";

/** Every file `make` writes, by name. */
export function filesOf(brief: Brief, answer: Answer): Map<string, string | Uint8Array> {
  return new Map<string, string | Uint8Array>([
    ["answer.txt", answerText(brief, answer)],
    ["answer.json", canonicalText(answer)],
    ["brief.json", canonicalText(brief)],
    ...listFiles(brief, answer),
    ...pictureFiles(brief, answer, looksOf(brief, answer)),
  ]);
}

export const make: Command = {
  name: "make",
  arguments: { usage: "BRIEF --out DIR", least: 1, most: 1 },
  summary: "write everything there is to a folder: text, JSON, CSV, pictures",
  options: { out: { type: "string", short: "o", value: "DIR", help: "the folder to write to" } },
  examples: ["eighthwise make tidepool.json --out tidepool"],
  run: async (given, io) => {
    const out = given.text("out");
    if (out === undefined) throw new Ending(EXIT.bad, "make: say where to write with --out DIR");
    const { brief, path } = await readInput(given.arguments[0], io);
    const answer = answerBrief(brief);
    if (io.signal.aborted) throw new Ending(EXIT.stopped, "stopped; nothing was written");
    const files = filesOf(brief, answer);
    await writeAll(out, files, path);
    const speech = { step: stepOf(brief.step, brief.unit) };
    for (const f of answer.findings) io.err(`${f.severity}: ${say(f, speech)}\n`);
    for (const name of files.keys()) io.out(`${name}\n`);
    return exitOf(answer);
  },
};
