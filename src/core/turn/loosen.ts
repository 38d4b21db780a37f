import type { Brief } from "../brief/index.ts";
import { inchToLength, type Length } from "../measure/index.ts";
import { candidatesOf, sizerOf } from "./candidates.ts";
import { type Design, designOf } from "./design.ts";
import { FabricScale } from "./fabric.ts";
import { givenBrief } from "./given.ts";
import { rulerMiss, stepsMissed } from "./holds.ts";
import { aimOf, compare, type Ranked, waysOf } from "./order.ts";
import { answered, search, type Tally } from "./search.ts";
import type { Found, FreeWord, Limits, Loosened, Pin, YardagePin } from "./types.ts";

/** Most sentences kept while the nearest are looked for. */
const KEPT = 4000;
/** How much wider fabric is tried, inch by inch. */
const WIDER_INCHES = 8;

/**
 * For each pin the smallest change of it alone with which something fits; smallest first, by the part
 * of the pin's own number. A pin that no change of it alone can help is not among them.
 */
export function* loosenings<T>(
  brief: Brief,
  pins: readonly Pin[],
  free: readonly FreeWord[],
  limits: Limits,
  tally: Tally,
  tell: () => T,
): Generator<T, Loosened[]> {
  const out: Loosened[] = [];
  for (const pin of pins) {
    const others = pins.filter((p) => p !== pin);
    const d = designOf(givenBrief(brief, others));
    if (!d) continue;
    const job: Job = { brief, d, pin, others, free, limits, tally };
    const made =
      pin.kind === "width"
        ? yield* wider(job, tell)
        : pin.kind === "yardage"
          ? yield* leastFabric(job, pin, tell)
          : yield* nearest(job, tell);
    if (made) out.push(made);
  }
  return out.sort((a, b) => a.share - b.share);
}

interface Job {
  readonly brief: Brief;
  readonly d: Design;
  readonly pin: Pin;
  readonly others: readonly Pin[];
  readonly free: readonly FreeWord[];
  readonly limits: Limits;
  readonly tally: Tally;
}

interface Off extends Ranked {
  readonly off: Length;
}

/** Sentences the other pins allow, by how far they are off this one. */
function byOff({ d, others, free, limits }: Job, off: (c: Ranked) => Length): Off[] {
  const aim = aimOf(others);
  const order = (a: Off, b: Off): number =>
    Math.abs(a.off - b.off) > 1e-9 ? a.off - b.off : compare(a, b, aim);
  let kept: Off[] = [];
  for (const words of waysOf(free, limits.words)) {
    for (const c of candidatesOf(d, words, others, limits).left) kept.push({ ...c, off: off(c) });
    if (kept.length > 4 * KEPT) kept = kept.sort(order).slice(0, KEPT);
  }
  return kept.sort(order);
}

function* nearest<T>(job: Job, tell: () => T): Generator<T, Loosened | undefined> {
  const { d, pin, others, tally, limits } = job;
  const scale = new FabricScale(d, others, tally);
  for (const c of byOff(job, (x) => offOf(d, pin, x))) {
    if (tally.planned >= limits.plans) return undefined;
    if (!scale.sound(c.values) || !scale.mayFit(c.values) || !scale.fits(c.values)) continue;
    const to = loosenedTo(d, pin, c);
    yield tell();
    // Asked again with the loosened pin in place, so that the answer stands by it too.
    const again = designOf(givenBrief(job.brief, [...others, to])) ?? d;
    const found = answered(again, [...others, to], rankedBy(again, [...others, to], c), tally);
    if (found) return { from: pin, to, share: shareOf(pin, c.off), found };
  }
  return undefined;
}

/** How far a sentence is off a pin of its sizes or its ruler. */
function offOf(d: Design, pin: Pin, c: Ranked): number {
  if (pin.kind === "ruler") return rulerMiss(pin, d.write(c.values));
  const { over } = sizerOf(d, c.values)?.([pin], c.values.rows, c.values.columns) ?? { over: [] };
  const relation = "relation" in pin ? pin.relation : "=";
  return Math.max(
    0,
    ...over.map(({ by }) => (relation === "=" ? Math.abs(by) : relation === "<=" ? by : -by)),
  );
}

