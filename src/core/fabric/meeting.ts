import type { Length, Radian } from "../measure/index.ts";
import { phase } from "./repeat.ts";
import { ringsBetween } from "./rings.ts";
import { bandEdges, type WedgeLay } from "./rounds.ts";
import { type BandLook, type Ring, stripOf, type WedgeCut } from "./types.ts";

/** A change of color on the seam between two wedges, and how far its partner misses it. */
export interface EdgeMiss {
  readonly radius: Length;
  /** Along the axis of the wedges; undefined when the neighbor has no such edge. */
  readonly miss?: Length;
  /** The same along the seam itself, where the eye sees it. */
  readonly alongSeam?: Length;
}

export interface SeamMatch {
  /** Each change of color of the first wedge against the same change in the second. */
  readonly edges: readonly EdgeMiss[];
  /** Largest miss; undefined when an edge has no partner at all. */
  readonly most?: Length;
  /** Least distance between any two edges of the two wedges, whatever their colors. */
  readonly least?: Length;
}

interface Change {
  readonly radius: Length;
  readonly inner: string;
  readonly outer: string;
}

const changes = (rings: readonly Ring[]): Change[] =>
  rings.slice(1).map((r, i) => ({
    radius: r.inner,
    inner: rings[i].color,
    outer: r.color,
  }));

/**
 * How the rings of two neighboring wedges meet at the seam between them. Partners may lie under a
 * seam allowance, so a periodic stripe is looked at a repeat beyond the wedge on either side.
 * `halfAngle`: half the wedge's angle, which the seam makes with the axis.
 */
export function seamMatch(
  look: BandLook,
  cut: WedgeCut,
  first: WedgeLay,
  second: WedgeLay,
  halfAngle: Radian,
): SeamMatch {
  const beyond = look.period ?? stripOf(cut);
  const seen = changes(ringsBetween(look, cut, first.way, first.start, 0, cut.a));
  const others = changes(
    ringsBetween(look, cut, second.way, second.start, -beyond, cut.a + beyond),
  );
  const stretch = 1 / Math.cos(halfAngle);
  const edges = seen.map((e): EdgeMiss => {
    const partners = others.filter((o) => o.inner === e.inner && o.outer === e.outer);
    if (partners.length === 0) return { radius: e.radius };
    const miss = Math.min(...partners.map((o) => Math.abs(o.radius - e.radius)));
    return { radius: e.radius, miss, alongSeam: miss * stretch };
  });
  const whole = edges.every((e) => e.miss !== undefined);
  const most = whole ? Math.max(0, ...edges.map((e) => e.miss ?? 0)) : undefined;
  const gaps = seen.flatMap((e) => others.map((o) => Math.abs(o.radius - e.radius)));
  return {
    edges,
    ...(most !== undefined && { most }),
    ...(gaps.length > 0 && { least: Math.min(...gaps) }),
  };
}

/** The matches all round, seam i between wedge i and the next. */
export function roundMatch(
  look: BandLook,
  cut: WedgeCut,
  lays: readonly WedgeLay[],
  halfAngle: Radian,
): SeamMatch[] {
  return lays.map((lay, i) => seamMatch(look, cut, lay, lays[(i + 1) % lays.length], halfAngle));
}

/**
 * Both seams of a wedge matter: the first wedge's edges against the second's, and back. The worse of
 * the two most, the lesser of the two least.
 */
export function pairMatch(
  look: BandLook,
  cut: WedgeCut,
  first: WedgeLay,
  second: WedgeLay,
): { readonly most?: Length; readonly least?: Length } {
  const there = seamMatch(look, cut, first, second, 0);
  const back = seamMatch(look, cut, second, first, 0);
  const leasts = [there.least, back.least].filter((x) => x !== undefined);
  return {
    ...(there.most !== undefined &&
      back.most !== undefined && { most: Math.max(there.most, back.most) }),
    ...(leasts.length > 0 && { least: Math.min(...leasts) }),
  };
}

export interface StartChoice {
  readonly start: Length;
  readonly most?: Length;
  readonly least?: Length;
}

/** More starts than these are not paired with one another: the search stays small. */
const MOST_PAIRED = 24;

/**
 * Where in the repeat to lay the strip's lower edge so that up and down wedges, sewn side by side,
 * meet best, and where their rings miss by most. Up edge e at a + SA - (e - s), down edge f at
 * (f - s) - p: they coincide at s = (e + f - W) / 2, W = a + SA + p. Misses are linear in s between,
 * so the best lie at these starts or half way between two of them; each is tried. Nothing for a
 * strip set, which has no repeat to slide along.
 */
export function bestStarts(
  look: BandLook,
  cut: WedgeCut,
): { readonly meet?: StartChoice; readonly miss?: StartChoice } {
  const { period } = look;
  if (period === undefined) return {};
  const at = bandEdges(look).map((e) => e.at);
  const meetings = at.flatMap((e) =>
    at.flatMap((f) => [0, period].map((wrap) => phase((e + f + wrap - stripOf(cut)) / 2, period))),
  );
  const starts = [...new Set(meetings.map((s) => Number(s.toFixed(12))))].sort((p, q) => p - q);
  const choices = [...starts, ...halfway(starts, period)].map((start) => ({
    start,
    ...pairMatch(look, cut, { way: "up", start }, { way: "down", start }),
  }));
  const meet = leastBy(choices, (c) => c.most);
  const miss = leastBy(choices, (c) => c.least && -c.least);
  return { ...(meet && { meet }), ...(miss && { miss }) };
}

function halfway(starts: readonly Length[], period: Length): Length[] {
  if (starts.length > MOST_PAIRED)
    return starts.map((s, i) => phase((s + (starts[i + 1] ?? starts[0] + period)) / 2, period));
  return starts.flatMap((s, i) =>
    starts
      .slice(i)
      .flatMap((t) => [phase((s + t) / 2, period), phase((s + t + period) / 2, period)]),
  );
}

/** The first with the least key, ties within 1e-9 going to the earlier. */
function leastBy(
  all: readonly StartChoice[],
  key: (c: StartChoice) => number | undefined,
): StartChoice | undefined {
  let best: StartChoice | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const c of all) {
    const k = key(c);
    if (k === undefined || k >= least - 1e-9) continue;
    best = c;
    least = k;
  }
  return best;
}
