import type { Length } from "../measure/index.ts";
import { phase } from "./repeat.ts";
import type { BandLook, Look, Way } from "./types.ts";

/** How the wedges of a round are taken from the fabric. Docs: docs/geometry/stripes.md. */
export type RoundWord = "matched" | "mixed" | "free";

/** One wedge of a round: which way up, and the height of its strip's lower edge in the repeat. */
export interface WedgeLay {
  readonly way: Way;
  readonly start: Length;
}

export interface RoundPlan {
  readonly round: RoundWord;
  /** Which way the wedges of a matched round lie, and the first of a mixed one. */
  readonly way: Way;
  /** Height in the repeat at which every strip begins (matched, mixed) or the first one (free). */
  readonly start: Length;
  /** Raw height of the strips: where one ends the next begins (free). */
  readonly strip: Length;
  /** Strips the pile of wedges comes from (free); 1 when unknown. */
  readonly strips: number;
}

/**
 * The wedge at place `rank` (from 0, in the order of the sectors) of a round. Matched: all alike.
 * Mixed: alternately the one way and the other. Free: dealt in turn from the strips as they really
 * fall, one below the other on the fabric, each flipped wedge by wedge, so that starts and ways
 * both spread; `block` counts the rounds dealt before.
 */
export function wedgeLay(
  plan: RoundPlan,
  rank: number,
  look: Look,
  wedges: number,
  block = 0,
): WedgeLay {
  const other: Way = plan.way === "up" ? "down" : "up";
  if (plan.round === "matched") return { way: plan.way, start: plan.start };
  if (plan.round === "mixed") return { way: rank % 2 === 0 ? plan.way : other, start: plan.start };
  const dealt = block * wedges + rank;
  const strip = dealt % plan.strips;
  const along = Math.floor(dealt / plan.strips) + strip;
  const start = plan.start + strip * plan.strip;
  const period = look.kind === "photo" ? (periodOf(look) ?? look.height) : periodOf(look);
  return {
    way: along % 2 === 0 ? plan.way : other,
    start: period ? phase(start, period) : plan.start,
  };
}

/** The repeat across the strip, where the fabric has one that is known. */
export function periodOf(look: Look): Length | undefined {
  if (look.kind === "bands") return look.period;
  return look.kind === "photo" ? look.repeat?.along : undefined;
}

export interface WayCount {
  readonly up: number;
  readonly down: number;
}

/** How many of each way `rounds` rounds of `wedges` wedges use. */
export function waysOf(plan: RoundPlan, look: Look, wedges: number, rounds: number): WayCount {
  if (plan.round === "matched") {
    const all = wedges * rounds;
    return plan.way === "up" ? { up: all, down: 0 } : { up: 0, down: all };
  }
  let up = 0;
  for (let block = 0; block < rounds; block++)
    for (let rank = 0; rank < wedges; rank++)
      if (wedgeLay(plan, rank, look, wedges, block).way === "up") up++;
  return { up, down: wedges * rounds - up };
}

export interface OctagonCount {
  /** Whole rounds of wedges all up, and all down. */
  readonly up: number;
  readonly down: number;
  /** Further rounds half up and half down from what is over. */
  readonly mixed: number;
  /** Wedges over after the rounds all one way. */
  readonly overUp: number;
  readonly overDown: number;
}

/** What a pile of wedges makes in rounds of `wedges`: 10 up and 10 down make 1 + 1, 2 + 2 over. */
export function octagonsFrom(pile: WayCount, wedges: number): OctagonCount {
  const up = Math.floor(pile.up / wedges);
  const down = Math.floor(pile.down / wedges);
  const overUp = pile.up - up * wedges;
  const overDown = pile.down - down * wedges;
  const mixed = Math.floor(Math.min(overUp, overDown) / (wedges / 2));
  return { up, down, mixed, overUp, overDown };
}

/** Wedges of each way when a strip of `wedges` is cut with the ruler flipped each time. */
export const flipped = (wedges: number, first: Way = "up"): WayCount => {
  const more = Math.ceil(wedges / 2);
  const fewer = wedges - more;
  return first === "up" ? { up: more, down: fewer } : { up: fewer, down: more };
};

/** Where every strip must begin in the repeat, as the planner reads it. */
export interface Register {
  readonly axis: "along" | "across";
  readonly period: Length;
  readonly phase: Length;
}

/** What a choice of round asks of the cutting plan, as changes to the wedge's demand. */
export interface RoundDemand {
  /** Wedges cut head to tail, as many one way up as the other. */
  readonly flipped: number;
  /** Wedges cut all one way: each takes a whole cut base of strip; the gaps are the other way. */
  readonly oneWay: number;
  /** May the ruler be flipped along the strip? */
  readonly turns: "none" | "half";
  /** Must every copy keep one way up? */
  readonly up: boolean;
  readonly register?: Register;
  /** Other-way wedges that fall out of the gaps, if they are cut too. */
  readonly spare: WayCount;
}

/**
 * Changes to the demand for `ways` wedges. Flipped pairs take the least strip. What one way needs
 * more of is cut unflipped: a wedge then takes its whole cut base, just what a flipped pair takes,
 * so its gaps are as many wedges of the other way for nothing. `runs` is how the fabric's bands run:
 * across the fabric they fix the strip's place along it, and the other way about.
 */
export function roundDemand(
  plan: RoundPlan,
  ways: WayCount,
  look: Look,
  runs: "along" | "across",
): RoundDemand {
  const pairs = Math.min(ways.up, ways.down);
  const single = Math.abs(ways.up - ways.down);
  const free = look.kind === "plain" || plan.round === "free";
  const total = ways.up + ways.down;
  const period = periodOf(look);
  const fixed = plan.round !== "free" && period !== undefined;
  return {
    flipped: free ? total : 2 * pairs,
    oneWay: free ? 0 : single,
    turns: free || pairs > 0 ? "half" : "none",
    up: !free && pairs === 0,
    ...(fixed && {
      register: {
        axis: runs === "across" ? "along" : "across",
        period,
        phase: phase(plan.start, period),
      } as const,
    }),
    spare: free
      ? { up: 0, down: 0 }
      : {
          up: ways.down > ways.up ? single : 0,
          down: ways.up > ways.down ? single : 0,
        },
  };
}

/** A band look's edges as heights in the repeat, with the colors below and above. */
export interface BandEdge {
  readonly at: Length;
  readonly below: string;
  readonly above: string;
}

/** Edges within one repeat (the wrap included), or within the set. */
export function bandEdges(look: BandLook): BandEdge[] {
  const { bands, period } = look;
  const inside = bands.slice(1).map((b, i) => ({
    at: b.from,
    below: bands[i].color,
    above: b.color,
  }));
  const first = bands[0];
  const last = bands[bands.length - 1];
  if (period === undefined || !first || first.color === last.color) return inside;
  return [{ at: 0, below: last.color, above: first.color }, ...inside];
}
