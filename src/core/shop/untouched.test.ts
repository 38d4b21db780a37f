import { expect, test } from "vitest";
import tidepool from "../../../examples/tidepool-runner.json" with { type: "json" };
import { answerBrief, choicesFor, makeIt } from "../answer/index.ts";
import { type Brief, canonicalText, readDocument } from "../brief/index.ts";
import { fromStock, readPin, turnRound } from "../turn/index.ts";
import { planClass, planKits, readShelf } from "./index.ts";

/** Every object within, itself too. */
function* within(value: unknown): Generator<object> {
  if (value === null || typeof value !== "object") return;
  yield value;
  for (const inner of Object.values(value)) yield* within(inner);
}

const shelf = "fabric,width,length\nShell,42,8\nFoam,40,6\nReef,40,6";

/** What asks the core about a brief, and is given it. */
const ASKED: Readonly<Record<string, (b: Brief) => unknown>> = {
  answer: (b) => answerBrief(b),
  "the choices of every word": (b) =>
    answerBrief(b).sentence.flatMap(({ word }) => (word ? choicesFor(b, word) : [])),
  "another size": (b) => makeIt(b, 60, 72),
  kits: (b) => planKits(b, answerBrief(b), readShelf(shelf, b.unit).shelf),
  class: (b) => planClass(b, answerBrief(b)),
  "a question turned round": (b) => {
    const pin = readPin("blocks = 6", b);
    if ("problem" in pin) throw new Error(pin.problem);
    return turnRound({
      brief: b,
      pins: [pin],
      free: ["rows", "columns"],
      limits: { plans: 2 },
    }).next();
  },
  "what the shelf makes": (b) =>
    fromStock([{ name: b.title, brief: b }], readShelf(shelf, b.unit).list.pieces).next(),
};

test.each(Object.keys(ASKED))(
  "%s: the brief that is given is neither changed nor frozen",
  (name) => {
    const read = readDocument(structuredClone(tidepool));
    if (!read.ok) throw new Error("the sample is refused");
    const before = canonicalText(read.brief);
    ASKED[name](read.brief);
    expect(canonicalText(read.brief)).toBe(before);
    expect([...within(read.brief)].filter((o) => Object.isFrozen(o))).toEqual([]);
  },
);
