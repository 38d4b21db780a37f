import type { AnswerBlock } from "../answer/index.ts";
import type { Measure, SewnUnit } from "../sewing/types.ts";
import { blockSort } from "./block-words.ts";
import {
  capital,
  counted,
  pieceOf,
  plural,
  recipeOf,
  type SheetJob,
  sayBoth,
  sayMeasured,
  sayUnit,
} from "./job.ts";
import { setWords } from "./supplies.ts";

/** A step as it is set: number, name, words and stop; its diagram is drawn apart. */
export interface StepWords {
  readonly number: number;
  readonly name: string;
  readonly words: string;
  readonly stop: { readonly number: string; readonly how: string };
}

/** Sewing strips side by side before anything is cut from them. */
export interface SetStep extends StepWords {
  readonly fabricId: string;
}

/** One step for each strip set that is sewn. */
export function setSteps(job: SheetJob, first = 1): SetStep[] {
  const sets = job.brief.fabrics.filter(
    (f) => f.kind === "strip-set" && job.answer.layouts.some((l) => l.fabricId === f.id),
  );
  return sets.map((f, i): SetStep => {
    const look = job.swatches[f.id]?.look;
    const bands = look?.kind === "bands" ? look.bands : [];
    const high = bands[bands.length - 1]?.to ?? 0;
    return {
      number: first + i,
      fabricId: f.id,
      name: "Strip sets",
      words: `**${job.swatches[f.id]?.letter} ${f.name}.** ${capital(setWords(job, f.id))}; from the edge that the wedge's outer edge lies on. Sew every second seam from the other end; press all one way. Then cut as listed under ${job.swatches[f.id]?.letter}.`,
      stop: { number: sayUnit(job, high), how: "raw edge to raw edge, along the whole set" },
    };
  });
}

/** One step of sewing a block: one seam, or the same patch put on again and again. */
export interface SewStep extends StepWords {
  readonly block: AnswerBlock;
  /** The unit after the step. */
  readonly unit: SewnUnit;
  /** All seams sewn in it. */
  readonly seamIds: readonly string[];
  readonly stop: { readonly number: string; readonly how: string; readonly measure?: Measure };
  /** Drawn as a ruler laid from the center, with this number. */
  readonly squareUp?: string;
}

/** The steps of one kind of block, numbered from `first`, ending with squaring it up. */
export function stepsOf(job: SheetJob, block: AnswerBlock, first = 1): SewStep[] {
  const units = job.answer.units
    .filter((u) => u.blockId === block.id)
    .sort((a, b) => a.stage - b.stage || a.seamIds[0].localeCompare(b.seamIds[0], "en"));
  const groups = grouped(job, block, units);
  const numberOf = new Map<string, number>();
  groups.forEach((g, i) => {
    for (const u of g) for (const id of u.seamIds) numberOf.set(id, first + i);
  });
  const steps = groups.map((g, i) =>
    stepOf(job, block, g, first + i, numberOf, i === groups.length - 1),
  );
  const last = units[units.length - 1];
  if (!last?.squareUp) return steps;
  const trim = squaredUp(job, block, last, first + groups.length);
  return steps.length % 4 === 0 ? merged(steps, trim) : [...steps, trim];
}

/** Where a row of four would run over by the trimming alone, it joins the step before it. */
function merged(steps: readonly SewStep[], trim: SewStep): SewStep[] {
  const last = steps[steps.length - 1];
  if (!last) return [trim];
  const both: SewStep = {
    ...last,
    name: `${last.name}, square up`,
    words: `${last.words} ${trim.words}`,
    stop: trim.stop,
    ...(trim.squareUp ? { squareUp: trim.squareUp } : {}),
  };
  return [...steps.slice(0, -1), both];
}

const patchLetter = (job: SheetJob, block: AnswerBlock, id: string): string | undefined =>
  pieceOf(job, block.pieceOf[id] ?? "")?.letter;

/** Units that only put one more of the same piece on the unit before are one step. */
function grouped(job: SheetJob, block: AnswerBlock, units: readonly SewnUnit[]): SewnUnit[][] {
  const out: SewnUnit[][] = [];
  const added = (u: SewnUnit): string | undefined =>
    u.of.map((id) => patchLetter(job, block, id)).find((l) => l !== undefined);
  for (const u of units) {
    const before = out[out.length - 1];
    const last = before?.[before.length - 1];
    const goesOn =
      last !== undefined &&
      u.of.some((id) => last.seamIds.includes(id)) &&
      last.stage > 1 &&
      last.copies === u.copies &&
      added(u) !== undefined &&
      added(u) === added(last);
    if (goesOn) before.push(u);
    else out.push([u]);
  }
  return out;
}

