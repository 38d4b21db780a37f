import type { Question } from "../answer/index.ts";
import { type Finding, say as sayFinding } from "../findings/index.ts";
import { lengthToInch } from "../measure/index.ts";
import { blockName } from "./block-words.ts";
import { pieceOf, recipeOf, type SheetJob, say, sayUnit } from "./job.ts";
import { mirroredCount } from "./mirrored.ts";
import { stepsOf } from "./steps.ts";

/** Where an open point is mended: in the sentence, among the fabrics, or under a question. */
export type MendAt = "sentence" | "fabrics" | Question["id"];

/** One thing that is open, and where the maker mends it. */
export interface OpenPoint {
  readonly why: string;
  readonly at: MendAt;
}

/** One point of the list a pattern must pass before it loses the word draft. */
export interface Check {
  readonly number: number;
  readonly point: string;
  /** Empty when the point is met. */
  readonly open: readonly OpenPoint[];
}

/** Sentences for what is not met; each open point may say for itself where it is mended. */
type Test = (job: SheetJob) => readonly (string | OpenPoint | false)[];

const POINTS: readonly (readonly [point: string, at: MendAt, test: Test])[] = [
  [
    "usable width is stated",
    "fabrics",
    (job) => job.brief.fabrics.map((f) => !f.usable && `${f.name} has no usable width.`),
  ],
  ["the seam is stated", "sentence", (job) => [!(job.seam > 0) && "No seam is stated."]],
  [
    "the point of the wedge is stated",
    "sentence",
    (job) => [
      job.brief.blocks.some((b) => b.kind === "wedges") &&
        job.brief.ruler.point === undefined &&
        "The ruler's point is not stated.",
    ],
  ],
  ["finished and unfinished sizes of every unit", "measure", unitSizes],
  ["counts make whole rounds, lefts and rights agree", "order", counts],
  ["every fabric named is used, and every fabric used is named", "fabrics", fabricsUsed],
  ["yardage holds the drawn layout and its margins, at both widths", "enough", yardage],
  ["every piece covers, its spare printed", "cover", covers],
  ["no seam lies inside an allowance", "look", withCode("seam-in-allowance")],
  ["seams oppose where they cross", "order", withCode("crossing-does-not-nest")],
  ["cutting goes from large to small", "enough", cutOrder],
  ["test square and rulers on every template page", "hand-out", () => []],
  ["every size offered is worked out by itself", "size", sizesOffered],
  [
    "version and date are printed",
    "hand-out",
    (job) => [!job.version && "No version.", !job.date && "No date."],
  ],
  ["no step names a piece not cut, and none is cut and never used", "order", piecesUsed],
  ["no finding is left open", "sentence", openFindings],
];

/**
 * The release checklist. Points 1 to 15 are worked from the same answer as the sheets; the last one is
 * that no finding of any stage is open, which the maker may settle by accepting a thin cover by name.
 * How many sides a pattern takes is said on its feet and never makes it a draft.
 */
export function releaseChecks(job: SheetJob): Check[] {
  return POINTS.map(([point, at, test], i) => {
    const open = test(job).flatMap((t): OpenPoint[] =>
      t === false ? [] : typeof t === "string" ? [{ why: t, at }] : [t],
    );
    return {
      number: i + 1,
      point,
      open: open.filter((o, k) => open.findIndex((p) => p.why === o.why) === k),
    };
  });
}

/** Why the pattern must keep the word draft; empty when it may lose it. */
export const draftReasons = (job: SheetJob): string[] => [
  ...new Set(releaseChecks(job).flatMap((c) => c.open.map((o) => o.why))),
];

const used = (job: SheetJob) => job.answer.blocks.filter((b) => b.count > 0);

