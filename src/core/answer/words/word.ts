import { Immer } from "immer";
import type { Brief } from "../../brief/index.ts";
import {
  knownLength,
  liesOnStep,
  parseLength,
  printLength,
  roundDown,
  roundUp,
  type Step,
  stepOf,
  type Unit,
} from "../../measure/index.ts";

/**
 * choice: one of a few. length, count, grid: may be typed and stepped. The last choice of a length
 * may be a number to type.
 */
export type WordKind = "choice" | "length" | "count" | "grid";

/** What small picture shows a choice best. */
export type PictureKind =
  | "point"
  | "block"
  | "lettered"
  | "cover"
  | "strip"
  | "quilt"
  | "fabric"
  | "none";

/** A word of the sentence that can be changed. */
export interface Word {
  /** Stable while its block, border or fabric exists: `strip`, `cut/star/kite`, `border/0`. */
  readonly id: string;
  /** What it is, as spoken before it: "Strip the wedges are cut from". */
  readonly role: string;
  readonly kind: WordKind;
  /** Where in the brief it lives: `blocks/0/strip`. */
  readonly path: string;
  readonly text: string;
  /** Roles of patches it decides (with their block), so that a touched patch finds its word. */
  readonly decides: readonly { readonly block?: string; readonly role: string }[];
}

export interface Choice {
  readonly label: string;
  readonly brief: Brief;
  /** The change that makes it, for the page's history. */
  readonly change: Change;
  readonly pictureKind: PictureKind;
  /** The choice the brief makes already. */
  readonly now: boolean;
  /** A number to type stands here; `typed` carries what to show in the field. */
  readonly typed?: string;
}

export interface WordProblem {
  readonly problem: string;
}

export type Edited =
  | { readonly ok: true; readonly brief: Brief; readonly change: Change }
  | { readonly ok: false; readonly error: WordProblem };

/** A change written on a draft of the brief. */
export type Change = (draft: Brief) => void;

/** One choice before it is applied. */
export interface Option {
  readonly label: string;
  readonly change: Change;
  readonly picture: PictureKind;
  readonly typed?: string;
}

/** A word with all it can do: what it may become, how it reads a typed text, how it steps. */
export interface WordSpec extends Word {
  readonly options: () => readonly Option[];
  readonly read?: (text: string) => Change | WordProblem;
  readonly step?: (by: 1 | -1) => Change | undefined;
}

/** Parts of the sentence while it is composed: joining words and words. */
export type Clause = readonly (string | WordSpec)[];

export const MOST_CHOICES = 4;

/** The core freezes nothing: what it is given belongs to others. */
const unfrozen = new Immer({ autoFreeze: false });

/** Applies a change; parts that stay the same stay the same objects. */
export const changed = (b: Brief, change: Change): Brief => unfrozen.produce(b, change);

export const stepOfBrief = (b: Brief): Step => stepOf(b.step, b.unit);

