import type { Unit } from "../measure/index.ts";
import { inWords } from "./words.ts";

const PARTS: Readonly<Record<number, string>> = {
  2: "half",
  3: "third",
  4: "quarter",
  5: "fifth",
  6: "sixth",
  7: "seventh",
  8: "eighth",
  9: "ninth",
  10: "tenth",
  16: "sixteenth",
  32: "thirty-second",
  64: "sixty-fourth",
};

const plural = (part: string, n: number): string =>
  n === 1 ? part : part === "half" ? "halves" : `${part}s`;

function fraction(num: number, den: number): string {
  const part = PARTS[den];
  return part ? `${inWords(num)} ${plural(part, num)}` : `${num} over ${den}`;
}

const UNIT_WORDS: Readonly<Record<string, readonly [string, string]>> = {
  in: ["inch", "inches"],
  mm: ["millimeter", "millimeters"],
  cm: ["centimeter", "centimeters"],
  m: ["meter", "meters"],
  yd: ["yard", "yards"],
};

const NUMBER = /(?:(\d+) )?(\d+)\/(\d+)(?: (in|yd|mm|cm|m)\b)?|(\d+(?:\.\d+)?) (in|yd|mm|cm|m)\b/g;

/**
 * A printed text as it is said aloud: fractions and units in words. `7 3/16 in` -> `7 and three
 * sixteenths inches`, `1/8 yd` -> `one eighth of a yard`, `7.193 in` -> `7.193 inches`.
 */
export const spoken = (text: string): string =>
  text
    .replace(NUMBER, (_all, whole, num, den, unit, plain, plainUnit) => {
      if (plain !== undefined) return `${plain} ${UNIT_WORDS[plainUnit][plain === "1" ? 0 : 1]}`;
      const part = fraction(Number(num), Number(den));
      if (whole !== undefined)
        return `${whole} and ${part === "one half" ? "a half" : part}${unit ? ` ${UNIT_WORDS[unit][1]}` : ""}`;
      if (!unit) return part;
      const one = UNIT_WORDS[unit][0];
      return `${part} ${part === "one half" ? "" : "of "}${one === "inch" ? "an inch" : `a ${one}`}`;
    })
    .replace(/ × /g, " by ");

/** A length as it is said aloud, from its printed number. */
export const spokenLength = (text: string, unit: Unit): string => spoken(`${text} ${unit}`);
