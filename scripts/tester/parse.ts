import { after, before } from "./numbers.ts";
import { cutsIn, sizesIn, suppliesIn } from "./parse-lists.ts";
import { afterIn, proofsIn, stepsIn } from "./parse-steps.ts";
import { type Line, linesOf, type Print } from "./read.ts";
import type { Reading } from "./reading.ts";
import { type Heading, headingY, joined, section, sectionPrint } from "./sections.ts";

export function reading(print: readonly Print[]): Reading {
  const feet = linesOf(print).filter((l) => /Version .*Sewn with/.test(l.text));
  const footY = (page: number): number =>
    feet.find((f) => f.page === page)?.y ?? Number.POSITIVE_INFINITY;
  const body = print.filter((p) => p.y < footY(p.page) - 3);
  const lines = linesOf(body);
  const part = (h: Heading): Line[] => section(lines, h);
  const sentence = joined(
    lines.filter(
      (l) =>
        l.page === 1 && l.size >= 10.9 && l.size <= 12.1 && l.y < headingY(lines, "How big is it?"),
    ),
  );
  const supplies = suppliesIn(lines);
  return {
    unit: feet.some((f) => / (?:mm|cm) seam/.test(f.text)) ? "mm" : "in",
    sentence,
    seam: seamIn(sentence),
    ...sizesIn(part("How big is it?")),
    ...supplies,
    ...cutsIn(part("What do I cut?")),
    proofs: proofsIn(sectionPrint(body, lines, "Does it cover?")),
    ...stepsIn(body, lines),
    ...afterIn(body, lines),
    feet: feet.map((f) => f.text),
  };
}

function seamIn(sentence: string): number | undefined {
  return after(sentence, "sewn with an?") ?? before(sentence, "(in|mm) seam");
}
