import {
  type Answer,
  type CutRow,
  cutRows,
  fabricLetters,
  looksOf,
  type SizeRow,
  type SupplyRow,
  sentenceText,
  sizeRows,
  stopTables,
  supplies,
  toldFindings,
} from "../answer/index.ts";
import type { Brief } from "../brief/index.ts";
import { blockPicture, escapeText, swatches, toSvg } from "../picture/index.ts";

/** What a unit should measure at one stop. */
export interface LivingStop {
  readonly name: string;
  readonly unfinished: string;
  readonly finished: string;
}

/** What a living pattern shows of an answer: rows that the printed pattern has too. */
export interface LivingView {
  readonly sentence: string;
  readonly sizes: readonly SizeRow[];
  readonly supplies: readonly SupplyRow[];
  readonly cuts: readonly CutRow[];
  readonly stops: readonly { readonly block: string; readonly rows: readonly LivingStop[] }[];
  /** What blocks cutting, or is not proved, in words. */
  readonly doubts: readonly string[];
  readonly blocked: boolean;
  /** Each kind of block, as SVG. */
  readonly pictures: readonly string[];
}

/** The same rows from the original answer and from a student's own, so that they can be compared. */
export function livingView(brief: Brief, answer: Answer): LivingView {
  const blocked = answer.findings.some((f) => f.severity === "blocks");
  const doubts = toldFindings(brief, answer).flatMap((t) =>
    t.severity === "advice" ? [] : [t.sentence],
  );
  const whole = answer.quilt !== undefined;
  return {
    sentence: sentenceText(brief),
    sizes: whole ? sizeRows(brief, answer) : [],
    supplies: whole ? supplies(brief, answer).rows : [],
    cuts: whole ? cutRows(brief, answer) : [],
    stops: whole ? stopsOf(brief, answer) : [],
    doubts: [...new Set(doubts)],
    blocked,
    pictures: whole ? picturesOf(brief, answer) : [],
  };
}

const stopsOf = (brief: Brief, answer: Answer): LivingView["stops"] =>
  stopTables(brief, answer).map(({ block, rows }) => ({
    block: block.name,
    rows: rows.map((r) => ({ name: r.name, unfinished: r.should, finished: r.finished })),
  }));

function picturesOf(brief: Brief, answer: Answer): string[] {
  const looks = looksOf(brief, answer);
  const fabrics = swatches(brief, fabricLetters(brief));
  return answer.blocks
    .filter((b) => !b.id.includes("~"))
    .map((b, i) =>
      toSvg(blockPicture(b, { unit: brief.unit, looks: looks[b.id] ?? [], title: b.name }), {
        swatches: fabrics,
        width: 320,
        prefix: `k${i}-`,
      }),
    );
}

/** What the file carries: the design, and the original answers. */
export interface LivingData {
  readonly brief: Brief;
  readonly original: LivingView;
}

export const LIVING_DATA = "__PATTERN_DATA__";
export const LIVING_TITLE = "__PATTERN_TITLE__";

/**
 * One HTML file that works from disk, offline: the template (docs/living-pattern.md) with a design and
 * its answers put in as data. Nothing of the design can end the data or run: "<" is written as an
 * escape, and the file's policy runs its own script alone. What was kept for the shop is left out.
 */
export function livingPattern(template: string, brief: Brief, answer: Answer): string {
  const { shop: _shop, class: _class, record: _record, notes: _notes, ...rest } = brief;
  const data: LivingData = { brief: rest, original: livingView(rest, answer) };
  const json = JSON.stringify(data).replaceAll("<", "\\u003c").replaceAll("\u2028", "\\u2028");
  for (const place of [LIVING_DATA, LIVING_TITLE])
    if (template.split(place).length !== 2)
      throw new RangeError(`a template with one ${place} expected`);
  // Functions as replacements: "$" in a name means nothing.
  return template
    .replace(LIVING_TITLE, () => escapeText(brief.title))
    .replace(LIVING_DATA, () => json);
}
