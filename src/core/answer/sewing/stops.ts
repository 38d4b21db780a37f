import { type Brief, recorded, seamOf } from "../../brief/index.ts";
import {
  knownLength,
  type Length,
  printAtMark,
  printWithUnit,
  type Step,
} from "../../measure/index.ts";
import { spareFrom } from "../../sewing/spare.ts";
import {
  judgeHalf,
  judgeStop,
  type Replanned,
  replan,
  type StopContext,
  type StopReading,
} from "../../sewing/stops.ts";
import type { Measure, SewnUnit } from "../../sewing/types.ts";
import { sayHalf, sayVerdict } from "../../sewing/words.ts";
import type { Answer, AnswerBlock } from "../types/answer.ts";
import { inWords, lengthTextProblem, stepOfBrief } from "../words/word.ts";
import { HOW_MEASURED, type StepRow, sewingSteps, worthMeasuring } from "./steps.ts";
import { nearest, outcomeWords, readingOf, spareWords } from "./stop-words.ts";

/** Name of the reading of a half against a straight edge, beside the names of its widths. */
export const GAP = "gap";

export interface StopRow {
  readonly id: string;
  readonly unitId: string;
  /** Name of the width, or `GAP`. */
  readonly width: string;
  /** How it is said when something is typed for it: "U2", "U9 length" where a unit has several, "U2 gap". */
  readonly stop: string;
  /** Where on the unit it is measured; absent for the gap. */
  readonly measure?: Measure;
  readonly name: string;
  readonly should: string;
  readonly finished: string;
  /** What it measures while the spare is still on; empty when there is none. */
  readonly before: string;
  /** What is to be expected after what was measured so far; empty while it is as planned. */
  readonly now: string;
  /** As typed, kept with the design. */
  readonly typed: string;
  readonly verdict?: {
    readonly kind: "sew-on" | "take-in" | "let-out" | "recut";
    readonly text: string;
  };
  /** Why what was typed cannot be judged. */
  readonly problem?: string;
}

export interface StopTable {
  readonly block: AnswerBlock;
  readonly rows: readonly StopRow[];
  /** Spare at each side of the block; a sentence. */
  readonly spare: string;
  /** What was measured means for the rest; empty while nothing was. */
  readonly outcome: string;
}

/** At each stop, in the order of sewing, the widths worth measuring, and what those taken mean. */
export function stopTables(b: Brief, a: Answer): StopTable[] {
  const step = stepOfBrief(b);
  return sewingSteps(b, a).map(({ block, steps }) => {
    const context = contextOf(b, a, block);
    const readings = steps.flatMap(({ unit }) => readingsOf(b, unit, step));
    const later = readings.length > 0 ? replan(context, readings) : undefined;
    const rows = steps.flatMap((s) => rowsOf(b, step, context, s, later));
    return {
      block,
      rows,
      spare: spareWords(steps.at(-1)?.unit, b.unit),
      outcome: later ? outcomeWords(later, readings.length, b, step) : "",
    };
  });
}

function contextOf(b: Brief, a: Answer, block: AnswerBlock): StopContext {
  return {
    block,
    units: a.units.filter((u) => u.blockId === block.id),
    seam: seamOf(b),
    reading: readingOf(b),
    spareOf: spareFrom(a.recipes, block.pieceOf, 1e-7 * Math.max(1, block.width)),
  };
}

/**
 * As typed for this width, if it was measured against what it should measure now. `exact` is the same
 * size as a decimal: how it was kept before sizes were said by the marks of a ruler.
 */
function typedFor(b: Brief, unitId: string, width: string, should: string, exact = should) {
  const entry = recorded(b, "measured").find((e) => e.unit === unitId && e.width === width);
  if (!entry) return { typed: "" };
  const gap = width === GAP;
  const text = gap ? entry.size.replace(/^[-\u2212]\s*/, "") : entry.size;
  const problem = lengthTextProblem(text, b.unit, gap)?.problem;
  const stale =
    entry.should === should || entry.should === exact
      ? undefined
      : `Measured when it should have been ${entry.should}; measure again.`;
  if (problem || stale) return { typed: entry.size, problem: problem ?? stale };
  const size = knownLength(text, b.unit);
  return { typed: entry.size, size: text === entry.size ? size : -size };
}

