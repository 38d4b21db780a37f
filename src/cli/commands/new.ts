import { canonicalText } from "../../core/brief/index.ts";
import type { Command } from "../command.ts";
import { EXIT } from "../exit.ts";
import { writeNew } from "../files.ts";
import { SAMPLE } from "../sample.ts";

export const newBrief: Command = {
  name: "new",
  arguments: { usage: "[FILE]", least: 0, most: 1 },
  summary: "write a sample brief, to standard output or to a new file",
  options: {},
  examples: ["eighthwise new > tidepool.json", "eighthwise new tidepool.json"],
  run: async (given, io) => {
    const text = canonicalText(SAMPLE);
    const [file] = given.arguments;
    if (file === undefined || file === "-") io.out(text);
    else await writeNew(file, text);
    return EXIT.fine;
  },
};
