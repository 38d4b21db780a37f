import type { Brief } from "../../brief/index.ts";
import type { SentencePart } from "../types/answer.ts";
import { bindingWord, borderClause, bordersWord, sashingWord } from "./edges.ts";
import { fabricClause, marginWord } from "./fabric.ts";
import { arrangementWord, blocksWord, gridWord } from "./grid.ts";
import { kindClause, otherKind } from "./kinds.ts";
import { mixWord } from "./mix.ts";
import { placeClause } from "./place.ts";
import { kindsInPlan } from "./plan-of-kinds.ts";
import { seamWord, stepWord } from "./sewing.ts";
import { treeWord } from "./turn.ts";
import { fabricUses, fabricWord } from "./use.ts";
import { countWord, type Placed, pointWord, stripWord, wedgeBlocks } from "./wedges.ts";
import type { Clause, WordSpec } from "./word.ts";

/** What the sentence must know of the answer: ids of words whose number is not proved. */
export interface SentenceFacts {
  readonly unproved: readonly string[];
}

const NOTHING: SentenceFacts = { unproved: [] };

/**
 * The whole job in one sentence, clause by clause: blocks; quilt; fabric; sewing. Composed once, so
 * that the text, the words and what a word may become cannot disagree.
 */
export function clausesOf(b: Brief): Clause {
  const tree = treeWord(b);
  return [
    ...blockClause(b),
    "; ",
    blocksWord(b),
    ", ",
    gridWord(b),
    " ",
    arrangementWord(b),
    ", ",
    sashingWord(b),
    ", ",
    bordersWord(b),
    ...borderClause(b),
    ", ",
    bindingWord(b),
    "; ",
    ...fabricClause(b),
    ", ",
    marginWord(b),
    "; sewn with a ",
    seamWord(b),
    " seam, ",
    ...(tree ? [tree, ", "] : []),
    "measured to the ",
    stepWord(b),
    ".",
  ];
}

/** The kinds of block: what they share is said once, what differs follows kind by kind. */
function blockClause(b: Brief): Clause {
  const kinds = kindsInPlan(b);
  const wedges = wedgeBlocks(b).filter(({ block }) => kinds.includes(block.id));
  const others = kinds.filter((id) => !wedges.some((w) => w.block.id === id));
  const groups = grouped(wedges);
  const out: (string | WordSpec)[] = [];
  groups.forEach((group, i) => {
    out.push(
      i === 0 ? "Wedges, " : "; wedges, ",
      countWord(b, group),
      ", from ",
      stripWord(b, group),
    );
    out.push(" strips", ...(i === 0 ? [" ", pointWord(b)] : []), ", set ");
    if (i === 0) out.push(mixWord(b), " ");
    group.forEach((p, j) => {
      out.push(j === 0 ? "" : j === group.length - 1 ? " and " : ", ", ...kindClause(b, p));
    });
  });
  if (groups.length === 0) out.push("Blocks set ", mixWord(b), " ");
  others.forEach((id, j) => {
    out.push(j === 0 && groups.length === 0 ? "" : " and ", ...otherKind(b, id));
  });
  return out.filter((part) => part !== "");
}

/** Wedge blocks that share number, strip and so the words for them. */
function grouped(wedges: readonly Placed[]): Placed[][] {
  const groups = new Map<string, Placed[]>();
  for (const w of wedges) {
    const key = `${w.block.n} ${w.block.strip}`;
    groups.set(key, [...(groups.get(key) ?? []), w]);
  }
  return [...groups.values()];
}

/** Which fabric everything is made of, every name a word: the sentence under the picture. */
export function fabricClausesOf(b: Brief): Clause {
  const out: (string | WordSpec)[] = [];
  fabricUses(b).forEach(({ lead, uses }, i) => {
    out.push(i === 0 ? lead : ` ${lead}`);
    let placed = false;
    uses.forEach((use, j) => {
      const what = j === 0 && lead === "" ? capital(use.what) : use.what;
      const and = placed ? ", and " : " and ";
      out.push(j === 0 ? "" : j === uses.length - 1 ? and : ", ", `${what} in `);
      const place = use.of ? placeClause(b, use.of.index, use.of.key) : [];
      out.push(fabricWord(b, use), ...place);
      placed = place.length > 0;
    });
    out.push(".");
  });
  return out.filter((part) => part !== "");
}

const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);

/** Joining words that stand side by side become one part. */
export function partsOf(clause: Clause, facts: SentenceFacts = NOTHING): SentencePart[] {
  const parts: SentencePart[] = [];
  for (const part of clause) {
    const last = parts[parts.length - 1];
    if (typeof part !== "string") {
      const doubt = facts.unproved.includes(part.id);
      const text = parts.length === 0 ? capital(part.text) : part.text;
      parts.push({ text, word: part.id, path: part.path, ...(doubt ? { doubt } : {}) });
    } else if (last && last.word === undefined)
      parts[parts.length - 1] = { text: last.text + part };
    else parts.push({ text: part });
  }
  return parts;
}

/** The sentence that is the whole job. Joined, its parts read as one sentence. */
export const sentenceOf = (b: Brief, facts: SentenceFacts = NOTHING): SentencePart[] =>
  partsOf(clausesOf(b), facts);

/** The second sentence: what everything is made of. */
export const fabricSentenceOf = (b: Brief, facts: SentenceFacts = NOTHING): SentencePart[] =>
  partsOf(fabricClausesOf(b), facts);

/** The sentence as plain text. */
export const sentenceText = (b: Brief): string =>
  sentenceOf(b)
    .map((p) => p.text)
    .join("");
