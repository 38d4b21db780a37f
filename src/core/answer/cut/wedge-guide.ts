import type { Brief } from "../../brief/index.ts";
import {
  knownLength,
  type Length,
  printAtMark,
  printWithUnit,
  type Step,
  stepOf,
} from "../../measure/index.ts";
import {
  type OtherWay,
  otherWays,
  type RulerReading,
  readYourRuler,
  rulerOf,
} from "../../recipe/index.ts";
import { aboutLength } from "../../sewing/about.ts";
import type { WedgeGuide } from "../types/guide.ts";

/** One guide for each different wedge of the brief. */
export function wedgeGuides(brief: Brief, seam: Length, used: ReadonlySet<string>): WedgeGuide[] {
  const seen = new Set<string>();
  return brief.blocks.flatMap((block): WedgeGuide[] => {
    if (block.kind !== "wedges" || !used.has(block.id)) return [];
    const key = `${block.n} ${block.strip}`;
    if (seen.has(key)) return [];
    seen.add(key);
    const strip = knownLength(block.strip, brief.unit);
    const ruler = rulerOf(brief.ruler, block.n, brief.unit);
    return [
      {
        blockId: block.id,
        strip,
        ways: otherWays({ ruler, strip, seam, unit: brief.unit, hasRuler: true }),
        reading: readYourRuler(ruler, strip, seam, brief.unit),
      },
    ];
  });
}

/** One way as an instruction, with what a slip of one pencil line on every wedge would do. */
export function sayWay(way: OtherWay, step: Step): { readonly how: string; readonly slip: string } {
  const x = (name: string): string => printAtMark(way.lengths[name] ?? 0, step);
  const tip = way.lengths.tip ?? 0;
  const point =
    tip > 0 ? `, and ${printAtMark(tip, step)} wide at the tip` : ", and to a point at the tip";
  const how: Readonly<Record<OtherWay["kind"], string>> = {
    ruler: `By the ruler: lay its ${x("line")} line on the edge of the strip.`,
    extended: `A ruler that ends at ${x("ruler")}: cut along it, then lengthen both cuts with a straight edge by ${x("beyond")} to the edge of the strip.`,
    "two-passes": `In two passes: cut the ${x("first")} from the tip by the ruler, slide it down along the cuts by ${x("second")}, and cut on.`,
    "two-marks": `By two marks, with any straight ruler: mark ${x("base")} along the strip's lower edge${point}, centered, ${x("height")} above; cut from mark to mark.`,
    "folded-square": `By a folded square of paper, ${x("square")} on a side: fold it ${way.lengths.folds} times through one corner, corner to edge, and cut along the folds; the wedge is ${x("height")} high to its full point.`,
    template: `By the printed template: ${x("height")} high, ${x("base")} at the base${point}.`,
  };
  return { how: how[way.kind], slip: saySlip(way, step) };
}

function saySlip({ cost }: OtherWay, step: Step): string {
  const slip = printFine(cost.slip, step);
  const parts = [
    Math.abs(cost.across) > 1e-9
      ? `moves the width across flats by ${aboutLength(cost.across, step.unit)}`
      : "",
    Math.abs(cost.misfit) > 1e-9
      ? `leaves ${aboutLength(cost.outerEdge, step.unit)} too ${cost.outerEdge > 0 ? "much" : "little"} at the outer edge`
      : "",
  ].filter(Boolean);
  return `A slip of ${slip} on every wedge ${parts.join(" and ") || "changes nothing"}.`;
}

/** A slip in 1/32 in (0.1 mm), finer than the maker's own step. */
const printFine = (x: Length, step: Step): string =>
  printWithUnit(x, stepOf(step.unit === "in" ? "1/32" : "0.1", step.unit));

/** How to read the ruler: where to measure, what it should be, and what a misread line costs. */
export function sayReading(r: RulerReading, step: Step): string[] {
  const where = {
    "flat-tip":
      "Measure the flat tip from edge to edge where the ruler ends, not at its first line",
    "width-at-line": "Check the ruler's width at the line",
    line: "Lay the line on the edge of the strip, not beside it",
  } as const;
  return r.readings.map((reading) => {
    const at =
      reading.what === "width-at-line" && reading.atLine !== undefined
        ? ` ${printWithUnit(reading.atLine, step)}`
        : "";
    return `${where[reading.what]}${at}: it should be ${printAtMark(reading.shouldBe, step)}; a misread ${printFine(reading.misread, step)} moves the block by ${aboutLength(reading.across, step.unit)}.`;
  });
}
