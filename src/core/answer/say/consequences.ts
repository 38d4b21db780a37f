import {
  type Length,
  printLength,
  type Step,
  stepOf,
  tolerances,
  type Unit,
} from "../../measure/index.ts";
import type { Recipe } from "../../recipe/types.ts";
import type { Answer } from "../types/answer.ts";
import { inWords } from "../words/word.ts";
import { amount, buying } from "./buying.ts";
import { spoken } from "./spoken.ts";

/** One thing that follows from a change. */
export interface Consequence {
  /** Stable across the choices of a word, so that their rows can stand side by side. */
  readonly id: string;
  readonly label: string;
  readonly now: string;
  readonly would: string;
  readonly changed: boolean;
  /** `would` is not proved. */
  readonly doubt: boolean;
  /** The row in few words: "8 -> 7 3/16 in", "1/4 yd less", "as now". */
  readonly text: string;
}

/** Marks for lengths that no ruler of the maker's is asked for: finer than any she cuts by. */
const FINE: Readonly<Record<Unit, Step>> = { in: stepOf("1/32", "in"), mm: stepOf("0.5", "mm") };

const print = (x: Length, unit: Unit): string => printLength(x, FINE[unit]);

/** What would follow from `then`, against `now`, in the order a maker asks. */
export function consequences(now: Answer, then: Answer): Consequence[] {
  return [
    ...blockRows(now, then),
    ...quiltRows(now, then),
    ...(now.quilt && then.quilt ? yardRows(now, then) : []),
    ...coverRows(now, then),
    ...ringRows(now, then),
  ];
}

const arrow = (now: string, then: string, unit: string): string =>
  now === then ? `${then} ${unit}, as now` : `${now} → ${then} ${unit}`;

/** Blocks that finish alike are one row. */
function blockRows(now: Answer, then: Answer): Consequence[] {
  const size = (a: Answer, id: string): string | undefined => {
    const k = a.blocks.find((x) => x.id === id);
    if (!k) return undefined;
    const [w, h] = [print(k.width, a.unit), print(k.height, a.unit)];
    return w === h ? w : `${w} × ${h}`;
  };
  const ids = [...new Set([...now.blocks, ...then.blocks].map((k) => k.id))];
  const name = (id: string): string =>
    [...then.blocks, ...now.blocks].find((k) => k.id === id)?.name ?? id;
  const rows = ids.map((id) => ({ id, was: size(now, id), will: size(then, id) }));
  const alike = rows.every((r) => r.was === rows[0].was && r.will === rows[0].will);
  return (alike ? rows.slice(0, 1) : rows).map(({ id, was, will }): Consequence => {
    const text =
      will === undefined
        ? "left out"
        : was === undefined
          ? `${will} ${then.unit}, new`
          : arrow(was, will, then.unit);
    return {
      id: alike ? "block" : `block/${id}`,
      label: alike ? "block" : name(id),
      now: was === undefined ? "none" : `${was} ${now.unit}`,
      would: will === undefined ? "none" : `${will} ${then.unit}`,
      changed: was !== will,
      doubt: false,
      text,
    };
  });
}

function quiltRows(now: Answer, would: Answer): Consequence[] {
  const size = (a: Answer): string =>
    a.quilt
      ? `${print(a.quilt.width, a.unit)} × ${print(a.quilt.height, a.unit)} ${a.unit}`
      : "cannot be laid out";
  const count = (a: Answer): number =>
    Object.values(a.quilt?.counts ?? {}).reduce((x, y) => x + y, 0);
  const rows = [
    row("quilt", "quilt", size(now), size(would), (was, will) => (was === will ? "as now" : will)),
  ];
  if (count(now) !== count(would))
    rows.push(
      row(
        "blocks",
        "blocks",
        `${count(now)}`,
        `${count(would)}`,
        (was, will) => `${was} → ${will}`,
      ),
    );
  return rows;
}

const row = (
  id: string,
  label: string,
  was: string,
  will: string,
  text: (was: string, will: string) => string,
): Consequence => ({
  id,
  label,
  now: was,
  would: will,
  changed: was !== will,
  doubt: false,
  text: text(was, will),
});

function yardRows(now: Answer, then: Answer): Consequence[] {
  const ids = [...new Set([...now.yardages, ...then.yardages].map((y) => y.fabricId))];
  return ids.map((id): Consequence => {
    const [was, will] = [buying(now, id), buying(then, id)];
    const more = will.length - was.length;
    const same = Math.abs(more) <= tolerances(then.unit).congruent;
    return {
      id: `buy/${id}`,
      label: id,
      now: was.text,
      would: will.text,
      changed: !same,
      doubt: false,
      text: same
        ? `${will.text}, as now`
        : `${amount(Math.abs(more), then.unit)} ${more > 0 ? "more" : "less"}`,
    };
  });
}

