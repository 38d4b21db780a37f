import { answerBrief } from "../../core/answer/index.ts";
import { canonicalText } from "../../core/brief/index.ts";
import { sheetJob } from "../../core/sheet/index.ts";
import { correctionSheet } from "../../core/sheet/shop/index.ts";
import {
  correcting,
  remembering,
  rippleOf,
  sayChanged,
  sayLeftThing,
  sayRipple,
  versionToGive,
} from "../../core/shop/index.ts";
import type { Command } from "../command.ts";
import { EXIT } from "../exit.ts";
import { readable, readInput, writeAll } from "../files.ts";
import { PRINTING, pdfOf, printingOf } from "../printing.ts";
import { dayOf } from "./record.ts";

export const ripple: Command = {
  name: "ripple",
  arguments: { usage: "BRIEF", least: 1, most: 1 },
  summary: "what was printed, cut or handed out and is now wrong, with a slip to print",
  options: {
    out: {
      type: "string",
      short: "o",
      value: "DIR",
      help: "write the correction slip, and the brief that remembers it was given out",
    },
    ...PRINTING,
    json: { type: "boolean", help: "as JSON" },
  },
  examples: ["eighthwise ripple tidepool.json --out correction"],
  run: async (given, io) => {
    const { brief, path } = await readInput(given.arguments[0], io);
    const printing = printingOf(given, "ripple", brief);
    const answer = answerBrief(brief);
    const wrong = rippleOf(brief, answer);
    const lines = wrong.flatMap(({ left, changes }) => [
      "",
      sayLeftThing(left),
      ...changes.map((c) => `  ${sayChanged(c)}`),
    ]);
    const next = versionToGive(brief, wrong);
    if (next !== undefined)
      lines.push(
        "",
        `What is printed next wants another version: ${next}, with --edition ${next}.`,
      );
    io.out(
      given.flag("json") ? canonicalText(wrong) : `${[sayRipple(wrong), ...lines].join("\n")}\n`,
    );
    const out = given.text("out");
    if (out !== undefined && wrong.length > 0) {
      const corrected = structuredClone(brief);
      remembering(correcting(brief, answer, wrong, dayOf(given, "ripple")))(corrected);
      const slip = correctionSheet(sheetJob(brief, answer, printing), wrong);
      const files = new Map<string, string | Uint8Array>([
        ["correction.pdf", await pdfOf(slip, printing)],
        ["brief-corrected.json", canonicalText(readable("ripple", corrected))],
      ]);
      await writeAll(out, files, { inputs: [path], briefs: ["brief-corrected.json"] });
      for (const name of files.keys()) io.err(`wrote ${name}\n`);
    }
    return EXIT.fine;
  },
};
