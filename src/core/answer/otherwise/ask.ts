import type { Brief } from "../../brief/index.ts";
import { knownLength, type Length, parseLength } from "../../measure/index.ts";
import { halfAcross, rulerOf, wedgeBase } from "../../recipe/index.ts";
import { measuresOf } from "../cut/stages.ts";
import type { Answer } from "../types/answer.ts";
import { unbend } from "./bowed.ts";
import { type CutCircle, centerHole } from "./hole.ts";
import { handedPieces, oneHand, turningOf } from "./one-hand.ts";
import { otherPoints } from "./two-rulers.ts";
import { noHole, sayHole, sayOneHand, sayOtherPoint, sayUnbent } from "./words.ts";

/** The circles of wedges that are cut, one for each different wedge. */
export function circlesOf(brief: Brief, answer: Answer): CutCircle[] {
  const { seam } = measuresOf(brief);
  return answer.wedges.flatMap((g) => {
    const block = brief.blocks.find((b) => b.id === g.blockId);
    if (block?.kind !== "wedges") return [];
    const ruler = rulerOf(brief.ruler, block.n, brief.unit);
    return [{ ruler, strip: g.strip, seam, unit: brief.unit }];
  });
}

/** Two rulers, one number: what each wedge's strip makes by the other usual points. */
export function rulersApart(brief: Brief, circle: CutCircle): string[] {
  const { ruler, strip, seam, unit } = circle;
  const own = { ruler, strip, across: 2 * halfAcross(ruler, strip, seam) };
  return otherPoints(ruler, strip, seam, unit).map((o) => sayOtherPoint(o, own, brief));
}

const lengthOf = (text: string | undefined, brief: Brief): Length | undefined => {
  if (text === undefined || text.trim() === "") return undefined;
  const read = parseLength(text.trim(), brief.unit);
  return read.ok && read.length.value.n > 0n ? knownLength(text.trim(), brief.unit) : undefined;
};

/** Points left off: one paragraph for each different wedge. */
export function askHole(brief: Brief, answer: Answer, text: string): string[] {
  const hole = lengthOf(text, brief);
  if (hole === undefined) return [`"${text}" is not a length above nothing.`];
  return circlesOf(brief, answer).flatMap((c) => {
    const made = centerHole(c, hole);
    const most = 2 * (halfAcross(c.ruler, c.strip, c.seam) - c.seam);
    return made ? sayHole(made, brief) : [noHole(most, brief)];
  });
}

/** A strip set that bows, cut into the first circle's wedges. */
export function askBow(brief: Brief, answer: Answer, bow: string, long: string): string[] {
  const [gap, length] = [lengthOf(bow, brief), lengthOf(long, brief)];
  if (gap === undefined) return [`"${bow}" is not a length above nothing.`];
  if (length === undefined || gap > length / 4)
    return [`"${long}" is not the length of a set that bows by ${bow}.`];
  return circlesOf(brief, answer)
    .slice(0, 1)
    .flatMap(({ ruler, strip, unit }) => {
      const set = { length, width: strip, bow: gap, base: wedgeBase(ruler, strip) };
      return sayUnbent(unbend(set, unit), brief);
    });
}

/** So many of the piece with this letter, all cut one hand. */
export function askOneHand(brief: Brief, answer: Answer, letter: string, cut: string): string[] {
  const handed = handedPieces(brief, answer);
  const piece = handed.find((p) => p.letter.toLowerCase() === letter.trim().toLowerCase());
  if (!piece) {
    const known = handed.map((p) => p.letter).join(", ");
    return [
      known === ""
        ? "No piece of this design has lefts and rights: none can be cut the wrong hand."
        : `"${letter}" is not a piece with lefts and rights; those are ${known}.`,
    ];
  }
  if (!/^\d{1,5}$/.test(cut.trim()) || Number(cut) < piece.perBlock)
    return [`Say how many were cut: a whole number, at least the ${piece.perBlock} of one block.`];
  const n = Number(cut);
  return sayOneHand(piece, oneHand(piece, n), turningOf(brief, answer, piece, n), brief);
}