function readingsOf(b: Brief, unit: SewnUnit, step: Step): StopReading[] {
  return worthMeasuring(unit).flatMap((m): StopReading[] => {
    const { size } = typedWidth(b, unit, m, step);
    return size === undefined || isAbsurd(size, m)
      ? []
      : [{ unitId: unit.id, name: m.name, measured: size }];
  });
}

function typedWidth(b: Brief, unit: SewnUnit, m: Measure, step: Step) {
  const should = printAtMark(m.unfinished, step);
  return typedFor(b, unit.id, m.name, should, printWithUnit(m.unfinished, step));
}

/** A quarter off: another unit of length, or another piece. */
const isAbsurd = (size: Length, m: Measure): boolean =>
  size < 0.75 * m.unfinished || size > 1.25 * Math.max(m.unfinished, m.untrimmed);

function rowsOf(
  b: Brief,
  step: Step,
  context: StopContext,
  { unit, name }: StepRow,
  later: Replanned | undefined,
): StopRow[] {
  const widths = worthMeasuring(unit);
  const rows = widths.map((m): StopRow => {
    const should = printAtMark(m.unfinished, step);
    const { typed, size, problem } = typedWidth(b, unit, m, step);
    const absurd = size !== undefined && isAbsurd(size, m);
    const judged =
      size === undefined || absurd
        ? undefined
        : judgeStop(context, { unitId: unit.id, name: m.name, measured: size });
    const expected = later?.stops.find((s) => s.unitId === unit.id && s.name === m.name);
    const shifted =
      expected && Math.abs(expected.expected - expected.planned) > context.reading / 2;
    const ways = m.ways > 1 ? `, ${inWords(m.ways)} ways` : "";
    return {
      id: `${unit.id}/${m.name}`,
      unitId: unit.id,
      width: m.name,
      stop: widths.length > 1 ? `${unit.letter} ${m.name}` : unit.letter,
      measure: m,
      name: `${name}, ${HOW_MEASURED[m.kind]}${ways}`,
      should,
      finished: printAtMark(m.finished, step),
      before: m.untrimmed > m.unfinished + 1e-6 ? printAtMark(m.untrimmed, step) : "",
      now: shifted ? printAtMark(nearest(expected.expected, b), step) : "",
      typed,
      ...(judged && { verdict: { kind: judged.verdict, text: sayVerdict(judged, b.unit) } }),
      ...(problem !== undefined && { problem }),
      ...(absurd && {
        problem: `It should be about ${should}. Is this the same unit, and the right piece?`,
      }),
    };
  });
  return unit.straightEdge ? [...rows, gapRow(b, context, unit, name)] : rows;
}

function gapRow(b: Brief, context: StopContext, unit: SewnUnit, name: string): StopRow {
  const { typed, size, problem } = typedFor(b, unit.id, GAP, NO_GAP);
  const half = size === undefined ? undefined : judgeHalf(size, context.reading);
  const n = context.block.radial?.n ?? 2;
  const arm = unit.straightEdge?.arm ?? 0;
  const absurd = size !== undefined && Math.abs(size) > arm / 2;
  return {
    id: `${unit.id}/${GAP}`,
    unitId: unit.id,
    width: GAP,
    stop: `${unit.letter} ${GAP}`,
    name: `${name}, light under a straight edge`,
    should: NO_GAP,
    finished: "",
    before: "",
    now: "",
    typed,
    ...(half &&
      !absurd && {
        verdict: {
          kind: half.straight ? "sew-on" : half.tooMuch > 0 ? "take-in" : "let-out",
          text: sayHalf(half, n, b.unit),
        },
      }),
    ...(problem !== undefined && { problem }),
    ...(absurd && { problem: "That is more than a half of wedges can gape. Measure it again." }),
  };
}

const NO_GAP = "none";
