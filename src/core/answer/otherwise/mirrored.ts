import type { Brief } from "../../brief/index.ts";
import type { Answer } from "../types/answer.ts";
import { handedPieces } from "./one-hand.ts";

/**
 * Which pieces must be mirrored: those that come in lefts and rights by their shape; wedges of a
 * fabric whose bands slant, where rings are to meet; pieces of a fabric with a way up. All others are
 * the same turned over.
 */
export function sayMirrored(brief: Brief, answer: Answer): string[] {
  const handed = handedPieces(brief, answer);
  const lefts = handed.filter((p) => p.hand === "left" && p.twinLetter !== undefined);
  const either = handed.filter((p) => p.twinLetter === undefined);
  const inBlocks = answer.pieces.filter((p) => Object.keys(p.perBlock).length > 0);
  const alike = inBlocks.filter((p) => p.hand === "none" && !p.eitherWay).map((p) => p.letter);
  const slanting = brief.fabrics.filter((f) => f.kind === "stripe" && f.tilt !== 0);
  const wedges = inBlocks.filter((p) => p.name === "wedge" && p.hand === "none");
  return [
    ...lefts.map(
      (p) =>
        `${p.letter} and ${p.twinLetter} are one shape, left and right: ${p.perBlock} and ${p.twinPerBlock} to a block.`,
    ),
    ...either.map(
      (p) =>
        `${p.letter} is needed ${p.perBlock} left and ${p.twinPerBlock} right to a block; ${p.fabric} is alike on both faces, so it is cut one way and half are turned over.`,
    ),
    ...(alike.length > 0 ? [`The same turned over, so never mirrored: ${alike.join(", ")}.`] : []),
    ...slanting.flatMap((f) => {
      const letters = wedges.filter((p) => p.fabricId === f.id).map((p) => p.letter);
      if (letters.length === 0) return [];
      const half = f.reversible
        ? "turn half of them over, since it is alike on both faces"
        : "only fabric that is alike on both faces could be turned over for it, so let them miss on purpose, or cut the wedges along the slant";
      return [
        `The bands of ${f.name} slant: for rings to meet at every seam, every other ${letters.join(", ")} must be mirrored; ${half}.`,
      ];
    }),
    ...brief.fabrics.flatMap((f) => {
      const letters = inBlocks.filter((p) => p.fabricId === f.id).map((p) => p.letter);
      return f.directional && letters.length > 0
        ? [
            `${f.name} has a way up: ${letters.join(", ")} are all cut the same way up, none turned end for end.`,
          ]
        : [];
    }),
  ];
}
