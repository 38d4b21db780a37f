import {
  type Answer,
  type CutRow,
  cutRows,
  type SizeRow,
  type SupplyRow,
  sentenceText,
  sizeRows,
  stopTables,
  supplies,
  toldFindings,
} from "../answer/index.ts";
import type { Brief } from "../brief/index.ts";
import { escapeText } from "../picture/index.ts";
import { sheetJob } from "./job.ts";
import { type LivingLayout, livingPictures } from "./living-pictures.ts";
import { draftReasons } from "./release.ts";

/** What a unit should measure at one stop. */
export interface LivingStop {
  readonly name: string;
  readonly unfinished: string;
  readonly finished: string;
}

/** The version and date on every copy, as on the printed pattern. */
export interface LivingEdition {
  readonly version: string;
  /** As printed: "November 25, 2026". */
  readonly date: string;
}

/** What a living pattern shows of an answer: rows that the printed pattern has too. */
export interface LivingView {
  readonly sentence: string;
  readonly sizes: readonly SizeRow[];
  readonly supplies: readonly SupplyRow[];
  readonly cuts: readonly CutRow[];
  readonly stops: readonly { readonly block: string; readonly rows: readonly LivingStop[] }[];
  /** What blocks cutting, is not proved, or keeps a pattern a draft, in words. */
  readonly doubts: readonly string[];
  readonly blocked: boolean;
  /** The finished top, as SVG. */
  readonly quilt: string;
  /** Each kind of block, as SVG. */
  readonly pictures: readonly string[];
  readonly layouts: readonly LivingLayout[];
}

/** The same rows from the original answer and from a student's own, so that they can be compared. */
export function livingView(brief: Brief, answer: Answer, edition: LivingEdition): LivingView {
  const blocked = answer.findings.some((f) => f.severity === "blocks");
  const whole = answer.quilt !== undefined;
  const job = sheetJob(brief, answer, edition);
  const findings = toldFindings(brief, answer).flatMap((t) =>
    t.severity === "advice" ? [] : [t.sentence],
  );
  // What the release checklist leaves open beyond the findings, which it would say once more.
  const open = findings.length > 0 || !whole ? [] : draftReasons(job);
  const { quilt, blocks, layouts } = whole
    ? livingPictures(job)
    : { quilt: "", blocks: [], layouts: [] };
  return {
    sentence: sentenceText(brief),
    sizes: whole ? sizeRows(brief, answer) : [],
    supplies: whole ? supplies(brief, answer).rows : [],
    cuts: whole ? cutRows(brief, answer) : [],
    stops: whole ? stopsOf(brief, answer) : [],
    doubts: [...new Set([...findings, ...open])],
    blocked,
    quilt,
    pictures: blocks,
    layouts,
  };
}

/**
 * A student's own view, beside the original. The original may have been planned by a longer search:
 * a fabric of which exactly the same is asked keeps that plan, its picture and its yardage.
 */
export function besideOriginal(mine: LivingView, original: LivingView): LivingView {
  const kept = new Set(
    mine.layouts
      .filter((l) => original.layouts.some((o) => o.id === l.id && o.asked === l.asked))
      .map((l) => l.id),
  );
  const keep = <T extends { readonly id: string }>(rows: readonly T[], from: readonly T[]): T[] =>
    rows.map((r) => (kept.has(r.id) ? (from.find((o) => o.id === r.id) ?? r) : r));
  return {
    ...mine,
    supplies: keep(mine.supplies, original.supplies),
    layouts: keep(mine.layouts, original.layouts),
  };
}

const stopsOf = (brief: Brief, answer: Answer): LivingView["stops"] =>
  stopTables(brief, answer).map(({ block, rows }) => ({
    block: block.name,
    rows: rows.map((r) => ({ name: r.name, unfinished: r.should, finished: r.finished })),
  }));

/** What the file carries: the design, and the original answers. */
export interface LivingData {
  readonly brief: Brief;
  readonly edition: LivingEdition;
  readonly original: LivingView;
}

export const LIVING_DATA = "__PATTERN_DATA__";
export const LIVING_TITLE = "__PATTERN_TITLE__";

/** The design without what is not a student's: the shop, the class, the record, the notes. */
export function forStudents(brief: Brief): Brief {
  const { shop: _shop, class: _class, record: _record, notes: _notes, ...rest } = brief;
  return rest;
}

/**
 * One HTML file that works from disk, offline: the template (docs/living-pattern.md) with a design and
 * its answers put in as data. Nothing of the design can end the data or run: "<" is written as an
 * escape, and the file's policy runs its own script alone. What was kept for the shop is left out.
 */
export function livingPattern(
  template: string,
  brief: Brief,
  answer: Answer,
  edition: LivingEdition,
): string {
  const rest = forStudents(brief);
  const data: LivingData = { brief: rest, edition, original: livingView(rest, answer, edition) };
  const json = JSON.stringify(data).replaceAll("<", "\\u003c").replaceAll("\u2028", "\\u2028");
  for (const place of [LIVING_DATA, LIVING_TITLE])
    if (template.split(place).length !== 2)
      throw new RangeError(`a template with one ${place} expected`);
  // Both at once, by a function: neither "$" nor the name of a place in a title means anything.
  const parts: Readonly<Record<string, string>> = {
    [LIVING_TITLE]: escapeText(brief.title),
    [LIVING_DATA]: json,
  };
  return template.replace(/__PATTERN_(?:TITLE|DATA)__/g, (place) => parts[place]);
}
