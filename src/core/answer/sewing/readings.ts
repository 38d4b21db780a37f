import type { Brief } from "../../brief/index.ts";
import { say } from "../../findings/index.ts";
import { knownLength, type Length } from "../../measure/index.ts";
import { type Diagnosis, diagnose } from "../../sewing/diagnose.ts";
import {
  READINGS,
  type ReadingName,
  type Readings,
  type SewnCircle,
  usualError,
} from "../../sewing/readings.ts";
import { lengthTextProblem, stepOfBrief } from "../words/word.ts";

const MAY_BE_MINUS: readonly ReadingName[] = ["halfGap", "outerEdge"];
const SIZES: readonly ReadingName[] = ["acrossOne", "acrossTwo", "wedgeHeight", "wedgeBase"];

/** A width, which is planned; the others should be nothing. */
export const isSize = (name: ReadingName): boolean => SIZES.includes(name);

/** One measurement as typed, in the document's unit, or why it cannot be. */
type Read = { readonly value: Length } | { readonly problem: string };

/** Reads one measurement as typed; a minus only where it means the other way. */
function readReading(name: ReadingName, text: string, unit: Brief["unit"]): Read {
  const minus = /^[-\u2212]\s*/.exec(text);
  if (minus && !MAY_BE_MINUS.includes(name)) return { problem: "It cannot be less than 0." };
  const size = minus ? text.slice(minus[0].length) : text;
  const problem = lengthTextProblem(size, unit, !isSize(name))?.problem;
  return problem ? { problem } : { value: (minus ? -1 : 1) * knownLength(size, unit) };
}

export interface JudgedReadings {
  readonly typed: ReadonlyMap<ReadingName, string>;
  /** Why a reading cannot be, or is doubted, in the words of the page and of the command line. */
  readonly problems: ReadonlyMap<ReadingName, string>;
  /** Readings for which there is a problem that bars any judgment. */
  readonly refused: readonly ReadingName[];
  /** Undefined while no reading can be read. */
  readonly diagnosis?: Diagnosis;
}

/** Reads what was typed for one circle of wedges and judges it: the one reader of readings. */
export function judgeReadings(
  b: Brief,
  circle: SewnCircle,
  texts: readonly { readonly name: string; readonly size: string }[],
): JudgedReadings {
  const typed = new Map<ReadingName, string>();
  const problems = new Map<ReadingName, string>();
  const refused: ReadingName[] = [];
  const readings: Partial<Record<ReadingName, Length>> = {};
  for (const name of READINGS) {
    const text = texts.find((t) => t.name === name)?.size;
    if (text === undefined) continue;
    typed.set(name, text);
    const read = readReading(name, text, b.unit);
    if ("value" in read) readings[name] = read.value;
    else {
      problems.set(name, read.problem);
      refused.push(name);
    }
  }
  if (Object.keys(readings).length === 0) return { typed, problems, refused };
  const diagnosis = diagnose(circle, readings satisfies Readings, usualError(b.unit));
  for (const f of diagnosis.findings) {
    const name = READINGS.find((r) => r === f.place);
    if (name === undefined) continue;
    problems.set(name, say(f, { step: stepOfBrief(b) }));
    if (f.severity === "blocks") refused.push(name);
  }
  return { typed, problems, refused, diagnosis };
}
