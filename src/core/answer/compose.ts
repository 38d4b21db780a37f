import { type Brief, contentHash } from "../brief/index.ts";
import type { Finding } from "../findings/index.ts";
import type { Demand, FabricPlanOptions } from "../layout/index.ts";
import { type Length, tolerances } from "../measure/index.ts";
import { cuttingOf } from "./cutting.ts";
import { finishingDemands } from "./finishing.ts";
import { layoutsOf } from "./layouts.ts";
import { sightsOf } from "./look.ts";
import { questionsOf } from "./questions.ts";
import { roundDemands } from "./round-demands.ts";
import { sentenceOf } from "./sentence.ts";
import { sizesOf } from "./sizes.ts";
import {
  blocksOf,
  finishedBlock,
  finishingIn,
  measuresOf,
  namesOf,
  piecesIn,
  quiltOf,
  recipesIn,
  sewingIn,
} from "./stages.ts";
import type { Answer } from "./types.ts";
import { unprovedWords } from "./unproved.ts";
import { wedgeGuides } from "./wedgeGuide.ts";

/**
 * Everything that follows from a brief. Pure: equal briefs give equal answers. Stages run as far as
 * the findings let them; what is missing is missing because a finding that `blocks` says why.
 *
 * `planning` says how hard to look for the least fabric. Unless told, the first plan; with a loaded
 * solver, the best one, which blocks its thread while it is looked for.
 */
export function answerBrief(brief: Brief, planning: FabricPlanOptions = {}): Answer {
  const names = namesOf(brief);
  if (names.length > 0) return { ...nothingYet(brief), findings: inOrder(names) };
  const m = measuresOf(brief);
  const blocks = blocksOf(brief, m);
  const quilt = quiltOf(brief, blocks);
  const cut = piecesIn(brief, m, blocks, quilt.geometry);
  const recipes = recipesIn(brief, m, cut);
  const finishing = finishingIn(brief, m, quilt.geometry);
  const rounds = roundDemands(brief, cut.blocks, recipes.demands, m.seam);
  const asked = (width?: Length) => [
    ...rounds,
    ...finishingDemands(finishingIn(brief, m, quilt.geometry, width)),
  ];
  const planned = layoutsOf(brief, m, (_, width) => asked(width), planning);
  const { layouts, yardages, plans } = planned;
  const demands = likeAsked(asked(), planned.demands);
  const cutting = cuttingOf({
    brief,
    plans,
    layouts,
    demands,
    pieces: cut.pieces,
    recipes: recipes.recipes,
  });
  const { units, findings: pressed } = sewingIn(brief, m, cut.blocks, recipes);
  const block = finishedBlock(brief, blocks);
  const sizes =
    brief.sizes?.length && quilt.geometry && block
      ? sizesOf(brief, m, block, answerBrief)
      : undefined;
  const look = sightsOf(brief, { blocks: cut.blocks, pieces: cut.pieces, demands, layouts });
  const agreed = new Set((brief.accepted ?? []).map((a) => `${a.code} ${a.place}`));
  const findings = inOrder([
    ...blocks.findings,
    ...quilt.findings,
    ...cut.findings,
    ...recipes.findings,
    ...planned.findings,
    ...look.findings,
    ...pressed,
    ...(sizes?.findings ?? []),
  ]).filter((f) => f.severity !== "draft" || !agreed.has(`${f.code} ${f.place}`));
  const accepted = new Set((brief.accepted ?? []).map((a) => a.place));
  const facts = {
    brief,
    step: m.step,
    seam: m.seam,
    quilt: quilt.geometry,
    blocks: cut.blocks,
    pieces: cut.pieces,
    recipes: recipes.recipes,
    accepted,
    layouts,
    cutting,
    yardages,
    units,
    look,
    sizes: sizes?.sizes ?? [],
    blocked: findings.some((f) => f.severity === "blocks"),
  };
  return {
    ...nothingYet(brief),
    sentence: sentenceOf(brief, { unproved: unprovedWords(brief, cut.pieces, findings) }),
    questions: questionsOf(facts),
    quilt: quilt.geometry,
    blocks: cut.blocks,
    pieces: cut.pieces,
    recipes: recipes.recipes,
    demands,
    finishing,
    wedges: wedgeGuides(brief, m.seam, new Set(cut.blocks.map((b) => b.id))),
    layouts,
    cutting,
    yardages,
    units,
    sights: look.sights,
    ...(sizes && { sizes: sizes.sizes }),
    findings,
  };
}

/** What was planned in the order it was asked for, then the strips that strip sets need. */
function likeAsked(asked: readonly Demand[], planned: readonly Demand[]): Demand[] {
  const place = new Map(asked.map((d, i) => [d.id, i]));
  const at = (d: Demand): number => place.get(d.id) ?? asked.length;
  return [...planned].sort((a, b) => at(a) - at(b));
}

function nothingYet(brief: Brief): Answer {
  return {
    format: "eighthwise-answer",
    version: 1,
    briefHash: contentHash(brief),
    unit: brief.unit,
    tolerances: tolerances(brief.unit),
    sentence: sentenceOf(brief, { unproved: [] }),
    questions: [],
    blocks: [],
    pieces: [],
    recipes: [],
    wedges: [],
    demands: [],
    layouts: [],
    cutting: [],
    yardages: [],
    units: [],
    sights: [],
    findings: [],
  };
}

const RANK = { blocks: 0, draft: 1, advice: 2 } as const;

/** Worst first, then by code and place; the same finding twice is one. */
function inOrder(findings: readonly Finding[]): Finding[] {
  const seen = new Map(
    findings.map((f) => [JSON.stringify([f.code, f.place, f.needed, f.found, f.words]), f]),
  );
  return [...seen.values()].sort(
    (a, b) =>
      RANK[a.severity] - RANK[b.severity] ||
      (a.code < b.code ? -1 : a.code > b.code ? 1 : 0) ||
      (a.place < b.place ? -1 : 1),
  );
}
