import type { Brief } from "../../brief/index.ts";
import { inchToLength, printWithUnit, stepOf } from "../../measure/index.ts";
import type { ClassPlan, SeamResult, Stage, StepOut, StudentPlan } from "./types.ts";

type Ruler = Pick<Brief, "step" | "unit">;

/** Finer than the maker's step: errors of a seam are sixty-fourths. */
const fine = (x: number, unit: Brief["unit"]): string => {
  const step = stepOf(unit === "in" ? "1/64" : "0.1", unit);
  const size = +step.size.valueOf();
  return printWithUnit(Math.round(x / size) * size, step);
};

export const sayMinutes = (m: number): string => {
  const whole = Math.round(m);
  if (whole < 60) return `${whole} min`;
  const rest = whole % 60;
  return `${Math.floor(whole / 60)} h${rest === 0 ? "" : ` ${String(rest).padStart(2, "0")} min`}`;
};

/** What a seam test found, what to do, and what it means for the block. */
export function saySeam(s: SeamResult, brief: Ruler): string[] {
  const { unit } = brief;
  const off = Math.abs(s.wider);
  const told = `The strips measure ${fine(+s.measured, unit)}; with the seam as told they measure ${fine(+s.should, unit)}.`;
  if (s.blocks.length === 0 && off > inchToLength(1 / 32, unit))
    return [told, "That is more than a seam can be off. Measure the strips again, and count them."];
  if (off < inchToLength(1 / 128, unit))
    return [told, "The seam is right. Leave the needle where it is."];
  const way = s.wider > 0 ? "wide" : "narrow";
  const move =
    s.wider > 0
      ? `Move the needle, or the guide, so that the seam is ${fine(off, unit)} narrower`
      : `Move the needle, or the guide, so that the seam is ${fine(off, unit)} wider`;
  return [
    told,
    `Each seam is ${fine(off, unit)} too ${way} (read to within ${fine(+s.error, unit)}). ${move}, and sew the test again.`,
    ...s.blocks.map((b) => {
      const gap = +b.expected - +b.unfinished;
      const size = `would measure about ${fine(+b.expected, unit)} unfinished where ${fine(+b.unfinished, unit)} is wanted`;
      if (b.verdict === "within")
        return `Sewn like this the ${b.name} block ${size}: it can be used.`;
      const what = b.verdict === "small" ? "too small" : "too large";
      return `Sewn like this the ${b.name} block ${size}, ${fine(Math.abs(gap), unit)} ${what}.`;
    }),
  ];
}

export const saySupplies = (s: StudentPlan): string[] =>
  s.supplies.map((x) => `${x.letter} ${x.name}, ${x.buy}: ${x.uses}`);

export const sayHomework = (s: StudentPlan): string[] =>
  s.homework.map((h) => `${h.letter} ${h.name}: ${h.cuts.join("; ")}`);

/** Where to stop at home, and why there. */
export const STOP_AT_HOME =
  "Stop there. Cut no wedges, kites or triangles at home: they are cut in class, after your ruler has been checked.";

export const sayStepOut = (s: StepOut): string =>
  `${s.block}, ${s.name}: ${s.pieces.map((p) => `${p.count} ${p.letter}`).join(", ")}${s.measure ? `; measures ${s.measure}` : ""}`;

export const sayStage = (s: Stage): string =>
  s.queue
    ? `${s.name}: ${sayMinutes(s.own)} of work, ${sayMinutes(s.inClass)} in class, because the room waits at the iron`
    : `${s.name}: ${sayMinutes(s.own)}`;

/** "About 2 h 10 min for 1 block of each kind; in 3 h each student finishes 1." */
export function sayTime(p: ClassPlan): string[] {
  const waits = p.stages.filter((s) => s.queue).map((s) => s.name);
  const kinds = p.everyone.answer.blocks.filter((b) => b.count > 0).length;
  const what = (n: number): string =>
    kinds === 1
      ? `${n} ${n === 1 ? "block" : "blocks"}`
      : `${n} of each of the ${kinds} kinds of block`;
  return [
    `About ${sayMinutes(p.minutes)} for ${what(p.blocks)}; in ${sayMinutes(p.hours * 60)} a student finishes ${p.finished === 0 ? "none" : what(p.finished)}. Every minute is an estimate; put in your own rates.`,
    waits.length > 0
      ? `With ${p.size} at ${p.irons} ${p.irons === 1 ? "iron" : "irons"} the room waits at: ${waits.join(", ")}.`
      : `With ${p.size} at ${p.irons} ${p.irons === 1 ? "iron" : "irons"} nobody waits.`,
  ];
}
