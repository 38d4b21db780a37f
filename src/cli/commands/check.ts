import { answerBrief } from "../../core/answer/index.ts";
import { computedText } from "../../core/brief/index.ts";
import { say } from "../../core/findings/index.ts";
import { stepOf } from "../../core/measure/index.ts";
import { rippleOf, sayRipple } from "../../core/shop/index.ts";
import type { Command } from "../command.ts";
import { readInput } from "../files.ts";
import { exitOf } from "./answer.ts";

export const check: Command = {
  name: "check",
  arguments: { usage: "BRIEF", least: 1, most: 1 },
  summary: "what is wrong with a brief, or worth knowing, one finding a line",
  options: { json: { type: "boolean", help: "the findings as JSON" } },
  examples: ["eighthwise check tidepool.json"],
  run: async (given, io) => {
    const { brief } = await readInput(given.arguments[0], io);
    const result = answerBrief(brief);
    const speech = { step: stepOf(brief.step, brief.unit) };
    const lines = result.findings.map((f) => `${f.severity}: ${f.place}: ${say(f, speech)}\n`);
    io.out(
      given.flag("json") ? computedText(result.findings) : lines.join("") || "nothing found\n",
    );
    const wrong = rippleOf(brief, result);
    if (wrong.length > 0) io.err(`${sayRipple(wrong)} eighthwise ripple tells which.\n`);
    return exitOf(result);
  },
};
