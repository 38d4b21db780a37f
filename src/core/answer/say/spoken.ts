import { inWords } from "../words/word.ts";

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

/** Before these a unit is said in the singular: "a four inch square". */
const THING = /^ (strips?|squares?|rectangles?|seam|binding|sashing|blocks|flat|steps?)\b/;

/**
 * A printed text as it is said aloud: fractions and units in words. `7 3/16 in` -> `7 and three
 * sixteenths inches`, `1/8 yd` -> `one eighth of a yard`, `4 in square` -> `4 inch square`.
 */
export const spoken = (text: string): string =>
  text
    .replace(NUMBER, (all, whole, num, den, unit, plain, plainUnit, at: number) => {
      const one = THING.test(text.slice(at + all.length));
      if (plain !== undefined)
        return `${plain} ${UNIT_WORDS[plainUnit][plain === "1" || one ? 0 : 1]}`;
      const part = fraction(Number(num), Number(den));
      if (whole !== undefined)
        return `${whole} and ${part === "one half" ? "a half" : part}${unit ? ` ${UNIT_WORDS[unit][one ? 0 : 1]}` : ""}`;
      if (!unit) return part;
      const single = UNIT_WORDS[unit][0];
      if (one) return `${part} ${single}`;
      return `${part} ${part === "one half" ? "" : "of "}${single === "inch" ? "an inch" : `a ${single}`}`;
    })
    .replace(/(\d) [x×] (?=\d)/g, "$1 by ")
    .replaceAll(" → ", " to ");
