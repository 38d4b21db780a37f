import {
  type Answer,
  type AnswerBlock,
  answerBrief,
  changed,
  leftWhenOff,
  makerOf,
  makerWords,
  SAMPLES,
  type SizeStudy,
  sampleSize,
  sayLeft,
  sayTest,
  seamTests,
  sizeStudy,
  sizeWords,
  tightest,
  worstOfCheck,
} from "../../core/answer/index.ts";
import { type Brief, computedText, keepSeamTest, seamOf } from "../../core/brief/index.ts";
import {
  inchToLength,
  knownLength,
  type Length,
  parseLength,
  printWithUnit,
  stepOf,
} from "../../core/measure/index.ts";
import type { MakeSizeAnswer } from "../../core/sewing/index.ts";
import type { Command, Given } from "../command.ts";
import { Ending, EXIT } from "../exit.ts";
import { readInput } from "../files.ts";
import type { Io } from "../io.ts";
import { columns, wrap } from "../text.ts";
import { exitOf } from "./answer.ts";

const bad = (message: string): Ending => new Ending(EXIT.bad, `size: ${message}`);

const MOST_SAMPLES = 1_000_000;

function wholeNumber(given: Given, name: string, least: number, most: number): number {
  const text = given.text(name) ?? "";
  const n = Number(text);
  if (!/^\d+$/.test(text.trim()) || n < least || n > most)
    throw bad(`--${name} is a whole number from ${least} to ${most}, got "${text}"`);
  return n;
}

/** "4=4 7/16": the test of four strips came to 4 7/16. Kept as the page keeps it. */
function withTests(brief: Brief, texts: readonly string[]): Brief {
  const offers = seamTests(brief);
  const taken = texts.map((text) => {
    const at = text.indexOf("=");
    const strips = text.slice(0, Math.max(0, at)).trim();
    const offer = offers.find((t) => String(t.strips) === strips);
    const tests = offers.map((t) => `${t.strips} (${sayTest(t, brief.unit)})`).join(", ");
    if (!offer) throw bad(`--seam-test is said as STRIPS=LENGTH, got "${text}"; strips: ${tests}`);
    return { offer, size: text.slice(at + 1).trim() };
  });
  const kept = changed(brief, (d) => {
    for (const { offer, size } of taken) keepSeamTest(offer.strips, offer.cut, size)(d);
  });
  for (const { offer, size } of taken) {
    const problem =
      size === ""
        ? "nothing is measured"
        : seamTests(kept).find((t) => t.strips === offer.strips)?.problem;
    if (problem) throw bad(`${sayTest(offer, brief.unit)}: ${problem}`);
  }
  return kept;
}

/** By how much her cuts may be small: at most as much as the seam takes. */
function offOf(given: Given, brief: Brief): Length {
  const text = given.text("off");
  if (text === undefined) return inchToLength(1 / 32, brief.unit);
  const r = parseLength(text, brief.unit);
  if (!r.ok) throw bad(`--off: "${text}" is not a length`);
  const off = knownLength(text, brief.unit);
  if (!(off > 0) || off > seamOf(brief))
    throw bad(`--off is more than 0 and no more than the seam, ${brief.seam}; got "${text}"`);
  return off;
}

function blocksAsked(given: Given, answer: Answer): AnswerBlock[] {
  const sewn = answer.blocks.filter((b) => !b.id.includes("~") && b.tree.kind === "seam");
  const id = given.text("block");
  const found = sewn.filter((b) => id === undefined || b.id === id);
  const known = sewn.map((b) => b.id).join(", ") || "none";
  if (found.length === 0) throw bad(`--block ${id ?? ""}: blocks that are sewn in it: ${known}`);
  return found;
}

/** Time at which progress is told, and at which a Ctrl-C is heard. */
const TOLD_EVERY_MS = 500;

/** Sews the study; undefined when it was stopped, since half a sample is no answer. */
async function sewn(study: SizeStudy, io: Io): Promise<MakeSizeAnswer | undefined> {
  const work = sampleSize(study);
  let told = performance.now();
  for (;;) {
    const next = work.next();
    if (next.done) return next.value;
    if (performance.now() - told < TOLD_EVERY_MS) continue;
    told = performance.now();
    const percent = Math.round((100 * next.value) / study.samples);
    if (io.terminal) io.err(`${study.block.name}: ${percent} % sewn\n`);
    await new Promise((go) => setImmediate(go));
    if (io.signal.aborted) return undefined;
  }
}

