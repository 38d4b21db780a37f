import Fraction from "fraction.js";
import type { Length, Unit } from "./unit.ts";

/** A length as the maker typed it: its text, an exact fraction, and the unit that fraction is in. */
export interface TypedLength {
  readonly text: string;
  readonly value: Fraction;
  readonly unit: Unit;
}

export interface LengthProblem {
  readonly problem: "empty" | "not-a-length" | "unknown-unit" | "zero-denominator" | "too-long";
  readonly text: string;
}

export type LengthResult = { ok: true; length: TypedLength } | { ok: false; error: LengthProblem };

const VULGAR: Readonly<Record<string, string>> = {
  "¼": "1/4",
  "½": "1/2",
  "¾": "3/4",
  "⅐": "1/7",
  "⅑": "1/9",
  "⅒": "1/10",
  "⅓": "1/3",
  "⅔": "2/3",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

/** What may follow the number: the unit, and how many of that unit's document units it holds. */
const UNITS: Readonly<Record<string, { unit: Unit; times: number }>> = {
  in: { unit: "in", times: 1 },
  inch: { unit: "in", times: 1 },
  inches: { unit: "in", times: 1 },
  '"': { unit: "in", times: 1 },
  "″": { unit: "in", times: 1 },
  "”": { unit: "in", times: 1 },
  yd: { unit: "in", times: 36 },
  yard: { unit: "in", times: 36 },
  yards: { unit: "in", times: 36 },
  mm: { unit: "mm", times: 1 },
  cm: { unit: "mm", times: 10 },
  m: { unit: "mm", times: 1000 },
};

const MIXED = /^(\d+)(?:\s+|\s*-\s*)(\d+)\/(\d+)$/;
const SIMPLE = /^(\d+)\/(\d+)$/;
const DECIMAL = /^(\d+)(?:[.,](\d+))?$|^[.,](\d+)$/;
const LONGEST = 40;

/**
 * Reads a length as people type it: `4 1/2`, `4-1/2`, `4.5`, `4,5`, `9/2`, `4½"`, `11.5 cm`,
 * `115 mm`. Without a unit the document's is meant. Never throws; signs are refused (no length in
 * a brief is negative). The text is kept exactly as typed.
 */
export function parseLength(text: string, documentUnit: Unit): LengthResult {
  const fail = (problem: LengthProblem["problem"]): LengthResult => ({
    ok: false,
    error: { problem, text },
  });
  if (text.length > LONGEST) return fail("too-long");
  let rest = text.trim().toLowerCase();
  if (rest === "") return fail("empty");
  for (const [glyph, plain] of Object.entries(VULGAR)) rest = rest.replace(glyph, ` ${plain}`);
  rest = rest
    .replace(/⁄/g, "/")
    .replace(/[\u00a0\u2009\u202f]/g, " ")
    .replace(/\s*\/\s*/g, "/")
    .trim();
  // "in." is how many write it; the point after a number alone is no length.
  const m = /^([\d\s.,/-]+?)\s*(?:([a-z]+)\.?|(["″”]?))$/.exec(rest);
  if (!m) return fail("not-a-length");
  const [, number, word, mark] = m;
  const suffix = word ?? mark;
  const named =
    suffix === ""
      ? { unit: documentUnit, times: 1 }
      : Object.hasOwn(UNITS, suffix)
        ? UNITS[suffix]
        : undefined;
  if (!named) return fail("unknown-unit");
  const value = readNumber(number.trim());
  if (value === "zero") return fail("zero-denominator");
  if (!value) return fail("not-a-length");
  return { ok: true, length: { text, value: value.mul(named.times), unit: named.unit } };
}

function readNumber(s: string): Fraction | "zero" | undefined {
  const mixed = MIXED.exec(s);
  if (mixed) {
    const [, whole, num, den] = mixed;
    return BigInt(den) === 0n ? "zero" : new Fraction(BigInt(num), BigInt(den)).add(BigInt(whole));
  }
  const simple = SIMPLE.exec(s);
  if (simple) {
    const [, num, den] = simple;
    return BigInt(den) === 0n ? "zero" : new Fraction(BigInt(num), BigInt(den));
  }
  const decimal = DECIMAL.exec(s);
  if (!decimal) return undefined;
  const digits = decimal[2] ?? decimal[3] ?? "";
  const whole = decimal[1] ?? "0";
  return new Fraction(BigInt(whole + digits), 10n ** BigInt(digits.length));
}

/** The length as an exact fraction of the document's unit. */
export function exactIn(typed: TypedLength, documentUnit: Unit): Fraction {
  if (typed.unit === documentUnit) return typed.value;
  const mmPerInch = new Fraction(254n, 10n);
  return typed.unit === "in" ? typed.value.mul(mmPerInch) : typed.value.div(mmPerInch);
}

/** The length in the document's unit, exact until this last conversion to float64. */
export function lengthIn(typed: TypedLength, documentUnit: Unit): Length {
  return exactIn(typed, documentUnit).valueOf();
}

/** `lengthIn(parseLength(text))` for text the reader has already accepted. Throws otherwise. */
export function knownLength(text: string, documentUnit: Unit): Length {
  const r = parseLength(text, documentUnit);
  if (!r.ok)
    throw new RangeError(`length expected, got ${JSON.stringify(text)} (${r.error.problem})`);
  return lengthIn(r.length, documentUnit);
}