function unitSizes(job: SheetJob): (string | false)[] {
  return used(job).flatMap((block) => {
    const units = job.answer.units.filter((u) => u.blockId === block.id);
    const steps = stepsOf(job, block);
    return [
      block.patches.length > 1 &&
        units.length === 0 &&
        `The ${block.name} block has no sewing order.`,
      ...units.map(
        (u) =>
          u.measures.length === 0 && `A unit of the ${block.name} block has no width to measure.`,
      ),
      ...steps.map(
        (s) => s.stop.number === "" && `Step ${s.number} of the ${block.name} block has no stop.`,
      ),
    ];
  });
}

function counts(job: SheetJob): (string | false)[] {
  const rounds = used(job).map((b) => {
    const n = b.radial?.n;
    const seen = new Set(b.patches.flatMap((p) => (p.sector === undefined ? [] : [p.sector])));
    return (
      n !== undefined && seen.size !== n && `The ${b.name} block has ${seen.size} of ${n} sectors.`
    );
  });
  const total = new Map<string, number>();
  for (const b of used(job))
    for (const id of Object.values(b.pieceOf)) total.set(id, (total.get(id) ?? 0) + b.count);
  const pieces = job.answer.pieces.map((p) => {
    const inBlocks = total.get(p.id) ?? 0;
    return (
      inBlocks > p.count && `${p.letter}: the blocks take ${inBlocks}, the list says ${p.count}.`
    );
  });
  const hands = job.answer.pieces.map((p) => {
    const other = p.mirrorId === undefined ? undefined : pieceOf(job, p.mirrorId);
    const both = job.answer.demands.some(
      (d) => other !== undefined && d.pieceIds.includes(p.id) && d.pieceIds.includes(other.id),
    );
    return (
      other !== undefined &&
      both &&
      other.count !== p.count &&
      `${p.letter} and ${other.letter} are cut together, but ${p.count} and ${other.count} are wanted.`
    );
  });
  const mirrored = used(job).map((b) => {
    const n = mirroredCount(job, b);
    return (
      n > 0 &&
      `${n} of ${b.count} ${blockName(b, b.count)} lie mirrored and must be sewn as the mirror image, lefts for rights; the list and the steps are for blocks that are not.`
    );
  });
  return [...rounds, ...pieces, ...hands, ...mirrored];
}

function fabricsUsed(job: SheetJob): (string | false)[] {
  const { brief, answer } = job;
  const cut = new Set(answer.pieces.map((p) => p.fabricId));
  const sewn = new Set(
    brief.fabrics.flatMap((f) => (f.kind === "strip-set" ? f.strips.map((s) => s.fabric) : [])),
  );
  const { binding, backing } = brief.finishing ?? {};
  const named = (id: string): boolean =>
    cut.has(id) || sewn.has(id) || binding?.fabric === id || backing?.fabric === id;
  const known = new Set(brief.fabrics.map((f) => f.id));
  return [
    ...brief.fabrics.map((f) => !named(f.id) && `${f.name} is listed and never used.`),
    ...[...cut].map((id) => !known.has(id) && `Fabric ${id} is used and not listed.`),
  ];
}

/** The narrower width is the maker's to state; where it is stated, both must hold. */
function yardage(job: SheetJob): (string | false)[] {
  const sewn = new Set(job.brief.fabrics.filter((f) => f.kind === "strip-set").map((f) => f.id));
  return job.answer.layouts.flatMap((l) => {
    const at = job.answer.yardages.filter((y) => y.fabricId === l.fabricId);
    const name = job.swatches[l.fabricId]?.name ?? l.fabricId;
    return [
      at.length === 0 && !sewn.has(l.fabricId) && `${name}: no yardage is worked out.`,
      ...at.map(
        (y) =>
          y.buy < y.total - 1e-6 &&
          `${name} at ${sayUnit(job, y.width)}: ${y.buyText} is less than the ${sayUnit(job, y.total)} needed.`,
      ),
      ...at.map(
        (y) =>
          y.width === l.width &&
          y.inPieces < l.length - 1e-6 &&
          `${name}: the layout takes more than the yardage counts.`,
      ),
    ];
  });
}

