import type { Brief } from "../../brief/index.ts";
import type { SentencePart } from "../types/answer.ts";
import { finishingClause } from "./finishing.ts";
import { measuresClause } from "./measures.ts";
import { ownClause } from "./own-block.ts";
import { partsOf } from "./sentence.ts";
import { sizesClause } from "./sizes.ts";
import type { Clause } from "./word.ts";

/**
 * What the two large sentences leave unsaid, each a sentence of its own under them. Apart from them,
 * so that the page's first view need not bring their words.
 */
const DETAILS: readonly {
  readonly id: string;
  readonly label: string;
  readonly clause: (b: Brief) => Clause;
}[] = [
  { id: "own", label: "Blocks of your own, seam by seam", clause: ownClause },
  { id: "finishing", label: "How the quilt is put together and finished", clause: finishingClause },
  { id: "sizes", label: "Sizes the design is offered in", clause: sizesClause },
  { id: "measures", label: "Unit, ruler and margins", clause: measuresClause },
];

export const detailClausesOf = (b: Brief): Clause => DETAILS.flatMap((d) => d.clause(b));

/** The small sentences: blocks of one's own, putting together and finishing, sizes, measures. */
export const detailSentencesOf = (
  b: Brief,
): { readonly id: string; readonly label: string; readonly parts: readonly SentencePart[] }[] =>
  DETAILS.map(({ id, label, clause }) => ({ id, label, parts: partsOf(clause(b)) })).filter(
    (d) => d.parts.length > 0,
  );
