import { type Brief, recorded, seamOf } from "../../brief/index.ts";
import { say } from "../../findings/index.ts";
import { printAtMark, printWithUnit, roundDown, roundUp, stepOf } from "../../measure/index.ts";
import type { Diagnosis, RankedCause } from "../../sewing/diagnose.ts";
import {
  planned,
  READING_WORDS,
  READINGS,
  type ReadingName,
  type SewnCircle,
  sewnCircleOf,
} from "../../sewing/readings.ts";
import { isVague, sayCause, sayConfidence, sayRemedy } from "../../sewing/words.ts";
import { rulerFor } from "../cut/stages.ts";
import type { Answer, AnswerBlock } from "../types/answer.ts";
import { stepOfBrief } from "../words/word.ts";
import { isSize, judgeReadings } from "./readings.ts";

/** One measurement to take: in plain words, what it should be, and what was typed. */
export interface ReadingRow {
  readonly name: ReadingName;
  readonly what: string;
  readonly how: string;
  readonly should: string;
  readonly typed: string;
  readonly problem?: string;
  /** The measurement that would part the causes now tied, or tell most. */
  readonly wanted: boolean;
}

export interface CauseRow {
  readonly cause: RankedCause["cause"];
  readonly text: string;
  /** "82 in 100". */
  readonly chance: string;
  /** "19 times in 20 from 1/64 to 1/16 in"; empty where there is no size. */
  readonly range: string;
  readonly tied: boolean;
  readonly remedies: readonly string[];
}

export interface WhyTable {
  readonly block: AnswerBlock;
  readonly rows: readonly ReadingRow[];
  /** Empty while nothing was measured. */
  readonly outcome: string;
  readonly findings: readonly string[];
  readonly causes: readonly CauseRow[];
}

/** How each is taken, with a ruler and a straight edge. */
const HOW: Readonly<Record<ReadingName, string>> = {
  acrossOne: "From raw edge to raw edge of the circle of wedges, square to a flat side.",
  acrossTwo: "The same, a quarter turn on.",
  halfGap:
    "Before the last seam: a straight edge on the long raw edge of a half. Type the light in the middle; with a minus the light at both ends.",
  outerEdge:
    "Pat the block flat: what lies in ripples along the whole outer edge. With a minus, the gap when one seam is opened.",
  centerOffset: "From point to point, where they should meet.",
  wedgeHeight: "Square across the wedge, from its wide end to its point as it was cut.",
  wedgeBase: "Along the wide end, from raw edge to raw edge.",
};

/** Every kind of block that has a circle of wedges, with the circle as it was planned. */
export function whyCircles(b: Brief, a: Answer): { block: AnswerBlock; circle: SewnCircle }[] {
  return a.blocks
    .filter((block) => block.radial && !block.id.includes("~"))
    .flatMap((block) => {
      const ruler = rulerFor(b, block.radial?.n ?? 8);
      const circle = sewnCircleOf(block, seamOf(b), ruler.missing, b.unit);
      return circle ? [{ block, circle }] : [];
    });
}

/** For each block of wedges: what to measure, and what those measurements mean. */
export const whyTables = (b: Brief, a: Answer): WhyTable[] =>
  whyCircles(b, a).map(({ block, circle }) => tableFor(b, block, circle));

function tableFor(b: Brief, block: AnswerBlock, circle: SewnCircle): WhyTable {
  const kept = recorded(b, "reading").filter((e) => e.block === block.id);
  const { typed, problems, diagnosis: d } = judgeReadings(b, circle, kept);
  const step = stepOfBrief(b);
  const plan = planned(circle);
  const wanted = d ? (d.parting?.reading ?? d.ask[0]) : undefined;
  return {
    block,
    rows: READINGS.map((name) => {
      const problem = problems.get(name);
      return {
        name,
        what: READING_WORDS[name],
        how: HOW[name],
        should: isSize(name) ? printAtMark(plan[name], step) : "none",
        typed: typed.get(name) ?? "",
        wanted: name === wanted && d?.confidence !== "sure" && d?.confidence !== "nothing-wrong",
        ...(problem !== undefined && { problem }),
      };
    }),
    outcome: d ? sayConfidence(d) : "",
    findings: (d?.findings ?? [])
      .filter((f) => !READINGS.some((name) => name === f.place))
      .map((f) => say(f, { step })),
    causes: d ? causesOf(d, b) : [],
  };
}

const causesOf = (d: Diagnosis, b: Brief): CauseRow[] =>
  d.confidence === "nothing-wrong"
    ? []
    : d.causes.map((c) => ({
        cause: c.cause,
        text: sayCause(c, b.unit),
        chance: `${Math.max(1, Math.round(100 * c.chance))} in 100`,
        range: rangeOf(c, b.unit),
        tied: d.confidence === "tie" && d.tied.includes(c.cause),
        remedies: sayRemedy(c.remedy, b.unit),
      }));

/** Between what the size lies, 19 times in 20. */
function rangeOf(c: RankedCause, unit: Brief["unit"]): string {
  if (c.cause === "point" || isVague(c, unit) || !Number.isFinite(c.low + c.high)) return "";
  const [low, high] = [c.low, c.high].sort((x, y) => Math.abs(x) - Math.abs(y));
  const least = Math.sign(low) === Math.sign(high) ? Math.abs(low) : 0;
  const most = Math.abs(high);
  if (c.unit === "degrees")
    return `19 times in 20 between ${least.toFixed(2)} and ${most.toFixed(2)} degree`;
  const fine = stepOf(unit === "in" ? "1/64" : "0.1", unit);
  const from = roundDown(least, fine);
  const said = from === 0 ? "nothing" : printWithUnit(from, fine);
  return `19 times in 20 between ${said} and ${printWithUnit(roundUp(most, fine), fine)}`;
}
