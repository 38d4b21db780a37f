import { namesOf } from "../answer/index.ts";
import { designOf, stuckWords } from "./design.ts";
import { givenBrief } from "./given.ts";
import { loosenings } from "./loosen.ts";
import { type Held, search, type Tally } from "./search.ts";
import { FREE_WORDS, LIMITS, type Turned, type Turning } from "./types.ts";

/** Sentences offered unless told. */
const MOST = 4;

/**
 * Turns a question round: pins answers, frees words, and finds the nearest few sentences that make the
 * pins true. Exact on the ruler's steps and complete within the limits; every sentence it gives is
 * answered in full by the same core, and that answer stands by every pin.
 *
 * A generator: each step tells the best so far, so that whoever runs it may show them and stop. A list
 * holds the best sentence of each way (each choice of words that change), those changed by fewer words
 * first; then each way's second, until there are enough.
 */
export function* turnRound(t: Turning): Generator<Turned, Turned> {
  const limits = { ...LIMITS, ...t.limits };
  const brief = givenBrief(t.brief, t.pins);
  const d = namesOf(brief).length > 0 ? undefined : designOf(brief);
  const tally: Tally = { weighed: 0, all: 0, answered: 0, planned: 0 };
  if (!d) return told(tally, [], [[], []], true);
  const still = stuckWords(d, t.free);
  const never = stuckWords(d, FREE_WORDS);
  const may = FREE_WORDS.filter((w) => never.every((s) => s.word !== w));
  const stuck = [still, may] as const;
  const free = t.free.filter((w) => still.every((s) => s.word !== w));
  const found = yield* search(d, t.pins, free, limits, t.most ?? MOST, tally, (held) =>
    told(tally, held, stuck, false),
  );
  const complete = tally.planned < limits.plans;
  if (found.length > 0) return told(tally, found, stuck, complete);
  const loosened = yield* loosenings(t.brief, t.pins, free, limits, tally, () =>
    told(tally, [], stuck, false),
  );
  return { ...told(tally, [], stuck, complete && tally.planned < limits.plans), loosened };
}

const told = (
  { weighed, all, answered }: Tally,
  held: readonly Held[],
  [stuck, may]: readonly [Turned["stuck"], Turned["may"]],
  complete: boolean,
): Turned => ({
  found: held.map((h) => h.found),
  weighed,
  all,
  answered,
  complete,
  loosened: [],
  stuck,
  may,
});
