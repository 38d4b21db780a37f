import { type Brief, readDocument } from "../../src/core/brief/index.ts";
import { readStock } from "../../src/core/fabric/index.ts";
import {
  exactIn,
  type Length,
  parseLength,
  printLength,
  stepOf,
} from "../../src/core/measure/index.ts";
import {
  diagnose,
  READINGS,
  type Readings,
  sayCause,
  sayConfidence,
  sayRemedy,
  usualError,
} from "../../src/core/sewing/index.ts";
import { readLabelSheet, readPointText, readShelf, shelfCsv } from "../../src/core/shop/index.ts";
import { fromStock, readFree, readPin, sayPin, turnRound } from "../../src/core/turn/index.ts";
import { type Field, type Own, ownOf, problemsOf, withOwn } from "../../src/living/own.ts";
import { design } from "./design.ts";
import { harmedText } from "./harm.ts";
import { type Broken, infinite } from "./laws.ts";
import { list } from "./list.ts";
import { type Luck, luckOf } from "./luck.ts";

const BITS = [
  ..."size|block|blocks|ruler|yardage|width|=|<=|>=|≤|x|×|by|any|?|within|yd|m|in|cm|A|B|reef".split(
    "|",
  ),
  ..."60|72|4 1/2|1/0|½|0|-1|1e9|999999999999999999999|toString|__proto__|strip|rows|all|grid".split(
    "|",
  ),
  ...[
    "",
    " ",
    ",",
    ";",
    "\u0000",
    "\u202e",
    "😀",
    "x".repeat(300),
    '"',
    "sharp",
    "blunt:",
    "flat:3/8",
  ],
];

/** A few words as somebody might type them, or as nobody would. */
export const typed = (luck: Luck): string =>
  luck.some(6, () => luck.pick(BITS), 1).join(luck.pick([" ", " ", ""]));

const SAID = ["size", "block", "blocks", "ruler", "yardage A", "yardage reef", "width B", "width"];
const AMOUNTS = ["60 x 72", "any x 60", "9", "12", "2 1/2 yd", "8", "40", "1 m", "0", "99999"];

/** A pin as it should be said, or nearly. */
function pinned(luck: Luck): string {
  const within = luck.once(4) ? ` within ${luck.pick(["1", "2 in", "x"])}` : "";
  const pin = `${luck.pick(SAID)} ${luck.pick(["=", "<=", ">="])} ${luck.pick(AMOUNTS)}${within}`;
  return luck.once(3) ? harmedText(pin, luck) : pin;
}

/** A student's own field, as it should be typed or not. */
const OWN: Readonly<Record<Field, readonly string[]>> = {
  usable: ["36", "40", "90 cm", "3", "99999", "", "wide"],
  seam: ["1/4", "7 mm", "3/8", "2", "0", "-1"],
  point: ["sharp", "blunt:1/4", "flat:3/8", "blunt:", "flat:9"],
  longest: ["", "6", "0.5", "x"],
  strip: ["4 1/2", "2", "11 cm", "1/8", "400"],
  rows: ["1", "4", "99", "0", "1.5"],
  columns: ["1", "3", "99", "100"],
};

export interface AskedCase {
  /** Which sound design is asked about. */
  readonly base: number;
  readonly texts: readonly string[];
  readonly own: Own;
  readonly shelf: string;
  readonly n: number;
  readonly a: number;
  readonly readings: Readings;
  /** Searches are dear: asked of some cases only. */
  readonly search: boolean;
}

/** What is typed beside a design: pins, words to free, readings, a shelf, a student's own fields. */
export function asked(luck: Luck): AskedCase {
  const reading = (): Length =>
    luck.pick([0, 1e-9, 0.1, -0.1, 7.9, 8.5, 8.6, 200, -3, 1e12, 1e-300]) * luck.pick([1, 25.4]);
  return {
    base: luck.int(0, 3),
    texts: Array.from({ length: 8 }, (_, i) => (i < 3 ? pinned(luck) : typed(luck))),
    own: Object.fromEntries(
      Object.entries(OWN).map(([field, texts]) => [field, luck.pick(texts)]),
    ) as unknown as Own,
    shelf: list(luck),
    n: luck.pick([6, 8, 10, 12, 16]),
    a: luck.pick([0.01, 3.5967, 4, 100]),
    readings: Object.fromEntries(
      luck.some(5, () => luck.pick(READINGS)).map((name) => [name, reading()]),
    ),
    search: luck.once(150),
  };
}

