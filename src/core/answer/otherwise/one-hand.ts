import type { Brief } from "../../brief/index.ts";
import { type Length, roundUp } from "../../measure/index.ts";
import { measuresOf } from "../cut/stages.ts";
import type { Answer } from "../types/answer.ts";

/** A piece that comes in lefts and rights. */
export interface HandedPiece {
  readonly pieceId: string;
  readonly letter: string;
  readonly hand: "left" | "right";
  readonly fabric: string;
  /** Of this hand in one block, and of the other. */
  readonly perBlock: number;
  readonly twinPerBlock: number;
  /** The piece of the other hand; absent where the fabric is alike on both faces and one piece is both. */
  readonly twinLetter?: string;
  readonly blocks: number;
}

/** Pieces of which all could be cut the same hand by mistake. */
export function handedPieces(brief: Brief, answer: Answer): HandedPiece[] {
  return answer.pieces.flatMap((p): HandedPiece[] => {
    const twin = answer.pieces.find((q) => q.id === p.mirrorId && q.id !== p.id);
    const block = answer.blocks.find((b) => Object.values(b.pieceOf).includes(p.id));
    if (!block || block.count === 0 || !(p.eitherWay || (twin && p.hand !== "none"))) return [];
    const inBlock = (id: string): number =>
      Object.values(block.pieceOf).filter((x) => x === id).length;
    const all = inBlock(p.id);
    return [
      {
        pieceId: p.id,
        letter: p.letter,
        hand: p.hand === "none" ? "left" : p.hand,
        fabric: brief.fabrics.find((f) => f.id === p.fabricId)?.name ?? p.fabricId,
        perBlock: twin ? all : all / 2,
        twinPerBlock: twin ? inBlock(twin.id) : all / 2,
        ...(twin && { twinLetter: twin.letter }),
        blocks: block.count,
      },
    ];
  });
}

/** What becomes of pieces that were all cut one hand. */
export interface OneHand {
  readonly cut: number;
  /** Of them, those that find their place once the other hand is cut. */
  readonly saved: number;
  /** Blocks they make, with `more` of the other hand still to cut. */
  readonly blocks: number;
  readonly more: number;
  readonly over: number;
}

/**
 * All of a piece cut one hand. Right side up it only ever serves its own hand: the blocks planned
 * take `perBlock` each, and as many of the other hand have to be cut. A fabric alike on both faces
 * gives either hand, so half of them is turned over and nothing more is cut.
 */
export function oneHand(p: HandedPiece, cut: number): OneHand {
  const either = p.twinLetter === undefined;
  const each = either ? p.perBlock + p.twinPerBlock : p.perBlock;
  const blocks = Math.min(p.blocks, Math.floor(cut / each));
  const saved = either ? Math.min(cut, p.blocks * each) : blocks * each;
  return { cut, saved, blocks, more: either ? 0 : blocks * p.twinPerBlock, over: cut - saved };
}

/** A block that turns: every other sector whole, so that it takes one hand alone. */
export interface Turning {
  readonly blocks: number;
  /** Cut once, corner to corner, it gives two of the whole sectors. */
  readonly square: Length;
}

/**
 * What a deep block of eight becomes with every other sector left whole (the setting "sectors"): a
 * half-square fills it, cut from a square of h + S (2 + sqrt 2) cut once, h half the block
 * (docs/geometry/radial-blocks.md). Undefined for every other block.
 */
export function turningOf(
  brief: Brief,
  answer: Answer,
  p: HandedPiece,
  cut: number,
): Turning | undefined {
  const block = answer.blocks.find((b) => Object.values(b.pieceOf).includes(p.pieceId));
  const said = brief.blocks.find((b) => b.id === block?.id);
  if (!block || said?.kind !== "wedges" || said.n !== 8 || said.setting !== "deep")
    return undefined;
  const { seam, step } = measuresOf(brief);
  const blocks = Math.floor(cut / p.perBlock);
  return blocks === 0
    ? undefined
    : { blocks, square: roundUp(block.width / 2 + seam * (2 + Math.SQRT2), step) };
}
