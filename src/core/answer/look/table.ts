import type { Brief } from "../../brief/index.ts";
import type { Eye } from "../../fabric/index.ts";
import { printWithUnit } from "../../measure/index.ts";
import type { Answer } from "../types/answer.ts";
import type { SeamsMeet } from "../types/look.ts";
import { wayWords } from "../words/place-words.ts";
import { stepOfBrief } from "../words/word.ts";

const nameOf = (b: Brief, id: string): string => b.fabrics.find((f) => f.id === id)?.name ?? id;
const blockName = (a: Answer, id: string): string => a.blocks.find((x) => x.id === id)?.name ?? id;

/** What shows along a wedge, ring by ring, each way it is cut; headings first, alone when none. */
export function ringRows(b: Brief, a: Answer): string[][] {
  const step = stepOfBrief(b);
  const rows = a.sights.flatMap((s) =>
    s.rounds.flatMap((r) =>
      r.rings.map(({ way, start, rings }) => [
        nameOf(b, r.fabricId),
        blockName(a, s.block),
        wayWords(b, r.fabricId, way),
        start === 0 ? "" : `begun ${printWithUnit(start, step)} in`,
        rings
          .map(({ inner, outer, fabricId }) => {
            const of = fabricId === r.fabricId ? "" : ` ${nameOf(b, fabricId)}`;
            return `${printWithUnit(outer - inner, step)}${of}`;
          })
          .join(", "),
      ]),
    ),
  );
  return [["fabric", "block", "cut", "", "rings"], ...rows];
}

/** Nearer than this two edges are one, in the document's unit: far under a thread. */
const MEET = 1e-6;

/** By how much the rings miss at a seam: "every ring meets", "1/8 in, 3/8 in", "a ring without partner". */
export function sayMisses(b: Brief, m: SeamsMeet): string {
  const step = stepOfBrief(b);
  if (m.misses.length === 0) return "one color, nothing to meet";
  if (m.most !== undefined && m.most < MEET) return "every ring meets";
  return m.misses
    .map(({ miss }) => {
      if (miss === undefined) return "a ring without partner";
      return miss < MEET ? "meets" : printWithUnit(miss, step);
    })
    .join(", ");
}

/** How rings miss where wedges are sewn side by side, from the center out; headings first. */
export function seamRows(b: Brief, a: Answer): string[][] {
  const rows = a.sights.flatMap((s) =>
    s.rounds.flatMap((r) =>
      r.seams.map((m) => [
        nameOf(b, r.fabricId),
        blockName(a, s.block),
        `${m.count} ${m.count === 1 ? "seam" : "seams"}`,
        m.ways.map((w) => wayWords(b, r.fabricId, w)).join(" beside "),
        sayMisses(b, m),
      ]),
    ),
  );
  return [["fabric", "block", "", "cut", "miss along the seam, from the center out"], ...rows];
}

/** How the eye takes two fabrics side by side. */
export const EYE_WORDS: Readonly<Record<Eye, string>> = {
  parts: "yes",
  barely: "barely",
  "by-color-only": "by color only, not in a gray print",
  "will-not": "no",
};

/** Each two fabrics side by side in a block: will the eye part them; headings first. */
export function gapRows(b: Brief, a: Answer): string[][] {
  const rows = a.sights.flatMap((s) =>
    s.gaps.map((g) => [
      `${nameOf(b, g.a)} and ${nameOf(b, g.b)}`,
      blockName(a, s.block),
      EYE_WORDS[g.eye],
      g.lightness.toFixed(0),
      g.difference.toFixed(0),
    ]),
  );
  return [["side by side", "block", "parted", "lightness apart", "color apart"], ...rows];
}
