import { answerBrief } from "../answer/index.ts";
import { stepOf } from "../measure/index.ts";
import { candidatesOf } from "./candidates.ts";
import type { Design } from "./design.ts";
import { FabricScale } from "./fabric.ts";
import { holds, overUnder, stepsMissed } from "./holds.ts";
import { type Aim, aimOf, compare, outdone, type Ranked, roundedArea, waysOf } from "./order.ts";
import type { Found, FreeWord, Limits, Pin } from "./types.ts";

/** Sentences weighed between two looks at whether to go on. */
const BREATH = 400;

/** A sentence that was answered and is true, with what it is ranked by. */
export interface Held extends Ranked {
  readonly found: Found;
}

/** What one search counts, for all that take part in it. */
export interface Tally {
  weighed: number;
  all: number;
  answered: number;
  /** By the planner: in full, or the pinned fabrics alone. */
  planned: number;
}

/** One way of changing words: its sentences in order, how far they are decided, which are true. */
interface Way {
  readonly words: readonly FreeWord[];
  readonly left: readonly Ranked[];
  readonly held: Held[];
  next: number;
}

export function* search<T>(
  d: Design,
  pins: readonly Pin[],
  free: readonly FreeWord[],
  limits: Limits,
  most: number,
  tally: Tally,
  tell: (held: readonly Held[]) => T,
): Generator<T, Held[]> {
  const aim = aimOf(pins);
  const scale = new FabricScale(d, pins, tally);
  const ways: Way[] = [];
  for (const words of waysOf(free, limits.words)) {
    const { left, all } = candidatesOf(d, words, pins, limits);
    tally.all += all;
    tally.weighed += all - left.length;
    left.sort((a, b) => compare(a, b, aim));
    ways.push({ words, left, held: [], next: 0 });
    yield tell(chosen(ways, most, aim));
    // The first of each way are looked for as soon as it is known: they are told early.
    yield* decide(ways.length - 1, 1);
  }
  for (let round = 2; round <= most && chosen(ways, most, aim).length < most; round++)
    for (let i = 0; i < ways.length; i++) yield* decide(i, round);
  for (const way of ways) tally.weighed += way.left.length - way.next;
  return chosen(ways, most, aim);

  /** Looks on in one way until it has so many true sentences, or none that can count is left. */
  function* decide(i: number, want: number): Generator<T> {
    const way = ways[i];
    let since = 0;
    while (way.held.length < want && way.next < way.left.length && tally.planned < limits.plans) {
      const c = way.left[way.next];
      if (ways.some((w) => w.held.length > 0 && outdone(c, w.held[0], aim))) return;
      way.next++;
      tally.weighed++;
      const before = tally.answered;
      const found =
        scale.mayFit(c.values) && scale.sound(c.values) && scale.fits(c.values)
          ? answered(d, pins, c, tally)
          : undefined;
      if (found) way.held.push({ ...c, found });
      since++;
      if (tally.answered !== before || since >= BREATH) {
        since = 0;
        yield tell(chosen(ways, most, aim));
      }
    }
  }
}

/** The sentence answered in full, if it is true. Its own numbers count from here on. */
export function answered(
  d: Design,
  pins: readonly Pin[],
  c: Ranked,
  tally: Tally,
): Found | undefined {
  tally.answered++;
  tally.planned++;
  const brief = d.write(c.values);
  const answer = answerBrief(brief);
  if (!holds(pins, brief, answer) || !answer.quilt) return undefined;
  const over = overUnder(pins, answer);
  const steps = stepsMissed(over, stepOf(d.brief.step, d.brief.unit));
  const area = roundedArea(answer.quilt.width, answer.quilt.height);
  if (steps !== c.steps || Math.abs(area - c.area) > 1e-4)
    throw new RangeError(
      `a sentence's sizes must be those of its answer: ${c.steps} steps and ${c.area} expected, got ${steps} and ${area}`,
    );
  return { brief, answer, words: c.words, values: c.values, over, steps };
}

/** The best of each way, then the second of each, until there are enough; best first. */
function chosen(ways: readonly Way[], most: number, aim: Aim): Held[] {
  const firsts = ways.flatMap((w) => w.held.slice(0, 1));
  const worth = (h: Held): boolean => !firsts.some((f) => outdone(h, f, aim));
  const out: Held[] = [];
  for (let round = 0; round < most && out.length < most; round++) {
    const those = ways.flatMap((w) => w.held.slice(round, round + 1)).filter(worth);
    out.push(...those.sort((a, b) => compare(a, b, aim)).slice(0, most - out.length));
  }
  return out.sort((a, b) => compare(a, b, aim));
}
