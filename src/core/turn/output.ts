import { type Brief, contentHash } from "../brief/index.ts";
import type { Yardage } from "../layout/index.ts";
import type { Length, Unit } from "../measure/index.ts";
import { litSentence, sayLoosened, sayOver, sayPin, sayWords } from "./say.ts";
import type { Found, FreeWord, OverUnder, Pin, Turned } from "./types.ts";

/** A turned question as data for other programs. Lengths in the brief's unit. */
export interface TurnOutput {
  readonly format: "eighthwise-turn";
  readonly version: 1;
  readonly briefHash: string;
  readonly unit: Unit;
  readonly pins: readonly (Pin & { readonly text: string })[];
  readonly free: readonly FreeWord[];
  /** Words that can move in this design, freed or not. */
  readonly may: readonly FreeWord[];
  readonly found: readonly FoundOutput[];
  readonly weighed: number;
  readonly all: number;
  readonly answered: number;
  /** Every sentence within the limits was decided. */
  readonly complete: boolean;
  readonly loosened: readonly {
    readonly from: Pin;
    readonly to: Pin;
    readonly text: string;
    readonly share: number;
    readonly found: FoundOutput;
  }[];
  readonly stuck: readonly { readonly word: FreeWord; readonly why: string }[];
}

export interface FoundOutput {
  readonly sentence: string;
  /** The words of it that say something else than now. */
  readonly lit: readonly string[];
  readonly words: readonly FreeWord[];
  readonly changed: string;
  readonly over: readonly (Pick<OverUnder, "what" | "by"> & { readonly text: string })[];
  readonly width: Length;
  readonly height: Length;
  readonly blocks: number;
  readonly yardages: readonly Yardage[];
  /** Opened by itself, it is the design of this sentence (brief.schema.json). */
  readonly brief: Readonly<Record<string, unknown>>;
}

/** What was found as plain data; equal questions give equal bytes once they are complete. */
export function turnOutput(
  brief: Brief,
  pins: readonly Pin[],
  free: readonly FreeWord[],
  t: Turned,
): TurnOutput {
  return {
    format: "eighthwise-turn",
    version: 1,
    briefHash: contentHash(brief),
    unit: brief.unit,
    pins: pins.map((p) => ({ ...p, text: sayPin(p, brief) })),
    free,
    may: t.may,
    found: t.found.map((f) => foundOutput(f, brief)),
    weighed: t.weighed,
    all: t.all,
    answered: t.answered,
    complete: t.complete,
    loosened: t.loosened.map((l) => ({
      from: l.from,
      to: l.to,
      text: sayLoosened(l, brief),
      share: l.share,
      found: foundOutput(l.found, brief),
    })),
    stuck: t.stuck,
  };
}

function foundOutput(f: Found, now: Brief): FoundOutput {
  const parts = litSentence(f.brief, now);
  return {
    sentence: parts.map((p) => p.text).join(""),
    lit: parts.flatMap((p) => (p.lit ? [p.text] : [])),
    words: f.words,
    changed: sayWords(f.words),
    over: f.over.map((o) => ({ what: o.what, by: o.by, text: sayOver(o, now) })),
    width: f.answer.quilt?.width ?? 0,
    height: f.answer.quilt?.height ?? 0,
    blocks: f.answer.blocks.reduce((n, k) => n + (k.id.includes("~") ? 0 : k.count), 0),
    yardages: f.answer.yardages,
    brief: f.brief,
  };
}
