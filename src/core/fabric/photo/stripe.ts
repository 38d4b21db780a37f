import type { Finding } from "../../findings/index.ts";
import type { Degree } from "../../measure/index.ts";
import { repeatsAlternate } from "./alternation.ts";
import { type Field, fieldOf } from "./field.ts";
import { type BandFound, bandsOf } from "./foundBands.ts";
import { foldedShare, type Lag, LEAST_PERIOD, peaksOf, refined, selfAgreement } from "./period.ts";
import { checkPixels, finish, type Pixels, type Progress } from "./pixels.ts";
import { directionOf, type Profile, profileAt } from "./profile.ts";
import { cropped, shrunk } from "./shape.ts";

/** A stripe as found in a picture, in pixels of that picture. */
export interface StripeFound {
  readonly sure: boolean;
  /** Why not, in a few words that finish "could not be measured surely: ...". */
  readonly why?: string;
  /** Pixels of one repeat, square to the bands; 0 when there is none. */
  readonly period: number;
  /** Degrees anticlockwise from level at which the bands run: turn the picture by its opposite. */
  readonly angle: Degree;
  /** One repeat, from the bottom of the picture upward, beginning at a band's edge. */
  readonly bands: readonly BandFound[];
  /** How far above the middle of the picture a repeat begins, square to the bands; pixels. */
  readonly start: number;
  /** Repeats that the picture shows. */
  readonly repeats: number;
  /** Agreement of the picture with itself one repeat on, and how well one repeat tells it all. */
  readonly agrees: number;
  readonly tells: number;
}

/** Working size: the longer side of what is looked at, in pixels. */
const WORKING = 512;
/** A stripe too fine for the whole picture at working size is looked for in its middle. */
const CLOSEST_LOOKS = 3;

/**
 * Finds the repeat and the bands of a stripe in a picture of it, at any angle. Says "unsure" rather
 * than guess: too few repeats, bands that do not tell the picture, a part of the repeat that would
 * do nearly as well, halves that disagree. Yields its progress.
 */
export function* findStripe(pixels: Pixels): Generator<Progress, StripeFound> {
  checkPixels(pixels);
  let best: StripeFound | undefined;
  for (let look = 0; look < CLOSEST_LOOKS; look++) {
    const share = 1 / 2 ** look;
    const part = middleOf(pixels, share);
    yield { done: look / CLOSEST_LOOKS };
    const small = yield* scaled(shrunk(part, WORKING), look);
    const scale = Math.max(part.width, part.height) / Math.max(small.width, small.height);
    const found = inPixels(stripeIn(fieldOf(small)), scale);
    if (found.sure) return found;
    if (!best || found.tells > best.tells) best = found;
    // A closer look shows nothing new once every pixel is seen.
    if (scale <= 1) break;
  }
  return best as StripeFound;
}

export const stripeFoundIn = (pixels: Pixels): StripeFound => finish(findStripe(pixels));

function* scaled(work: Generator<Progress, Pixels>, look: number): Generator<Progress, Pixels> {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    yield { done: (look + step.value.done * 0.8) / CLOSEST_LOOKS };
  }
}

function middleOf(p: Pixels, share: number): Pixels {
  if (share === 1) return p;
  const [width, height] = [Math.ceil(p.width * share), Math.ceil(p.height * share)];
  return cropped(p, (p.width - width) / 2, (p.height - height) / 2, width, height);
}

const inPixels = (s: StripeFound, scale: number): StripeFound => ({
  ...s,
  period: s.period * scale,
  start: s.start * scale,
});

/** Fewest repeats that are believed. */
const FEWEST_REPEATS = 2.5;
/** Least share of the picture's variance that the bands must tell. */
const LEAST_DIRECTED = 0.25;
const LEAST_AGREES = 0.8;
const LEAST_TELLS = 0.75;
/** A part of the repeat that agrees with itself this nearly as well may be the repeat itself. */
const RIVAL = 0.12;
/** How far the two halves of the picture may differ in their repeats. */
const HALVES_DIFFER = 0.015;

