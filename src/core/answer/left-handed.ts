import type { Piece } from "../piece/index.ts";
import type { Answer } from "./types/answer.ts";

type Cut = Pick<Answer, "pieces" | "demands">;

/** A piece that turned over is another: its hand matters, and no strip yields both by itself. */
export const isHanded = (piece: Piece): boolean => piece.hand !== "none" && !piece.eitherWay;

/**
 * May this fabric's cutting be drawn turned over for a left-handed maker? Not where one hand of a
 * piece is cut by itself: turned over it would show the other hand.
 */
export function turnsOver(a: Cut, fabricId: string): boolean {
  const handed = new Set(a.pieces.filter(isHanded).map((p) => p.id));
  return a.demands
    .filter((d) => d.fabricId === fabricId && d.pieceIds.some((id) => handed.has(id)))
    .every((d) => d.pieceIds.length > 1);
}

/** Turned over, a left is a right: the letter that a handed piece has then. */
export function letterTurned(a: Cut, piece: Piece): string {
  const other = isHanded(piece) && a.pieces.find((p) => p.id === piece.mirrorId);
  return other ? other.letter : piece.letter;
}

/** How a cutting layout of this fabric is drawn for a left-handed maker; nothing where it may not turn. */
export const turnedLayout = (a: Cut, fabricId: string) =>
  turnsOver(a, fabricId)
    ? { leftHanded: true, letterOf: (p: Piece): string => letterTurned(a, p) }
    : {};