/** How wide the blocks come out, to the 64th: as a row of marks for each. */
function spreadLines(
  brief: Brief,
  { widths, samples }: Pick<MakeSizeAnswer, "widths" | "samples">,
) {
  const fine = stepOf(brief.unit === "in" ? "1/64" : "0.5", brief.unit);
  const counts = new Map<string, number>();
  for (const bin of tightest({ widths } as MakeSizeAnswer).bins) {
    const size = fine.size.valueOf();
    const at = printWithUnit(Math.round((bin.from + bin.to) / 2 / size) * size, fine);
    counts.set(at, (counts.get(at) ?? 0) + bin.count);
  }
  const most = Math.max(...counts.values());
  const rows = [...counts].map(([at, n]) => [
    at,
    `${((100 * n) / samples).toFixed(1)} %`.padStart(6),
    "#".repeat(Math.round((40 * n) / most)),
  ]);
  return columns([["about", "", ""], ...rows]);
}

interface Sized {
  readonly study: SizeStudy;
  readonly result: MakeSizeAnswer;
  readonly off: Length;
  readonly left: Length;
}

function textOf(brief: Brief, answer: Answer, { study, result, off, left }: Sized): string[] {
  const words = sizeWords(brief, answer, study, result);
  return [
    study.block.name,
    wrap(`${words.share}.`, "  "),
    wrap(`${words.spread}.`, "  "),
    ...spreadLines(brief, result).map((line) => `    ${line}`),
    wrap(words.helps, "  "),
    wrap(sayLeft(left, off, "block", brief.unit), "  "),
    wrap(words.check, "  "),
    "",
  ];
}

const dataOf = ({ study, result, off, left }: Sized) => ({
  block: study.block.id,
  seed: study.seed,
  within: study.within,
  ...result,
  leftWhenCutsAreOff: { off, left },
  standardErrorsOffTheFormula: worstOfCheck(study, result) ?? null,
});

export const size: Command = {
  name: "size",
  arguments: { usage: "BRIEF", least: 1, most: 1 },
  summary: "will it make size: blocks sewn in numbers as this maker cuts and sews",
  options: {
    "seam-test": {
      type: "string",
      value: "STRIPS=LENGTH",
      multiple: true,
      help: 'what her seam test came to: "4=4 7/16" is four strips cut 1 1/2 in',
    },
    off: {
      type: "string",
      value: "LENGTH",
      help: "also what is left when every cut is this much small (1/32 in unless told)",
    },
    block: { type: "string", value: "ID", help: "only this block (all unless told)" },
    samples: { type: "string", value: "N", help: "how many blocks to sew", default: `${SAMPLES}` },
    seed: { type: "string", value: "N", help: "equal seeds give equal answers", default: "1" },
    json: { type: "boolean", help: "as JSON; lengths in the unit of the brief" },
  },
  examples: ['eighthwise size tidepool.json --seam-test "4=4 7/16" --off 1/32'],
  run: async (given, io) => {
    const read = await readInput(given.arguments[0], io);
    const samples = wholeNumber(given, "samples", 100, MOST_SAMPLES);
    const seed = wholeNumber(given, "seed", 0, 2 ** 31 - 1);
    const brief = withTests(read.brief, given.texts("seam-test"));
    const off = offOf(given, brief);
    const answer = answerBrief(brief);
    const made: Sized[] = [];
    for (const block of blocksAsked(given, answer)) {
      const study = sizeStudy(brief, answer, block, { samples, seed });
      const result = await sewn(study, io);
      if (!result) return EXIT.stopped;
      const left = leftWhenOff(answer.recipes, block, study.seam, off);
      made.push({ study, result, off, left });
    }
    io.out(
      given.flag("json")
        ? computedText({ maker: makerOf(brief), blocks: made.map(dataOf) })
        : [wrap(makerWords(brief)), "", ...made.flatMap((m) => textOf(brief, answer, m))].join(
            "\n",
          ),
    );
    return exitOf(answer);
  },
};
