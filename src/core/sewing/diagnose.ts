import type { Finding } from "../findings/index.ts";
import type { Length } from "../measure/index.ts";
import {
  CAUSE_WORDS,
  CAUSES,
  type Cause,
  type Effect,
  type Suspect,
  suspectsFor,
} from "./causes.ts";
import { chanceOfMore } from "./chance.ts";
import { explain, type Fit, fitTwo, type Offsets, shows } from "./evidence.ts";
import {
  contradicts,
  given,
  planned,
  READING_WORDS,
  READINGS,
  type ReadingError,
  type ReadingName,
  type Readings,
  readingFindings,
  type SewnCircle,
  totalError,
} from "./readings.ts";
import { type Remedy, remedyFor } from "./remedy.ts";

export interface RankedCause {
  readonly cause: Cause;
  /** Share of the belief, of all causes and of nothing being wrong. */
  readonly chance: number;
  /** Positive: seam too wide, strip too wide, angle too large, allowance wider at the outer edge. */
  readonly size: number;
  readonly unit: "length" | "degrees";
  /** 19 times in 20 the size lies between. */
  readonly low: number;
  readonly high: number;
  readonly remedy: Remedy;
}

/**
 * sure: one cause, the readings leave hardly room for another. likely: one cause before all others.
 * tie: two or more that the readings do not part. nothing-wrong: all within what a ruler is off by.
 * unclear: no cause explains the readings. not-judged: too little was measured, or it cannot be.
 */
export type Confidence = "sure" | "likely" | "tie" | "nothing-wrong" | "unclear" | "not-judged";

export interface Parting {
  readonly reading: ReadingName;
  /** How far apart the tied causes would put it, and what one reading is off by. */
  readonly differ: Length;
  readonly error: Length;
}

export interface Diagnosis {
  readonly confidence: Confidence;
  /** Most likely first. */
  readonly causes: readonly RankedCause[];
  readonly tied: readonly Cause[];
  /** The measurement that would part the two foremost causes. */
  readonly parting?: Parting;
  /** Readings not given, the most telling first. */
  readonly ask: readonly ReadingName[];
  /** Two causes that together explain what none does alone. */
  readonly together?: {
    readonly causes: readonly [Cause, Cause];
    readonly sizes: readonly [number, number];
  };
  readonly findings: readonly Finding[];
}

/** Accused only when nothing being wrong has less than this left. */
const NOTHING_WRONG = 0.3;
const SURE = 0.97;
/** Two causes of which neither is this many times likelier are a tie. */
const TIE = 3;
/** Two causes that foretell all given readings this closely (in reading errors, squared) are a tie. */
const SAME = 1;
/** A misfit this unlikely by chance is a second fault, a slip of the pen or another block. */
const MISFIT = 0.001;
const SHOWN = 0.01;

/**
 * What most likely made a circle of wedges come out as it was measured, with sizes, remedies and what
 * to measure next. Never surer than the readings allow: docs/geometry/error-laws.md has the
 * statistics and how often it is right on seeded blocks.
 */
export function diagnose(circle: SewnCircle, readings: Readings, error: ReadingError): Diagnosis {
  const bad = [...readingFindings(circle, readings), ...contradicts(circle, readings)];
  const names = given(readings);
  if (bad.some((f) => f.severity === "blocks") || names.length === 0)
    return notJudged(names.length === 0 ? [...bad, missing(READINGS)] : bad, names);
  const plan = planned(circle);
  const sd = totalError(error);
  const offsets: Offsets = {
    names,
    off: names.map((n) => (readings[n] as Length) - plan[n]),
    sd,
  };
  const suspects = suspectsFor(circle).filter((s) => s.cause === "none" || shows(s, names));
  const fits = suspects.map((s) => ({ suspect: s, fit: explain(s, offsets) }));
  const chances = sharesOf(fits.map((f) => f.fit));
  const ranked = fits
    .map((f, i) => ({ ...f, chance: chances[i] }))
    .sort((a, b) => b.chance - a.chance);
  const none = ranked.find((r) => r.suspect.cause === "none");
  const accused = ranked.filter((r) => r.suspect.cause !== "none");
  const causes = accused
    .filter((r, i) => i === 0 || r.chance >= SHOWN)
    .map((r) => rankedCause(r.suspect, r.fit, r.chance, circle, readings));
  const ask = asking(accused, names, sd);
  if ((none?.chance ?? 0) >= NOTHING_WRONG)
    return { confidence: "nothing-wrong", causes, tied: [], ask, findings: bad };
  const [top, ...rest] = accused;
  const tied = rest.filter(
    (r) =>
      r.chance * TIE > top.chance ||
      (apart(top.fit.foretold, r.fit.foretold, names, sd) < SAME && r.chance * 10 > top.chance),
  );
  const fitsPoorly = chanceOfMore(top.fit.misfit, names.length - top.fit.fitted) < MISFIT;
  const parting = tied.length > 0 ? partingOf(top.fit, tied[0].fit, names, sd) : undefined;
  const together = fitsPoorly ? twoAtOnce(suspects, offsets) : undefined;
  const confidence: Confidence = fitsPoorly
    ? "unclear"
    : tied.length > 0
      ? "tie"
      : top.chance >= SURE && decisive(top.suspect, names)
        ? "sure"
        : "likely";
  return {
    confidence,
    causes,
    tied: tied.length > 0 ? [top, ...tied].map((r) => r.suspect.cause as Cause) : [],
    ...(parting && { parting }),
    ask,
    ...(together && { together }),
    findings: [
      ...bad,
      ...(fitsPoorly ? [moreThanOne(together?.causes)] : []),
      ...(names.length < 2 ? [missing(ask)] : []),
    ],
  };
}

