import { inchToLength, type Length, type Unit } from "../../measure/index.ts";

/** A sewn strip set that bows: laid flat, its long edge against a straight edge. */
export interface BowedSet {
  readonly length: Length;
  readonly width: Length;
  /** The gap in the middle. */
  readonly bow: Length;
  /** Wide edge of the wedge that is cut from it. */
  readonly base: Length;
}

export interface Unbent {
  /** A ring strays from straight by this within one wedge. */
  readonly withinWedge: Length;
  /** Where the ruler lies square to the middle but the set runs on: at its ends a line is off by this. */
  readonly atEnds: Length;
  /** Pieces no longer than this bow by no more than `allowed`. */
  readonly piece: Length;
  readonly pieces: number;
  readonly allowed: Length;
  /** Length lost when each piece is squared anew. */
  readonly lost: Length;
}

/** A bow that no eye and no ruler finds: one line of a ruler's finest marks. */
const ALLOWED = 1 / 32;

/**
 * A flat arc of length L that bows by h bows by h (x / L) squared over x of it, and turns by 8 h / L
 * from end to end; squaring it in pieces takes that turn times its width, whatever their number.
 */
export function unbend({ length, width, bow, base }: BowedSet, unit: Unit): Unbent {
  const allowed = inchToLength(ALLOWED, unit);
  const pieces = Math.max(1, Math.ceil(Math.sqrt(bow / allowed) - 1e-9));
  return {
    withinWedge: bow * (base / length) ** 2,
    atEnds: bow,
    piece: length / pieces,
    pieces,
    allowed,
    lost: pieces === 1 ? 0 : (8 * bow * width) / length,
  };
}
