import type { Answer } from "../answer/index.ts";
import type { WedgeSetting } from "../block/index.ts";
import type { Brief } from "../brief/index.ts";
import type { Length } from "../measure/index.ts";

export type Relation = "=" | "<=" | ">=";

/** Finished top without binding; a side that is not said may be anything. */
export interface SizePin {
  readonly kind: "size";
  readonly relation: Relation;
  readonly width?: Length;
  readonly length?: Length;
  /** How far from "=" each side may still be. */
  readonly within: Length;
}

/** Finished block, every side of it. */
export interface BlockPin {
  readonly kind: "block";
  readonly relation: Relation;
  readonly side: Length;
  readonly within: Length;
}

/** Whole blocks of the quilt. */
export interface CountPin {
  readonly kind: "blocks";
  readonly relation: Relation;
  readonly count: number;
}

/** What there is of a fabric: what is bought, margins and all, may not be more. */
export interface YardagePin {
  readonly kind: "yardage";
  readonly fabricId: string;
  readonly most: Length;
}

/** "My ruler stops at 8": the longest and shortest line of the ruler for the wedges. */
export interface RulerPin {
  readonly kind: "ruler";
  readonly longest?: Length;
  readonly shortest?: Length;
}

/** "My fabric is only 40 wide": usable width of one fabric, or of all that are bought. */
export interface WidthPin {
  readonly kind: "width";
  readonly fabricId?: string;
  readonly usable: Length;
}

/** An answer that is held fast, so that words of the sentence must move instead. */
export type Pin = SizePin | BlockPin | CountPin | YardagePin | RulerPin | WidthPin;

/** Words of the sentence that may be freed. */
export const FREE_WORDS = [
  "strip",
  "setting",
  "rows",
  "columns",
  "float",
  "sashing",
  "borders",
  "step",
] as const;
export type FreeWord = (typeof FREE_WORDS)[number];

/** What the freed words may say; a word that is not free keeps what it says now. */
export interface Values {
  readonly strip?: Length;
  readonly setting?: Exclude<WedgeSetting, "sectors">;
  /** Finished side of the blocks. */
  readonly side?: Length;
  readonly rows: number;
  readonly columns: number;
  /** 0: none. */
  readonly sash?: Length;
  /** Outermost border; 0: left out. */
  readonly border?: Length;
  /** Lengths may lie on the marks half as far apart. */
  readonly finer?: boolean;
}

/** One part of an answer beside its pin. Above 0: over; below 0: under. */
export interface OverUnder {
  readonly pin: Pin;
  readonly what: "width" | "length" | "block" | "blocks" | "yardage";
  readonly by: number;
}

/** A sentence that makes the pins true, with the brief that says it, answered in full. */
export interface Found {
  readonly brief: Brief;
  readonly answer: Answer;
  /** Freed words that say something else than now; none when it is true as it stands. */
  readonly words: readonly FreeWord[];
  readonly values: Values;
  readonly over: readonly OverUnder[];
  /** Whole steps of the ruler that it misses the pinned sizes by. */
  readonly steps: number;
}

/** The smallest change of one pin with which something fits, the others as they are. */
export interface Loosened {
  readonly from: Pin;
  readonly to: Pin;
  /** Part of the pin's own number that it moves by. */
  readonly share: number;
  readonly found: Found;
}

/** A word that was freed and cannot move in this design. */
export interface Stuck {
  readonly word: FreeWord;
  readonly why: string;
}

export interface Turned {
  /** Best first. */
  readonly found: readonly Found[];
  /** Sentences decided so far, and all there are within the limits. */
  readonly weighed: number;
  readonly all: number;
  /** Sentences answered in full. */
  readonly answered: number;
  /** Every sentence within the limits has been decided: nothing better was overlooked. */
  readonly complete: boolean;
  /** When nothing fits: smallest loosening first. */
  readonly loosened: readonly Loosened[];
  readonly stuck: readonly Stuck[];
  /** Words that can move in this design, freed or not. */
  readonly may: readonly FreeWord[];
}

export interface Limits {
  /** Rows and columns looked at, from 1. */
  readonly across: number;
  /** Words that change in one sentence. */
  readonly words: number;
  /** Lengths are looked at from this part of what they are now to `larger` of it. */
  readonly smaller: number;
  readonly larger: number;
  /** Sentences cut by the planner before it stops by itself. */
  readonly plans: number;
}

export const LIMITS: Limits = {
  across: 40,
  words: 3,
  smaller: 1 / 2,
  larger: 3 / 2,
  plans: 1000,
};

export interface Turning {
  readonly brief: Brief;
  readonly pins: readonly Pin[];
  readonly free: readonly FreeWord[];
  /** Sentences to offer; 4 unless told. */
  readonly most?: number;
  readonly limits?: Partial<Limits>;
}
