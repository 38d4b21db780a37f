import { changed } from "../answer/index.ts";
import type { Brief } from "../brief/index.ts";
import { type Length, printLength, type Step, stepOf } from "../measure/index.ts";
import type { Pin } from "./types.ts";

/** A length as the brief keeps it: on the ruler as a fraction, else as its decimals. */
export const lengthText = (x: Length, step: Step): string =>
  printLength(x, step, step.unit === "in" ? 6 : 4);

/**
 * The brief with what is given put in: the maker's own ruler and widths of fabric. Sizes that a
 * design is also offered in are left out: each sentence is one size.
 */
export function givenBrief(brief: Brief, pins: readonly Pin[]): Brief {
  const step = stepOf(brief.step, brief.unit);
  return changed(brief, (d) => {
    delete d.sizes;
    for (const pin of pins) {
      if (pin.kind === "ruler") {
        if (pin.longest !== undefined) d.ruler.longest = lengthText(pin.longest, step);
        if (pin.shortest !== undefined) d.ruler.shortest = lengthText(pin.shortest, step);
      }
      if (pin.kind === "width")
        for (const f of d.fabrics)
          if (f.kind !== "strip-set" && (pin.fabricId === undefined || pin.fabricId === f.id)) {
            f.usable = lengthText(pin.usable, step);
            delete f.narrower;
          }
    }
  });
}