function covers(job: SheetJob): (string | false)[] {
  const accepted = new Set((job.brief.accepted ?? []).map((a) => a.place));
  return job.answer.pieces.map((p) => {
    const recipe = recipeOf(job, p.id);
    if (!recipe) return `${p.letter} has no way of cutting.`;
    if (recipe.verdict === "proved" || accepted.has(p.id)) return false;
    return `${p.letter}: ${say(job, recipe.w)} of allowance where ${sayUnit(job, job.seam)} is wanted.`;
  });
}

function withCode(code: string): Test {
  return (job) =>
    job.answer.findings.map(
      (f) => f.code === code && f.severity !== "advice" && sayFinding(f, { step: job.step }),
    );
}

/** Strips for long pieces come first; of the others never a wider strip after a narrower one. */
function cutOrder(job: SheetJob): (string | false)[] {
  return job.answer.layouts.flatMap((l) => {
    // What lies along the fabric or is registered to a repeat comes first, then what is joined.
    const first = job.answer.demands.filter((d) => d.register || d.shape.kind === "along");
    const ids = new Set(first.map((d) => d.id));
    const strips = l.strips.filter((s) => !s.runs.some((r) => r.segment || ids.has(r.demandId)));
    return strips.map((s, i) => {
      const before = strips[i - 1]?.height ?? s.height;
      return (
        lengthToInch(s.height - before, job.brief.unit) > 1e-6 &&
        `${job.swatches[l.fabricId]?.name}: a ${say(job, s.height)} strip is cut after a ${say(job, before)} one.`
      );
    });
  });
}

/** Every size offered is planned by itself, in blocks and yardage. */
function sizesOffered(job: SheetJob): (string | false)[] {
  return (job.brief.sizes ?? []).map((s) => {
    const planned = job.answer.sizes?.find((a) => a.name === s.name);
    const done = planned?.width !== undefined && planned.yardages.length > 0;
    return !done && `The size ${s.name} is offered and not worked out.`;
  });
}

function piecesUsed(job: SheetJob): (string | false)[] {
  const demanded = new Set(job.answer.demands.flatMap((d) => d.pieceIds));
  const sewn = new Set(used(job).flatMap((b) => Object.values(b.pieceOf)));
  const between = new Set(
    job.answer.pieces.filter((p) => p.patchIds.some((id) => !id.includes("/"))).map((p) => p.id),
  );
  return [
    ...[...sewn].map(
      (id) => !demanded.has(id) && `${pieceOf(job, id)?.letter ?? id} is sewn and never cut.`,
    ),
    ...job.answer.pieces.map(
      (p) =>
        demanded.has(p.id) &&
        !sewn.has(p.id) &&
        !between.has(p.id) &&
        p.count === 0 &&
        `${p.letter} is cut and never used.`,
    ),
    ...job.answer.layouts.flatMap((l) =>
      l.unplaced.map((u) => `${u.count} of ${u.demandId} have no place on ${l.fabricId}.`),
    ),
  ];
}

function openFindings(job: SheetJob): OpenPoint[] {
  const accepted = new Set((job.brief.accepted ?? []).map((a) => `${a.code} ${a.place}`));
  return job.answer.findings
    .filter((f) => f.severity !== "advice" && !accepted.has(`${f.code} ${f.place}`))
    .map((f) => ({ why: sayFinding(f, { step: job.step }), at: mendedAt(job, f) }));
}

/** A piece's finding under its proof, a unit's in the order, a fabric's beside it; else the sentence. */
function mendedAt(job: SheetJob, { place }: Finding): MendAt {
  if (pieceOf(job, place)) return "cover";
  if (job.answer.units.some((u) => u.id === place || u.seamIds.includes(place))) return "order";
  if (job.brief.fabrics.some((f) => f.id === place)) return "fabrics";
  return "sentence";
}