/** Sound designs to ask about, the same for every seed. */
const bases = new Map<number, Brief>();
export function baseOf(number: number): Brief {
  for (let i = 0; !bases.has(number); i++) {
    const read = readDocument(design(luckOf(77, 100 * number + i)));
    if (read.ok) bases.set(number, read.brief);
  }
  return bases.get(number) as Brief;
}

/** What holds whatever is typed: it is taken and makes sense, or refused with a sentence. */
export function ofAsked(c: AskedCase): Broken[] {
  const brief = baseOf(c.base);
  const before = JSON.stringify(brief);
  const out: Broken[] = [];
  const no = (law: string, detail: string): void => void out.push({ law, detail });
  const sentence = (law: string, text: string): void => {
    if (text.length < 10 || text.length > 1200 || /\b(undefined|NaN)\b|\[object/.test(text))
      no(law, text.slice(0, 200));
  };
  const pins = c.texts.flatMap((text) => {
    const pin = readPin(text, brief);
    if ("problem" in pin) sentence("a pin that is refused says why", pin.problem);
    else {
      sentence("a pin that is taken can be said", `pinned: ${sayPin(pin, brief)}`);
      if (infinite(pin, "pin").length > 0) no("a pin holds numbers", text.slice(0, 100));
      return [pin];
    }
    return [];
  });
  for (const text of c.texts) {
    const free = readFree(text);
    if ("problem" in free) sentence("a word that cannot be freed is named", free.problem);
    const length = parseLength(text, brief.unit);
    if (length.ok) {
      const value = exactIn(length.length, brief.unit).valueOf();
      if (!Number.isFinite(value) || value < 0) no("a length is a number", text.slice(0, 100));
      if (value < 1e6)
        sentence(
          "a length is printed",
          `a length: ${printLength(value, stepOf(brief.step, brief.unit))}`,
        );
    }
    const labels = readLabelSheet(text, "letter");
    if (typeof labels === "string") sentence("a sheet of labels that is refused says why", labels);
    else if (infinite(labels, "labels").length > 0)
      no("a sheet of labels holds numbers", text.slice(0, 100));
    readPointText(text, brief.unit);
  }
  const own = { ...ownOf(brief), ...c.own };
  if (Object.keys(problemsOf(brief, own)).length === 0 && !readDocument(withOwn(brief, own)).ok)
    no("a student's own fields make a design, or are refused", JSON.stringify(own).slice(0, 200));
  const { shelf } = readShelf(c.shelf, brief.unit);
  const again = readShelf(shelfCsv(shelf), brief.unit).shelf;
  if (JSON.stringify(again.bolts) !== JSON.stringify(shelf.bolts))
    no("a shelf that is written reads back", JSON.stringify(shelf.bolts).slice(0, 200));
  out.push(...diagnosed(c, brief));
  if (c.search) out.push(...searched(c, brief, pins));
  if (JSON.stringify(brief) !== before) no("what is asked changes no design", "it did");
  return out.slice(0, 5);
}

function diagnosed(c: AskedCase, brief: Brief): Broken[] {
  const factor = brief.unit === "in" ? 1 : 25.4;
  const circle = { n: c.n, a: c.a * factor, seam: factor / 4, missing: 0, unit: brief.unit };
  const d = diagnose(circle, c.readings, usualError(brief.unit));
  const said = [
    sayConfidence(d),
    ...d.causes.flatMap((x) => [
      sayCause(x, brief.unit),
      ...(x.remedy ? sayRemedy(x.remedy, brief.unit) : []),
    ]),
  ];
  const law = "a diagnosis is said in numbers";
  return [
    ...infinite(d, "diagnosis"),
    ...said.filter((line) => line.length < 5 || /\b(undefined|NaN|Infinity)\b/.test(line)),
  ].map((detail) => ({ law, detail }));
}

function searched(
  c: AskedCase,
  brief: Brief,
  pins: readonly Exclude<ReturnType<typeof readPin>, { problem: string }>[],
): Broken[] {
  const law = "a search keeps its numbers";
  const out: Broken[] = [];
  if (pins.length > 0) {
    const search = turnRound({
      brief,
      pins,
      free: ["rows", "columns"],
      limits: { plans: 3, across: 8 },
    });
    for (let steps = 0, x = search.next(); !x.done && steps < 400; steps++) x = search.next();
  }
  const stock = readStock(c.shelf, brief.unit).pieces.slice(0, 6);
  for (const here of fromStock([{ name: "one", brief }], stock))
    for (const p of here.projects)
      if (!(p.times >= 1) || !(p.uses >= 0 && p.uses <= 1) || infinite(p.taken, "taken").length > 0)
        out.push({ law, detail: `${p.times} times, ${p.uses}` });
  return out;
}
