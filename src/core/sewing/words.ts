import { lengthToInch, type Unit } from "../measure/index.ts";
import { aboutLength } from "./about.ts";
import type { Cause } from "./causes.ts";
import type { Diagnosis, RankedCause } from "./diagnose.ts";
import { takenUpBy } from "./laws.ts";
import { READING_WORDS } from "./readings.ts";
import type { Remedy } from "./remedy.ts";
import type { HalfVerdict, StopVerdict } from "./stops.ts";

const aboutDegrees = (x: number): string => `about ${Math.abs(x).toFixed(2)} degree`;

const amount = (c: Pick<RankedCause, "size" | "unit">, unit: Unit): string =>
  c.unit === "degrees" ? aboutDegrees(c.size) : aboutLength(c.size, unit);

/** A size that the readings leave open by more than an inch is not told. */
export const isVague = (c: Pick<RankedCause, "low" | "high" | "unit">, unit: Unit): boolean =>
  c.unit !== "degrees" && lengthToInch(c.high - c.low, unit) > 1;

/** What is wrong, with its size. */
export function sayCause(c: RankedCause, unit: Unit): string {
  const much = amount(c, unit);
  const more = c.size > 0;
  const sentences: Readonly<Record<Cause, string>> = {
    seam: `The seams are ${much} too ${more ? "wide" : "narrow"}, the fold of the fabric counted.`,
    strip: `The strip for the wedges was cut ${much} too ${more ? "wide" : "narrow"}.`,
    angle: `The wedges are ${much} too ${more ? "wide" : "narrow"} at the point.`,
    drift: `The seams run ${more ? "wider" : "narrower"} toward the outer edge, by ${much} from the center to the edge.`,
    slip: `The points slipped by ${much} when the last seam was sewn.`,
    "odd-piece": `One wedge differs from the others${isVague(c, unit) ? "" : `, by ${much}`}.`,
    point:
      "The point of the wedges is cut another way than the numbers are for: sharp for blunt, or blunt for sharp.",
  };
  return sentences[c.cause];
}

/** What to do, for the next block and for this one. */
export function sayRemedy(r: Remedy, unit: Unit): string[] {
  const { next, block, finishes } = r;
  return [
    sayNext(next, unit),
    ...(block
      ? [
          `This block: sew ${block.seams} seams again, ${aboutLength(block.by, unit)} ${block.do === "take-in" ? "deeper" : "narrower"} at the outer edge, tapering to nothing at the center.`,
        ]
      : []),
    ...(finishes === undefined
      ? []
      : [
          `Kept as it is, it finishes ${aboutLength(finishes, unit)} across flats; trim all its fellows to the same.`,
        ]),
  ];
}

function sayNext(next: Remedy["next"], unit: Unit): string {
  switch (next.do) {
    case "sew-narrower":
      return `Move the needle or the guide so that the seam is ${aboutLength(next.by, unit)} narrower.`;
    case "sew-wider":
      return `Move the needle or the guide so that the seam is ${aboutLength(next.by, unit)} wider.`;
    case "cut-narrower-strips":
      return `Cut the strips ${aboutLength(next.by, unit)} narrower.`;
    case "cut-wider-strips":
      return `Cut the strips ${aboutLength(next.by, unit)} wider.`;
    case "check-ruler-angle":
      return `Check the ruler's angle and that it did not turn while cutting: the wedges are out by ${aboutDegrees(next.by)}.`;
    case "keep-outer-edge-level":
      return `Watch the guide to the end of each seam; it wanders by ${aboutLength(next.by, unit)}.`;
    case "pin-the-center":
      return "Pin the two halves at the center before the last seam, and sew that seam again.";
    case "replace-wedge":
      return "Lay an unsewn wedge on each sewn one, find the one that differs, and replace it.";
    case "use-other-point":
      return "Cut the point as the pattern says, or work the pattern again for the point that was cut.";
  }
}

/** How sure, in one sentence. */
export function sayConfidence(d: Diagnosis): string {
  switch (d.confidence) {
    case "sure":
      return "The readings leave hardly room for another cause.";
    case "likely":
      return "This is the likeliest cause; others are not ruled out.";
    case "tie":
      return d.parting
        ? `The readings do not part these causes. To part them, measure the ${READING_WORDS[d.parting.reading]}.`
        : "The readings do not part these causes.";
    case "nothing-wrong":
      return "All of it is within what a ruler is off by.";
    case "unclear":
      return "No one cause explains these readings. Measure again, or look for two faults.";
    case "not-judged":
      return "There is not enough to judge by.";
  }
}

/** What to do at a stop. */
export function sayVerdict(v: StopVerdict, unit: Unit): string {
  const each = aboutLength(v.perSeam, unit);
  const again = v.seams === 1 ? "sew its seam again" : `sew its ${v.seams} seams again`;
  const apiece = v.seams === 1 ? "" : " each";
  switch (v.verdict) {
    case "sew-on":
      return v.toTrim > 0 ? `Sew on; ${aboutLength(v.toTrim, unit)} is left to trim.` : "Sew on.";
    case "take-in":
      return `Take in: ${again}, ${each} deeper${apiece}.`;
    case "let-out":
      return `Let out: ${again}, ${each} narrower${apiece}.`;
    case "recut":
      return `Cut again: it is ${aboutLength(v.off, unit)} too small, more than its seams can give.`;
  }
}

/** What the straight edge on a half says, for a circle of n wedges. */
export function sayHalf(h: HalfVerdict, n: number, unit: Unit): string {
  if (h.straight) return "Straight: sew on.";
  const much = aboutLength(h.tooMuch, unit);
  const each = aboutLength(Math.abs(h.tooMuch) / takenUpBy(n, 1), unit);
  return h.tooMuch > 0
    ? `The circle would ruffle, ${much} too much along its outer edge. Take in: sew all ${n} seams ${each} deeper at the outer edge, tapering to nothing at the center.`
    : `The circle would cup, ${much} short along its outer edge. Let out: sew all ${n} seams ${each} narrower at the outer edge, tapering to nothing at the center.`;
}