/** The same sentence, ranked by the loosened pin. */
function rankedBy(d: Design, pins: readonly Pin[], c: Ranked): Ranked {
  const { over } = sizerOf(d, c.values)?.(pins, c.values.rows, c.values.columns) ?? { over: [] };
  return { ...c, steps: stepsMissed(over, d.m.step) };
}

function loosenedTo(d: Design, pin: Pin, c: Off): Pin {
  const { off } = c;
  switch (pin.kind) {
    case "size": {
      if (pin.relation === "=") return { ...pin, within: off };
      const by = pin.relation === "<=" ? off : -off;
      return {
        ...pin,
        ...(pin.width !== undefined && { width: pin.width + by }),
        ...(pin.length !== undefined && { length: pin.length + by }),
      };
    }
    case "block":
      if (pin.relation === "=") return { ...pin, within: off };
      return { ...pin, side: pin.side + (pin.relation === "<=" ? off : -off) };
    case "blocks": {
      const { over } = sizerOf(d, c.values)?.([pin], c.values.rows, c.values.columns) ?? {
        over: [],
      };
      return { ...pin, count: pin.count + (over[0]?.by ?? 0) };
    }
    case "ruler": {
      const strip = c.values.strip ?? 0;
      const long = pin.longest !== undefined && strip > pin.longest;
      const short = pin.shortest !== undefined && strip < pin.shortest;
      return { ...pin, ...(long && { longest: strip }), ...(short && { shortest: strip }) };
    }
    default:
      return pin;
  }
}

function shareOf(pin: Pin, off: number): number {
  switch (pin.kind) {
    case "size":
      return off / Math.max(pin.width ?? 0, pin.length ?? 0);
    case "block":
      return off / pin.side;
    case "blocks":
      return off / pin.count;
    case "ruler":
      return off / (pin.longest ?? pin.shortest ?? 1);
    case "yardage":
      return off / pin.most;
    case "width":
      return off / pin.usable;
  }
}

/** The sentence that needs least of a fabric: by its bound first, until no bound is lower. */
function* leastFabric<T>(
  job: Job,
  pin: YardagePin,
  tell: () => T,
): Generator<T, Loosened | undefined> {
  const { d, others, tally, limits } = job;
  const mine = new FabricScale(d, [pin], tally);
  const rest = new FabricScale(d, others, tally);
  let best: { found: Found; buy: Length } | undefined;
  let since = 0;
  for (const c of byOff(job, (x) => mine.least(x.values, pin.fabricId))) {
    if (tally.planned >= limits.plans || (best && c.off >= best.buy - 1e-6)) break;
    if (!mine.sound(c.values)) continue;
    const [buy] = mine.buy(c.values);
    if (++since % 20 === 0) yield tell();
    if (buy === undefined || (best && buy >= best.buy - 1e-6)) continue;
    if (!rest.mayFit(c.values) || !rest.fits(c.values)) continue;
    const to = { ...pin, most: buy };
    const found = answered(d, [...others, to], rankedBy(d, others, c), tally);
    yield tell();
    if (found) best = { found, buy };
  }
  if (!best) return undefined;
  const to = { ...pin, most: best.buy };
  return { from: pin, to, share: shareOf(pin, best.buy - pin.most), found: best.found };
}

/** The next wider fabric, inch by inch, with which something fits. */
function* wider<T>(
  { brief, pin, others, free, limits, tally }: Job,
  tell: () => T,
): Generator<T, Loosened | undefined> {
  if (pin.kind !== "width") return undefined;
  for (let inches = 1; inches <= WIDER_INCHES; inches++) {
    const more = inchToLength(inches, brief.unit);
    const to = { ...pin, usable: pin.usable + more };
    const pins = [...others, to];
    const d = designOf(givenBrief(brief, pins));
    if (!d) return undefined;
    const [first] = yield* search(d, pins, free, limits, 1, tally, tell);
    if (first) return { from: pin, to, share: shareOf(pin, more), found: first.found };
  }
  return undefined;
}
