import { type Brief, canonicalText, computedText } from "../../core/brief/index.ts";
import {
  type Found,
  type FreeWord,
  litSentence,
  type Pin,
  type PinProblem,
  readFree,
  readPin,
  sayLoosened,
  sayOver,
  sayPin,
  sayWords,
  type Turned,
  turnOutput,
  turnRound,
} from "../../core/turn/index.ts";
import type { Command } from "../command.ts";
import { Ending, EXIT } from "../exit.ts";
import { readInput, writeAll } from "../files.ts";
import type { Io } from "../io.ts";
import { wrap } from "../text.ts";

export const turn: Command = {
  name: "turn",
  arguments: { usage: "BRIEF --pin PIN --free WORDS", least: 1, most: 1 },
  summary: "turn a question round: the nearest sentences that make an answer true",
  options: {
    pin: {
      type: "string",
      short: "p",
      value: "PIN",
      multiple: true,
      help: 'what must be true: "size = 60 x 72", "yardage B <= 2 1/2 yd", "blocks = 12", "block = 9", "ruler <= 8", "width B = 40"; may be given again',
    },
    free: {
      type: "string",
      short: "f",
      value: "WORDS",
      multiple: true,
      help: "words that may move: strip, setting, rows, columns, float, sashing, borders, step, or all",
    },
    most: { type: "string", value: "N", help: "how many sentences to give", default: "4" },
    out: {
      type: "string",
      short: "o",
      value: "DIR",
      help: "also write each sentence's brief there",
    },
    json: { type: "boolean", help: "as JSON (docs/schema/turn.schema.json)" },
  },
  examples: [
    'eighthwise turn tidepool.json --pin "size = 72 x 27" --free strip,columns,borders',
    'eighthwise turn tidepool.json --pin "yardage B <= 1 1/2 yd" --free strip,rows,columns',
  ],
  run: async (given, io) => {
    const { brief, path } = await readInput(given.arguments[0], io);
    const pins = given.texts("pin").map((text) => known(readPin(text, brief)));
    if (pins.length === 0) throw new Ending(EXIT.bad, "turn: pin an answer with --pin");
    const free = known(readFree(given.texts("free").join(",")));
    const most = Number(given.text("most"));
    if (!Number.isInteger(most) || most < 1 || most > 20)
      throw new Ending(
        EXIT.bad,
        `turn: --most is a number from 1 to 20, got "${given.text("most")}"`,
      );
    const { turned, stopped } = await run({ brief, pins, free, most }, io);
    io.out(
      given.flag("json")
        ? computedText(turnOutput(brief, pins, free, turned))
        : turnText(brief, pins, turned),
    );
    const out = given.text("out");
    if (out !== undefined) {
      const files = new Map(
        turned.found.map((f, i) => [`sentence-${i + 1}.json`, canonicalText(f.brief)]),
      );
      await writeAll(out, files, { inputs: [path], briefs: [...files.keys()] });
    }
    if (stopped) return EXIT.stopped;
    return turned.found.length > 0 ? EXIT.fine : EXIT.blocked;
  },
};

function known<T extends object>(read: T): Exclude<T, PinProblem> {
  if ("problem" in read) throw new Ending(EXIT.bad, `turn: ${read.problem}`);
  return read as Exclude<T, PinProblem>;
}

interface Asked {
  readonly brief: Brief;
  readonly pins: readonly Pin[];
  readonly free: readonly FreeWord[];
  readonly most: number;
}

/** Runs the search, telling how far it is; Ctrl-C keeps what is found by then. */
async function run(asked: Asked, io: Io): Promise<{ turned: Turned; stopped: boolean }> {
  const search = turnRound(asked);
  let last: Turned | undefined;
  for (let told = ""; ; ) {
    const { value, done } = search.next();
    if (done) return { turned: value, stopped: false };
    last = value;
    if (io.signal.aborted) return { turned: last, stopped: true };
    const line = `${value.found.length} found\n`;
    if (io.terminal && line !== told) io.err(line);
    told = line;
    // Lets a Ctrl-C be heard.
    await new Promise((go) => setImmediate(go));
  }
}

/** The sentences as text: what is changed is set between stars. */
export function turnText(brief: Brief, pins: readonly Pin[], t: Turned): string {
  const found = (f: Found): string[] => [
    ...f.over.map((o) => `   ${sayOver(o, brief)}`),
    `   ${f.answer.yardages
      .filter((y, i, all) => all.findIndex((z) => z.fabricId === y.fabricId) === i)
      .map((y) => `${f.brief.fabrics.find((x) => x.id === y.fabricId)?.name} ${y.buyText}`)
      .join(", ")}`,
    wrap(
      litSentence(f.brief, brief)
        .map((p) => (p.lit ? `*${p.text}*` : p.text))
        .join(""),
      "   ",
    ),
    "",
  ];
  return [
    `Pinned: ${pins.map((p) => sayPin(p, brief)).join("; ")}`,
    `Words that can move here: ${t.may.join(", ") || "none"}`,
    "",
    ...t.stuck.map((s) => `The word "${s.word}" cannot move: ${s.why}.`),
    ...(t.stuck.length > 0 ? [""] : []),
    ...t.found.flatMap((f, i) => [`${i + 1}. ${sayWords(f.words)}`, ...found(f)]),
    ...(t.found.length > 0 ? [] : ["Nothing fits.", ""]),
    ...t.loosened.flatMap((l, i) => [
      `${i === 0 ? "The smallest loosening" : "Or"}: ${sayLoosened(l, brief)}`,
      ...found(l.found),
    ]),
    t.complete
      ? `All ${t.all} sentences within the limits were weighed.`
      : `Stopped after ${t.weighed} sentences; there may be better ones.`,
    "",
  ].join("\n");
}