const notJudged = (findings: Finding[], names: readonly ReadingName[]): Diagnosis => ({
  confidence: "not-judged",
  causes: [],
  tied: [],
  ask: READINGS.filter((r) => !names.includes(r)),
  findings,
});

const missing = (ask: readonly ReadingName[]): Finding => ({
  code: "reading-missing",
  severity: "draft",
  place: "readings",
  words: {
    place: "the block",
    ask: `Measure also: ${ask
      .slice(0, 3)
      .map((r) => READING_WORDS[r])
      .join("; ")}.`,
  },
});

const moreThanOne = (causes?: readonly Cause[]): Finding => ({
  code: "more-than-one-fault",
  severity: "draft",
  place: "readings",
  words: {
    place: "this block",
    which: causes
      ? `Two together do: ${causes.map((c) => CAUSE_WORDS[c]).join(" and ")}.`
      : "Measure again, or look for a piece of another size.",
  },
});

function sharesOf(fits: readonly Fit[]): number[] {
  const top = Math.max(...fits.map((f) => f.logWeight));
  const weights = fits.map((f) => Math.exp(f.logWeight - top));
  const total = weights.reduce((a, b) => a + b, 0);
  return weights.map((w) => w / total);
}

function rankedCause(
  s: Suspect,
  f: Fit,
  chance: number,
  circle: SewnCircle,
  readings: Readings,
): RankedCause {
  const cause = s.cause as Cause;
  return {
    cause,
    chance,
    size: f.size,
    unit: s.unit,
    low: f.size - 1.96 * f.sizeSd,
    high: f.size + 1.96 * f.sizeSd,
    remedy: remedyFor(cause, f.size, circle, readings),
  };
}

/** How differently two causes foretell the given readings: squares of the differences, in reading errors. */
const apart = (a: Effect, b: Effect, names: readonly ReadingName[], sd: number): number =>
  names.reduce((sum, n) => sum + (((a[n] ?? 0) - (b[n] ?? 0)) / sd) ** 2, 0);

/** Sure needs a reading that the cause moves and, for what the pieces could do too, a wedge measured. */
const decisive = (s: Suspect, names: readonly ReadingName[]): boolean =>
  s.cause === "slip" || names.some((n) => n === "wedgeHeight" || n === "wedgeBase");

type Accused = { readonly suspect: Suspect; readonly fit: Fit; readonly chance: number };

/** Readings not yet given, those first that would part the foremost causes most. */
function asking(
  accused: readonly Accused[],
  names: readonly ReadingName[],
  sd: number,
): ReadingName[] {
  const left = READINGS.filter((r) => !names.includes(r));
  const use = (r: ReadingName): number => {
    const [a, b] = accused;
    return a && b ? Math.abs((a.fit.foretold[r] ?? 0) - (b.fit.foretold[r] ?? 0)) / sd : 0;
  };
  return [...left].sort((a, b) => use(b) - use(a));
}

/** Of all readings, one not given before one to be repeated, that the two causes put farthest apart. */
function partingOf(a: Fit, b: Fit, names: readonly ReadingName[], sd: number): Parting | undefined {
  const differ = (r: ReadingName): Length => Math.abs((a.foretold[r] ?? 0) - (b.foretold[r] ?? 0));
  const most = (list: readonly ReadingName[]) =>
    list.reduce<ReadingName | undefined>(
      (x, r) => (!x || differ(r) > differ(x) ? r : x),
      undefined,
    );
  const fresh = most(READINGS.filter((r) => !names.includes(r)));
  const again = most(names);
  const best = fresh && differ(fresh) >= sd ? fresh : again && differ(again) > 0 ? again : fresh;
  return best && differ(best) > 0 ? { reading: best, differ: differ(best), error: sd } : undefined;
}

function twoAtOnce(suspects: readonly Suspect[], r: Offsets): Diagnosis["together"] {
  const real = suspects.filter((s) => CAUSES.includes(s.cause as Cause));
  let best: ReturnType<typeof fitTwo>;
  for (const [i, a] of real.entries())
    for (const b of real.slice(i + 1)) {
      const both = fitTwo(a, b, r);
      if (both && (!best || both.misfit < best.misfit)) best = both;
    }
  if (!best || chanceOfMore(best.misfit, r.names.length - 2) < MISFIT) return undefined;
  return { causes: best.causes as [Cause, Cause], sizes: best.sizes };
}
