import Fraction from "fraction.js";
import { fabricLetters, type SentencePart, sentenceOf } from "../answer/index.ts";
import type { Brief } from "../brief/index.ts";
import { type Length, printFraction, printLength, type Step, stepOf } from "../measure/index.ts";
import type { Taken } from "./fromStock.ts";
import type { FreeWord, Loosened, OverUnder, Pin, Relation } from "./types.ts";

const RELATIONS: Readonly<Record<Relation, string>> = {
  "=": "",
  "<=": "at most ",
  ">=": "at least ",
};

const stepIn = (brief: Brief): Step => stepOf(brief.step, brief.unit);
const say = (x: Length, brief: Brief): string => `${printLength(x, stepIn(brief))} ${brief.unit}`;

/** Fabric by the yard or the meter, as a shop says it. */
function sayYards(x: Length, brief: Brief): string {
  if (brief.unit === "mm") return `${Number((x / 1000).toFixed(2))} m`;
  const eighths = Math.round(x / 4.5);
  return Math.abs(eighths * 4.5 - x) < 1e-6
    ? `${printFraction(new Fraction(BigInt(eighths), 8n))} yd`
    : `${Number((x / 36).toFixed(3))} yd`;
}

const nameOf = (brief: Brief, id: string): string =>
  `${fabricLetters(brief)[id]} (${brief.fabrics.find((f) => f.id === id)?.name ?? id})`;

/** A pin in plain words: "size 60 × 72 in, within 2 in". */
export function sayPin(pin: Pin, brief: Brief): string {
  switch (pin.kind) {
    case "size": {
      const side = (x: Length | undefined): string =>
        x === undefined ? "any" : printLength(x, stepIn(brief));
      const near = pin.relation === "=" ? `, within ${say(pin.within, brief)}` : "";
      return `size ${RELATIONS[pin.relation]}${side(pin.width)} × ${side(pin.length)} ${brief.unit}${near}`;
    }
    case "block": {
      const near = pin.relation === "=" ? `, within ${say(pin.within, brief)}` : "";
      return `block ${RELATIONS[pin.relation]}${say(pin.side, brief)}${near}`;
    }
    case "blocks":
      return `${RELATIONS[pin.relation]}${pin.count} ${pin.count === 1 ? "block" : "blocks"}`;
    case "yardage":
      return `at most ${sayYards(pin.most, brief)} of ${nameOf(brief, pin.fabricId)}`;
    case "ruler":
      return [
        pin.longest === undefined ? "" : `a ruler that stops at ${say(pin.longest, brief)}`,
        pin.shortest === undefined ? "" : `a ruler that starts at ${say(pin.shortest, brief)}`,
      ]
        .filter(Boolean)
        .join(" and ");
    case "width":
      return `${pin.fabricId ? nameOf(brief, pin.fabricId) : "fabric"} ${say(pin.usable, brief)} usable`;
  }
}

/** "1/8 in too wide", "exact", "3/8 yd of B (Sand) left". */
export function sayOver({ pin, what, by }: OverUnder, brief: Brief): string {
  const size = Math.abs(by);
  const none = size < 1e-6;
  switch (what) {
    case "width":
      return none ? "width exact" : `${say(size, brief)} ${by > 0 ? "wider" : "narrower"}`;
    case "length":
      return none ? "length exact" : `${say(size, brief)} ${by > 0 ? "longer" : "shorter"}`;
    case "block":
      return none ? "block exact" : `block ${say(size, brief)} ${by > 0 ? "larger" : "smaller"}`;
    case "blocks":
      return none ? "number of blocks as pinned" : `${size} ${by > 0 ? "more" : "fewer"} blocks`;
    case "yardage": {
      const name = pin.kind === "yardage" ? nameOf(brief, pin.fabricId) : "";
      return none
        ? `all of ${name} asked for`
        : `${sayYards(size, brief)} of ${name} ${by > 0 ? "too little" : "to spare"}`;
    }
  }
}

const NAMES: Readonly<Record<FreeWord, string>> = {
  strip: "strip",
  setting: "setting",
  rows: "rows",
  columns: "columns",
  float: "side of the blocks",
  sashing: "sashing",
  borders: "outer border",
  step: "marks of the ruler",
};

/** What is changed: "strip and rows"; "as it is now". */
export function sayWords(words: readonly FreeWord[]): string {
  if (words.length === 0) return "as it is now";
  const names = words.map((w) => NAMES[w]);
  const last = names.at(-1);
  return names.length === 1
    ? `${last} changed`
    : `${names.slice(0, -1).join(", ")} and ${last} changed`;
}

/** "loosen at most 2 yd of B (Sand): at most 2 1/4 yd of B (Sand)". */
export const sayLoosened = (l: Loosened, brief: Brief): string =>
  `${sayPin(l.from, brief)} → ${sayPin(l.to, brief)}`;

/** "Sand from Foam: 3 pieces and 12 in of the bolt, 60 in left on it". */
export function sayTaken(t: Taken, brief: Brief): string {
  const name = brief.fabrics.find((f) => f.id === t.fabricId)?.name ?? t.fabricId;
  const parts = [
    ...(t.pieces > 0 ? [`${t.pieces} ${t.pieces === 1 ? "piece" : "pieces"}`] : []),
    ...(t.fromBolt > 0
      ? [`${say(t.fromBolt, brief)} of the bolt, ${say(t.boltLeft, brief)} left on it`]
      : []),
  ];
  return `${name} from ${t.stock}: ${parts.join(" and ") || "nothing"}`;
}

/** "2 times: 42 % of all that is here". */
export const sayTimes = (p: { readonly times: number; readonly uses: number }): string =>
  `${p.times === 1 ? "once" : `${p.times} times`}: ${Math.round(100 * p.uses)} % of all that is here`;

/** A part of a sentence, lit where it says something else than the sentence now. */
export interface LitPart extends SentencePart {
  readonly lit: boolean;
}

/** The sentence of a brief with the words lit that differ from another's. */
export function litSentence(brief: Brief, now: Brief): LitPart[] {
  const before = new Map(sentenceOf(now).map((p) => [p.word, p.text]));
  return sentenceOf(brief).map((p) => ({
    ...p,
    lit: p.word !== undefined && before.get(p.word) !== p.text,
  }));
}
