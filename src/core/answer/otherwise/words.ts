import type { Brief } from "../../brief/index.ts";
import { type Length, liesOnStep, printWithUnit, roundDown, roundUp } from "../../measure/index.ts";
import type { Ruler } from "../../recipe/index.ts";
import { aboutLength } from "../../sewing/index.ts";
import { stepOfBrief } from "../words/word.ts";
import type { Unbent } from "./bowed.ts";
import type { CenterHole } from "./hole.ts";
import type { HandedPiece, OneHand, Turning } from "./one-hand.ts";
import type { OtherPoint } from "./two-rulers.ts";

const POINTS = { sharp: "a sharp point", blunt: "a point cut blunt" } as const;

/** "By a ruler with a sharp point the same 4 1/2 in strip finishes 7.193 in across flats ..." */
export function sayOtherPoint(
  o: OtherPoint,
  own: { readonly ruler: Ruler; readonly strip: Length; readonly across: Length },
  b: Brief,
): string {
  const x = (l: Length): string => printWithUnit(l, stepOfBrief(b));
  const apart = Math.abs(o.across - own.across);
  return `By a ruler with ${POINTS[o.point]} the same ${x(own.strip)} strip finishes ${x(o.across)} across flats, not ${x(own.across)}: ${x(apart)} apart. Both are right; for your block it takes ${x(o.strip)} strips.`;
}

/** How the wedges are cut with their points left off, and what goes in the middle. */
export function sayHole(h: CenterHole, b: Brief): string[] {
  const x = (l: Length): string => printWithUnit(l, stepOfBrief(b));
  const lines =
    h.narrowLine === undefined
      ? `Your ruler ends above the narrow edge: mark ${x(h.wide)} along one edge of the strip and ${x(h.narrow)} along the other, both centered, and cut from mark to mark.`
      : `Lay the ruler's ${x(h.wideLine)} line on one edge of the strip: its ${x(h.narrowLine)} line then lies on the other. Without one, mark ${x(h.wide)} along one edge and ${x(h.narrow)} along the other, both centered.`;
  const corner =
    h.corner === undefined
      ? ""
      : `, from a square of that size with ${x(h.corner)} cut off along each side of every corner`;
  return [
    `Cut the wedges from ${x(h.strip)} strips, not wider and not narrower: both edges set the patch. ${lines}`,
    ...besides(h, b),
    `Proved: ${x(h.proof.w)} of allowance on all four edges. The circle still finishes ${x(h.circle)} across flats; its ${h.n} points need not meet.`,
    `Sew the ring. The patch of ${h.n} sides is cut ${x(h.patch)} across flats${corner}; sew its sides one by one, from dot to dot.`,
    `Or stitch a round patch over the opening: ${x(h.round)} across when its edge is turned under hides every corner.`,
  ];
}

/** The strips on her ruler's lines on either side, with the hole each makes. */
function besides(h: CenterHole, b: Brief): string[] {
  const step = stepOfBrief(b);
  if (liesOnStep(h.strip, step)) return [];
  const made = [roundDown(h.strip, step), roundUp(h.strip, step)].map(
    (strip) =>
      `${printWithUnit(strip, step)} strips leave ${printWithUnit(h.hole + 2 * (h.strip - strip), step)}`,
  );
  return [`On your ruler's lines: ${made.join("; ")}.`];
}

export const noHole = (circle: Length, b: Brief): string =>
  `The hole must leave a ring at least one seam wide all round: less than ${printWithUnit(circle, stepOfBrief(b))} across.`;

/** What to cut from a strip set that bows. */
export function sayUnbent(u: Unbent, b: Brief): string[] {
  const x = (l: Length): string => printWithUnit(l, stepOfBrief(b));
  const fine = (l: Length): string => aboutLength(l, b.unit);
  return [
    u.pieces === 1
      ? `It bows no more than ${fine(u.allowed)}: cut it as it is.`
      : `Cut it across into ${u.pieces} pieces, each no longer than ${x(u.piece)}: a piece then bows no more than ${fine(u.allowed)}. Square every piece anew; all of that takes ${fine(u.lost)} of the set.`,
    `Within one wedge a ring then strays from straight by ${fine(u.withinWedge)}. Lay the ruler's lines on a seam in the middle of the set, not on its raw edge: laid along the whole set they would be off by ${fine(u.atEnds)} at its middle.`,
    `For the next set: sew every other seam from the other end, and press each before the next is sewn (common practice, no source).`,
  ];
}

/** What can be saved of pieces that were all cut one hand. */
export function sayOneHand(
  p: HandedPiece,
  o: OneHand,
  turning: Turning | undefined,
  b: Brief,
): string[] {
  const x = (l: Length): string => printWithUnit(l, stepOfBrief(b));
  const many = (n: number, one: string): string => `${n} ${one}${n === 1 ? "" : "s"}`;
  const over = o.over > 0 ? ` ${o.over} are more than the quilt takes.` : "";
  if (p.twinLetter === undefined)
    return [
      `All ${o.saved} can be saved: ${p.fabric} is alike on both faces, so a ${p.letter} turned over is one of the other hand. Turn half of them over, and they make ${many(o.blocks, "block")}.${over}`,
    ];
  return [
    `${o.saved} of ${o.cut} can be saved, but make no block alone: ${p.fabric} has a right side, so none of them serves as ${p.twinLetter}.${over}`,
    `Cut ${o.more} ${p.twinLetter}, the other hand, and they make ${many(o.blocks, "block")}. Half-squares not yet sliced serve either hand: slice them at their other sharp corner.`,
    ...(turning
      ? [
          `Or sew ${many(turning.blocks, "block")} that ${turning.blocks === 1 ? "turns" : "turn"}, with nothing more of that hand: every other sector is left whole, so a block takes 4 wedges, ${p.perBlock} ${p.letter} and 4 half-squares from squares of ${x(turning.square)} cut once, corner to corner.`,
        ]
      : []),
  ];
}