function stepOf(
  job: SheetJob,
  block: AnswerBlock,
  group: readonly SewnUnit[],
  number: number,
  numberOf: ReadonlyMap<string, number>,
  last: boolean,
): SewStep {
  const unit = group[group.length - 1];
  const name = nameOf(job, block, group, number === numberOf.get(unit.id) && unit.copies === 1);
  const measure = chosen(unit);
  return {
    number,
    block,
    unit,
    seamIds: group.flatMap((u) => u.seamIds),
    name,
    words: wordsOf(job, block, group, name, numberOf, last),
    stop: measure
      ? { number: saidAt(job, block, measure), how: howMeasured(measure), measure }
      : { number: "", how: "" },
  };
}

/** Pairs, quarters, halves, the long seam; or what is put on. */
function nameOf(
  job: SheetJob,
  block: AnswerBlock,
  group: readonly SewnUnit[],
  alone: boolean,
): string {
  const unit = group[group.length - 1];
  const letters = unit.of.map((id) => patchLetter(job, block, id));
  const patches = letters.filter((l) => l !== undefined).length;
  if (patches === 2) return "Pairs";
  if (patches === 1) {
    const id = unit.of.find((part) => patchLetter(job, block, part) !== undefined) ?? "";
    const piece = pieceOf(job, block.pieceOf[id]);
    const name = (piece?.name ?? "piece").replace(/^(left|right) /, "");
    const short = name.replace(/^corner triangle$/, "corner");
    return group.length > 1 || unit.copies > 1 ? capital(plural(short)) : capital(short);
  }
  const share = shareOf(job, unit);
  if (share > 1) return SHARES[share] ?? "Units";
  return alone && unit.of[0] === unit.of[1] ? "The long seam" : "Units";
}

/** 2 for a unit that two of make the round, 4 for one that two of make such a half ...; else 1. */
function shareOf(job: SheetJob, unit: SewnUnit): number {
  const parent = job.answer.units.find(
    (u) => u.blockId === unit.blockId && u.of.every((id) => unit.seamIds.includes(id)),
  );
  if (!parent) return 1;
  const above = shareOf(job, parent);
  return parent.copies === 1 ? 2 : above > 1 ? 2 * above : 1;
}

const SHARES: Readonly<Record<number, string>> = { 2: "Halves", 4: "Quarters", 8: "Eighths" };

function wordsOf(
  job: SheetJob,
  block: AnswerBlock,
  group: readonly SewnUnit[],
  name: string,
  numberOf: ReadonlyMap<string, number>,
  last: boolean,
): string {
  const unit = group[group.length - 1];
  const letters = unit.of.map((id) => patchLetter(job, block, id));
  const what = last
    ? blockSort(block)
    : name === "The long seam"
      ? roundName(unit)
      : unitName(name);
  const many = `**${counted(unit.inAll, what)}.**`;
  return [
    many,
    joinWords(unit, letters, group.length, numberOf, name),
    layWords(unit, letters),
    pressWords(unit, letters, numberOf),
    straightWords(unit),
  ]
    .filter((w) => w !== "")
    .join(" ");
}

/** What the wedges make before anything is set round them. */
const roundName = (unit: SewnUnit): string =>
  (({ 4: "square", 6: "hexagon", 8: "octagon" }) as Readonly<Record<number, string>>)[
    unit.outline.length
  ] ?? "round";

const unitName = (name: string): string =>
  ({ Pairs: "pair", Eighths: "eighth", Quarters: "quarter", Halves: "half" })[name] ?? "unit";

function joinWords(
  unit: SewnUnit,
  letters: readonly (string | undefined)[],
  times: number,
  numberOf: ReadonlyMap<string, number>,
  name: string,
): string {
  const part = (i: 0 | 1): string => letters[i] ?? `one of step ${numberOf.get(unit.of[i])}`;
  if (times > 1) {
    const letter = letters[0] ?? letters[1];
    const out = /^Corner/.test(name) ? ", standing out alike at both ends" : "";
    return `${times} ${letter ?? "pieces"}, one by one${out}.`;
  }
  if (letters[0] !== undefined && letters[0] === letters[1]) return `Two ${letters[0]}.`;
  const [a, b] = [numberOf.get(unit.of[0]), numberOf.get(unit.of[1])];
  if (letters[0] === undefined && letters[1] === undefined && a === b)
    return unit.copies === 1
      ? `Two of step ${a}. Pin where seams meet, then the ends.`
      : `Two of step ${a}.`;
  return `${capital(part(0))} and ${part(1)}.`;
}