const GLYPHS: Readonly<Record<string, string>> = {
  "¼": "1/4",
  "½": "1/2",
  "¾": "3/4",
  "⅓": "1/3",
  "⅔": "2/3",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

/**
 * A typed length as the sentence shows it: the same number in the same unit, set evenly
 * (`4½"` -> `4 1/2 in`, `4-1/2` -> `4 1/2 in`, `11.5 cm` stays). The brief keeps the text typed.
 */
export function shownLength(text: string, unit: Unit): string {
  let s = text.trim();
  for (const [glyph, plain] of Object.entries(GLYPHS)) s = s.replace(glyph, ` ${plain}`);
  s = s
    .replace(/⁄/g, "/")
    .replace(/["″”]|\binch(es)?\b/g, " in")
    .replace(/(\d)\s*-\s*(\d)/g, "$1 $2")
    .replace(/(\d)([a-z])/gi, "$1 $2")
    .replace(/\s*\/\s*/g, "/")
    .replace(/\s+/g, " ")
    .trim();
  return /[a-z]$/i.test(s) ? s : `${s} ${unit}`;
}

const PROBLEMS = {
  empty: "Type a length, such as",
  "not-a-length": "That is not a length. Type it as",
  "unknown-unit": "That unit is not known. Type it as",
  "zero-denominator": "A fraction over 0 is not a length. Type it as",
  "too-long": "That is too long for a length. Type it as",
} as const;

/** Longest length a word takes, in inches: larger than any quilt. */
const LONGEST_INCHES = 400;

/** Why a text cannot be a length of this brief, as a sentence; nothing when it can. */
export function lengthTextProblem(
  text: string,
  unit: Unit,
  zeroAllowed = false,
): WordProblem | undefined {
  const example = unit === "in" ? "4 1/2, 4.5 or 11.5 cm" : "115, 11.5 cm or 4 1/2 in";
  const r = parseLength(text, unit);
  if (!r.ok) return { problem: `${PROBLEMS[r.error.problem]} ${example}.` };
  const inches = r.length.value.valueOf() / (r.length.unit === "in" ? 1 : 25.4);
  if (inches === 0 && !zeroAllowed) return { problem: "It must be more than 0." };
  if (inches !== 0 && inches < 1e-4) return { problem: "That is too small to cut." };
  if (inches > LONGEST_INCHES)
    return { problem: `The longest is ${LONGEST_INCHES} in. Is the unit right?` };
  return undefined;
}

/**
 * The typed length moved to the next step of the ruler up or down, in the unit it was typed in
 * when that is centimetres. Nothing when the next step would not be more than 0.
 */
export function steppedText(text: string, step: Step, by: 1 | -1): string | undefined {
  const x = knownLength(text, step.unit);
  const size = step.size.valueOf();
  const on = liesOnStep(x, step);
  const next = by === 1 ? (on ? x + size : roundUp(x, step)) : on ? x - size : roundDown(x, step);
  if (next <= size / 1000) return undefined;
  return printAs(text, next, step);
}

/** A length printed in the unit another text was typed in: centimetres stay centimetres. */
export function printAs(text: string, x: number, step: Step): string {
  if (step.unit === "mm" && /cm\s*$/i.test(text))
    return `${printLength(x / 10, { ...step, size: step.size.div(10n) }, 2)} cm`;
  return printLength(x, step);
}

/** How far the choices either side of a length lie: a change worth looking at, not one step. */
export function strideOf(x: number, unit: Unit): number {
  if (unit === "in") return x >= 12 ? 2 : x >= 6 ? 1 : x >= 2 ? 0.5 : x >= 1 ? 0.25 : 0.125;
  return x >= 300 ? 50 : x >= 150 ? 25 : x >= 50 ? 10 : x >= 20 ? 5 : 1;
}

interface LengthWord {
  readonly id: string;
  readonly role: string;
  readonly path: string;
  /** The text in the brief. */
  readonly value: string;
  readonly write: (draft: Brief, text: string) => void;
  /** How the length stands in the sentence; `(x) => x` when alone. */
  readonly set?: (shown: string) => string;
  readonly picture: PictureKind;
  readonly decides?: Word["decides"];
  /** Choices other than a stride less and a stride more, before the typed one. */
  readonly offers?: readonly Option[];
  readonly zeroAllowed?: boolean;
}

/** A word that is a length: a stride less, as now, a stride more, and one to type. */
export function lengthWord(b: Brief, w: LengthWord): WordSpec {
  const set = w.set ?? ((shown: string) => shown);
  const show = (text: string): string => set(shownLength(text, b.unit));
  const write =
    (text: string): Change =>
    (draft) =>
      w.write(draft, text);
  return {
    id: w.id,
    role: w.role,
    kind: "length",
    path: w.path,
    text: show(w.value),
    decides: w.decides ?? [],
    options: () => {
      const x = knownLength(w.value, b.unit);
      const stride = strideOf(x, b.unit);
      const fine = {
        ...stepOfBrief(b),
        size: stepOf(b.unit === "in" ? "1/64" : "0.25", b.unit).size,
      };
      const near = [x - stride, x, x + stride]
        .filter((y) => y > 0)
        .map((y) => (y === x ? w.value : printAs(w.value, y, fine)))
        .map((text) => ({ label: show(text), change: write(text), picture: w.picture }));
      return [
        ...(w.offers ?? near),
        { label: "a length you type", change: () => {}, picture: w.picture, typed: w.value },
      ];
    },
    read: (text) => lengthTextProblem(text, b.unit, w.zeroAllowed) ?? write(text.trim()),
    step: (by) => {
      const text = steppedText(w.value, stepOfBrief(b), by);
      return text === undefined ? undefined : write(text);
    },
  };
}

/** A word that is one of a few. */
export const choiceWord = (
  w: Omit<WordSpec, "kind" | "options" | "decides"> & {
    options: readonly Option[];
    decides?: Word["decides"];
  },
): WordSpec => ({ ...w, kind: "choice", decides: w.decides ?? [], options: () => w.options });

const NUMBERS = [
  "no",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
  "eleven",
  "twelve",
];

/** 8 -> "eight"; from thirteen on in figures. */
export const inWords = (n: number): string => NUMBERS[n] ?? String(n);
