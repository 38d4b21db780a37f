/** What a column of a stock list says. `size` is width by length in one cell. */
export type Meaning = "fabric" | "kind" | "width" | "length" | "size" | "count" | "cost" | "note";

export interface Columns {
  readonly headed: boolean;
  readonly at: Readonly<Partial<Record<Meaning, number>>>;
  /** Unit a heading names, for numbers without one of their own. */
  readonly unit: Readonly<Partial<Record<Meaning, string>>>;
  /** How many there are; cells beyond belong to none. */
  readonly count: number;
}

/** Heading words, by what they mean; the first meaning whose word stands in a heading is taken. */
const HEADINGS: readonly (readonly [Meaning, RegExp])[] = [
  ["cost", /\b(cost|price|per (yd|yard|m|met(er|re)))\b/],
  ["count", /\b(count|number|how many|pieces|pcs|qty|quantity)\b/],
  ["kind", /\b(kind|type|form)\b/],
  ["size", /\b(size|width x length|width by length)\b/],
  ["length", /\b(length|long|yards|yd|left|amount|meters|metres)\b/],
  ["width", /\b(width|wide|across|usable)\b/],
  ["note", /\b(notes?|remarks?|where|place|(dye )?lots?)\b/],
  ["fabric", /\b(fabric|name|cloth|bolt|colou?r|what|item)\b/],
];

const UNIT = /\b(yd|yards?|inch(?:es)?|in|cm|mm|m|met(?:er|re)s?)\b/;
const PLAIN_UNIT: Readonly<Record<string, string>> = {
  yards: "yd",
  yard: "yd",
  inch: "in",
  inches: "in",
  meter: "m",
  meters: "m",
  metre: "m",
  metres: "m",
};

const plain = (heading: string): string => heading.toLowerCase().replace(/[_()[\]:.]+/g, " ");
const meaningOf = (heading: string): Meaning | undefined =>
  HEADINGS.find(([, word]) => word.test(plain(heading)))?.[0];

/** A first row is a heading when two of its cells are heading words and none holds a number. */
export const isHeading = (cells: readonly string[]): boolean =>
  cells.filter((c) => meaningOf(c) !== undefined).length >= Math.min(2, cells.length) &&
  !cells.some((c) => /\d/.test(c));

/** The columns a heading names; without one fabric, width, length, how many, kind. */
export function columnsOf(heading: readonly string[] | undefined): Columns {
  if (!heading)
    return {
      headed: false,
      at: { fabric: 0, width: 1, length: 2, count: 3, kind: 4 },
      unit: {},
      count: 5,
    };
  const at: Partial<Record<Meaning, number>> = {};
  const unit: Partial<Record<Meaning, string>> = {};
  heading.forEach((text, i) => {
    const meaning = meaningOf(text);
    if (!meaning || at[meaning] !== undefined) return;
    at[meaning] = i;
    const named = UNIT.exec(plain(text))?.[0];
    if (named) unit[meaning] = PLAIN_UNIT[named] ?? named;
  });
  return { headed: true, at, unit, count: heading.length };
}