/** Which lies left, when it matters and the letters can tell. */
function layWords(unit: SewnUnit, letters: readonly (string | undefined)[]): string {
  const left = letters[unit.lay.left];
  const right = letters[1 - unit.lay.left];
  if (!unit.lay.alike || left === undefined || right === undefined || left === right) return "";
  return `All alike: right sides up, points toward you, ${left} lies left of ${right}.`;
}

/** Which way the allowances go, so that it can be told without the arrow of the diagram. */
function pressWords(
  unit: SewnUnit,
  letters: readonly (string | undefined)[],
  numberOf: ReadonlyMap<string, number>,
): string {
  switch (unit.press) {
    case "open":
      return "Press open.";
    case "anticlockwise":
    case "clockwise":
      return "Fan the center open, so that all seams turn the same way round.";
    default: {
      const to = unit.press === "first" ? 0 : 1;
      const [letter, other] = [letters[to], letters[1 - to]];
      if (letter !== undefined && letter !== other) return `Press to ${letter}.`;
      if (letter === undefined && other !== undefined) return `Press away from ${other}.`;
      const step = letter === undefined ? numberOf.get(unit.of[to]) : undefined;
      if (step !== undefined && step !== numberOf.get(unit.of[1 - to]))
        return `Press to the unit of step ${step}.`;
      // Two alike round the center: turned by half a round they lie as they lay before.
      if (unit.copies === 1 && letter === undefined) return "Press to either side.";
      return `Center toward you, press to the ${to === unit.lay.left ? "left" : "right"}.`;
    }
  }
}

const straightWords = (unit: SewnUnit): string =>
  unit.straightEdge ? "The long edge must lie straight." : "";

/** The width to check: right across, else along the longest edge, else to a far corner. */
function chosen(unit: SewnUnit): Measure | undefined {
  const rank = { across: 0, along: 1, corner: 2 } as const;
  return [...unit.measures].sort(
    (a, b) => rank[a.kind] - rank[b.kind] || b.ways - a.ways || b.unfinished - a.unfinished,
  )[0];
}

/** A whole block is said as everywhere else on the sheet; its parts as a ruler can show them. */
function saidAt(job: SheetJob, block: AnswerBlock, m: Measure): string {
  const whole = [block.width, block.height].some(
    (x) => Math.abs(x + 2 * job.seam - m.unfinished) < 1e-6 * block.width,
  );
  return whole ? sayUnit(job, m.unfinished) : sayMeasured(job, m.unfinished);
}

function howMeasured(m: Measure): string {
  const ways =
    m.ways > 1 && m.kind === "across" ? `, ${m.ways === 2 ? "both" : `all ${m.ways}`} ways` : "";
  if (m.kind === "across") return `raw edge to raw edge${ways}`;
  if (m.kind === "along") return "along the edge marked";
  return "raw edge to far corner, as marked";
}

/** Most to spare at any outer edge of a patch: what the trimming takes off. */
function outerSpare(job: SheetJob, block: AnswerBlock): number {
  const spares = [...new Set(Object.values(block.pieceOf))].flatMap((id) => {
    const piece = pieceOf(job, id);
    const sides = recipeOf(job, id)?.spareBySide ?? [];
    return sides.filter((s) => piece?.edges[s.index]?.outside).map((s) => s.spare);
  });
  return Math.max(0, ...spares);
}

function squaredUp(job: SheetJob, block: AnswerBlock, unit: SewnUnit, number: number): SewStep {
  const sides = unit.squareUp?.toEachSide ?? [];
  const each = sayUnit(job, sides[0] ?? 0);
  const line = unit.squareUp?.line
    ? ` the ruler's ${unit.squareUp.line.degrees} line on a seam,`
    : "";
  const spare = Math.max(outerSpare(job, block), ...unit.spareBySide.map((s) => s.spare));
  const said = sayMeasured(job, spare);
  const comes =
    parseFloat(said) === 0 ? "Only threads should come off." : `About ${said} comes off.`;
  const width = block.width + 2 * job.seam;
  const height = block.height + 2 * job.seam;
  const square = Math.abs(width - height) < 1e-9;
  return {
    number,
    block,
    unit,
    seamIds: [],
    name: "Square up",
    words: `**Trim ${unit.inAll}** from the center: the ruler's ${each} marks on it,${line} trim two sides, turn, trim two. ${comes}`,
    stop: {
      number: square ? sayUnit(job, width) : sayBoth(job, width, height),
      how: square ? "square" : "wide and high",
    },
    squareUp: each,
  };
}