function stripeIn(field: Field): StripeFound {
  const { angle, explained } = directionOf(field);
  const profile = profileAt(field, angle);
  const nothing = { period: 0, start: 0, angle, bands: [], repeats: 0, agrees: 0, tells: 0 };
  if (profile.length < 3 * LEAST_PERIOD) return unsure(nothing, "the picture is too small");
  const agreement = selfAgreement(profile, Math.floor(profile.length * 0.8));
  const all = peaksOf(agreement).filter((p) => p.at >= LEAST_PERIOD && p.agrees > 0);
  const peaks = all.filter((p) => p.at <= profile.length * 0.6);
  const chosen = choose(peaks);
  if (!chosen) return unsure(nothing, "no repeat is seen");
  const period = refined(profile, acrossAll(peaks, chosen, profile.length));
  const { bands, start } = bandsOf(profile, period, field.mean);
  const found = {
    period,
    start: profile.origin + start * period,
    angle,
    repeats: profile.length / period,
    agrees: chosen.agrees,
    tells: foldedShare(profile, period),
    bands,
  };
  const why = doubt(found, explained, all, profile);
  return why ? unsure(found, why) : { ...found, sure: true };
}

const unsure = (found: Omit<StripeFound, "sure" | "why">, why: string): StripeFound => ({
  ...found,
  sure: false,
  why,
});

/** The shortest lag that agrees nearly as well as the best. */
function choose(peaks: readonly Lag[]): Lag | undefined {
  const best = Math.max(0, ...peaks.map((p) => p.agrees));
  return peaks.find((p) => p.agrees >= best - 0.06 && p.agrees > 0.3);
}

/** The mean repeat over the peaks at its multiples: the farthest counts most. */
function acrossAll(peaks: readonly Lag[], first: Lag, length: number): number {
  let period = first.at;
  for (let m = 2; m * period < 0.6 * length; m++) {
    const near = peaks.filter((p) => Math.abs(p.at - m * period) < 0.2 * period);
    if (near.length === 0) break;
    const top = near.reduce((a, b) => (b.agrees > a.agrees ? b : a));
    if (top.agrees < first.agrees - 0.25) break;
    period = top.at / m;
  }
  return period;
}

function doubt(
  s: Omit<StripeFound, "sure" | "why">,
  explained: number,
  peaks: readonly Lag[],
  profile: Profile,
): string | undefined {
  if (explained < LEAST_DIRECTED) return "the bands hardly stand out";
  if (s.repeats < FEWEST_REPEATS)
    return `only ${s.repeats.toFixed(1)} repeats are seen, and ${FEWEST_REPEATS} are needed`;
  if (s.agrees < LEAST_AGREES || s.tells < LEAST_TELLS) return "the repeats are not alike enough";
  const rival = peaks.find((p) => p.at < s.period * 0.9 && p.agrees > s.agrees - RIVAL);
  if (rival) return "a part of the repeat looks nearly like the whole";
  if (repeatsAlternate(profile, s.period, peaks))
    return "every other repeat looks a little different";
  const [low, high] = halves(profile).map((h) => refined(h, s.period));
  if (s.repeats >= 2 * FEWEST_REPEATS && Math.abs(low - high) > HALVES_DIFFER * s.period)
    return "the repeat changes across the picture";
  return undefined;
}

function halves(p: Profile): Profile[] {
  const mid = Math.floor(p.length / 2);
  return [
    [0, mid],
    [mid, p.length],
  ].map(([from, to]) => ({
    length: to - from,
    origin: p.origin + from,
    values: p.values.map((v) => v.slice(from, to)),
    explained: p.explained,
  }));
}

/** The finding of a stripe that is not sure; nothing when it is. */
export const stripeFindings = (fabricId: string, s: StripeFound): Finding[] =>
  s.sure
    ? []
    : [
        {
          code: "stripe-unsure",
          severity: "draft",
          place: fabricId,
          words: { why: s.why ?? "" },
        },
      ];
