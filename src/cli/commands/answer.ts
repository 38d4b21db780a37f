import type { Answer } from "../../core/answer/index.ts";
import { computedText } from "../../core/brief/index.ts";
import { PLANNING, plannedAnswer } from "../best.ts";
import type { Command } from "../command.ts";
import { EXIT } from "../exit.ts";
import { readInput } from "../files.ts";
import { answerText } from "../text.ts";

/** 1 when a finding blocks cutting, else 0. */
export const exitOf = (answer: Answer): number =>
  answer.findings.some((f) => f.severity === "blocks") ? EXIT.blocked : EXIT.fine;

export const answer: Command = {
  name: "answer",
  arguments: { usage: "BRIEF", least: 1, most: 1 },
  summary: "the questions and their answers, as text or as JSON",
  options: {
    ...PLANNING,
    json: { type: "boolean", help: "the whole answer as JSON (docs/schema/answer.schema.json)" },
  },
  examples: [
    "eighthwise answer tidepool.json",
    "eighthwise new | eighthwise answer - --json",
    "eighthwise answer tidepool.json --best",
  ],
  run: async (given, io) => {
    const { brief } = await readInput(given.arguments[0], io);
    const { answer: result, stopped } = await plannedAnswer(brief, given, io, "answer");
    io.out(given.flag("json") ? computedText(result) : answerText(brief, result));
    return stopped ? EXIT.stopped : exitOf(result);
  },
};