/** The narrowest ring that each fabric with bands shows in a wedge. */
function ringRows(now: Answer, then: Answer): Consequence[] {
  const narrowest = (a: Answer): Map<string, Length> => {
    const least = new Map<string, Length>();
    for (const r of a.sights.flatMap((s) => s.rounds))
      if (r.narrowest !== undefined)
        least.set(r.fabricId, Math.min(r.narrowest, least.get(r.fabricId) ?? r.narrowest));
    return least;
  };
  const [was, will] = [narrowest(now), narrowest(then)];
  const say = (x: Length | undefined, unit: Unit): string =>
    x === undefined ? "no rings" : `${print(x, unit)} ${unit}`;
  return [...new Set([...was.keys(), ...will.keys()])].map((id) =>
    row(
      `ring/${id}`,
      was.size + will.size > 2 ? `narrowest ring, ${id}` : "narrowest ring",
      say(was.get(id), now.unit),
      say(will.get(id), then.unit),
      (a, b) => (a === b ? `${b}, as now` : b),
    ),
  );
}

/** Pieces that are not proved, before or after. */
function coverRows(now: Answer, then: Answer): Consequence[] {
  const doubtful = (a: Answer): Map<string, Recipe> =>
    new Map(
      a.recipes
        .filter((r) => r.verdict !== "proved")
        .map((r) => [a.pieces.find((p) => p.id === r.pieceId)?.name ?? r.pieceId, r]),
    );
  const [was, will] = [doubtful(now), doubtful(then)];
  const names = [...new Set([...was.keys(), ...will.keys()])];
  return names.map((name): Consequence => {
    const before = was.get(name);
    const after = will.get(name);
    const there = then.pieces.some((p) => p.name === name);
    const [a, z] = [
      before ? coverText(before, now.unit) : "proved",
      after ? coverText(after, then.unit) : there ? "proved" : "not cut",
    ];
    return {
      id: `cover/${name}`,
      label: name,
      now: a,
      would: z,
      changed: a !== z,
      doubt: !!after,
      text: z,
    };
  });
}

/** Less than this is no distance anyone could see; in either unit. */
const SEEN = 1e-3;

/** "thin, 0.166 in" or "0.354 in short". */
export function coverText(r: Recipe, unit: Unit): string {
  if (r.verdict === "proved") return "proved";
  if (r.verdict === "thin") return `thin, ${print(r.w, unit)} ${unit}`;
  return r.reach < -SEEN
    ? `${print(-r.reach, unit)} ${unit} short`
    : `too thin, ${print(r.w, unit)} ${unit}`;
}

/** How many numbers of an answer are not proved. */
export const doubtsIn = (a: Answer): number =>
  a.findings.filter((f) => f.severity !== "advice").length;

/**
 * What a screen reader is told after a change, and nothing else: sizes, fabric, doubts; fractions in
 * words. `nameOf` gives a fabric its name.
 */
export function spokenChange(
  now: Answer,
  would: Answer,
  nameOf: (fabricId: string) => string = (id) => id,
): string {
  const told: string[] = [];
  for (const row of consequences(now, would)) {
    if (!row.changed) continue;
    if (row.id.startsWith("buy/")) told.push(`${nameOf(row.label)} ${spoken(row.text)}`);
    else if (row.id.startsWith("cover/"))
      told.push(
        `${capital(row.label)} ${row.would === "proved" || row.would === "not cut" ? row.would : `${spoken(row.would)}, not proved`}`,
      );
    else if (
      row.id.startsWith("block") &&
      row.id !== "blocks" &&
      row.now !== "none" &&
      row.would !== "none"
    )
      told.push(
        `${capital(row.label)} ${spoken(row.would)}, was ${spoken(row.now.replace(/ (in|mm)$/, ""))}`,
      );
    else if (row.id === "quilt" || row.id === "blocks")
      told.push(`${capital(row.label)} ${spoken(row.would)}`);
    else
      told.push(`${capital(row.label)} ${row.would === "none" ? "left out" : spoken(row.would)}`);
  }
  const doubts = doubtsIn(would);
  if (doubts !== doubtsIn(now) || doubts > 0)
    told.push(
      doubts === 0
        ? "Every number is proved"
        : `${capital(inWords(doubts))} ${doubts === 1 ? "number is" : "numbers are"} not proved`,
    );
  return told.length === 0 ? "Nothing else changes." : `${told.join(". ")}.`;
}

const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);
