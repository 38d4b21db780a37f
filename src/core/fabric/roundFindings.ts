import type { Finding } from "../findings/index.ts";
import { inchToLength, type Length, printWithUnit, type Step } from "../measure/index.ts";
import { bestStarts, pairMatch } from "./meeting.ts";
import { flipped, octagonsFrom, type RoundPlan, type WayCount } from "./rounds.ts";
import type { BandLook, WedgeCut } from "./types.ts";

/** A miss smaller than this looks like careful matching (assumption), in inches. */
export const MEETS_WITHIN_INCHES = 1 / 32;
/** A miss on purpose should be at least this everywhere (from memory of the trade), in inches. */
export const MISS_ON_PURPOSE_INCHES = 3 / 8;

/** Counts the wedges of whole strips, flipped along each, and names those that are over. */
export function oddWedges(
  place: string,
  strips: number,
  perStrip: number,
  wedges: number,
): { readonly pile: WayCount; readonly findings: readonly Finding[] } {
  const one = flipped(perStrip);
  const turned = Math.floor(strips / 2);
  const pile = {
    up: (strips - turned) * one.up + turned * one.down,
    down: (strips - turned) * one.down + turned * one.up,
  };
  const made = octagonsFrom(pile, wedges);
  if (made.overUp + made.overDown === 0) return { pile, findings: [] };
  const what =
    `${count(pile.up + pile.down, "wedge")} make ${made.up} of one kind and ${made.down} of the other; ` +
    `${made.overUp} up and ${made.overDown} down are over` +
    (made.mixed > 0 ? `, enough for ${made.mixed} half and half.` : ".");
  return {
    pile,
    findings: [{ code: "odd-wedges", severity: "advice", place, words: { what } }],
  };
}

const count = (n: number, word: string): string => `${n} ${word}${n === 1 ? "" : "s"}`;

/**
 * What is doubtful about the rings of a mixed round: a miss too small to look meant. Matched rounds
 * always meet; free ones are left to chance. Says where to begin the strip so that they meet, or
 * miss by most.
 */
export function ringFindingsOfRound(
  place: string,
  plan: RoundPlan,
  look: BandLook,
  cut: WedgeCut,
  step: Step,
): Finding[] {
  if (plan.round !== "mixed") return [];
  const { unit } = step;
  const lay = (way: "up" | "down") => ({ way, start: plan.start });
  const { most, least } = pairMatch(look, cut, lay("up"), lay("down"));
  const meets = inchToLength(MEETS_WITHIN_INCHES, unit);
  const needed = inchToLength(MISS_ON_PURPOSE_INCHES, unit);
  if (least === undefined || (most !== undefined && most <= meets) || least >= needed) return [];
  return [
    {
      code: "rings-nearly-meet",
      severity: "advice",
      place,
      needed,
      found: least,
      unit,
      words: { works: worksOf(look, cut, step) },
    },
  ];
}

function worksOf(look: BandLook, cut: WedgeCut, step: Step): string {
  const { meet, miss } = bestStarts(look, cut);
  const say = (start: Length): string => printWithUnit(start, step);
  const meets = inchToLength(MEETS_WITHIN_INCHES, step.unit);
  const parts: string[] = [];
  if (meet?.most !== undefined && meet.most <= meets)
    parts.push(`They meet when each strip begins ${say(meet.start)} into the repeat.`);
  if (miss?.least !== undefined && miss.least > meets)
    parts.push(
      `They miss by ${printWithUnit(miss.least, step)} or more when it begins ${say(miss.start)} into it.`,
    );
  return parts.join(" ");
}
