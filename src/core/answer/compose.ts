import { type Brief, contentHash } from "../brief/index.ts";
import type { Finding } from "../findings/index.ts";
import { tolerances } from "../measure/index.ts";
import { finishingDemands } from "./finishing.ts";
import { sightsOf } from "./look.ts";
import { questionsOf } from "./questions.ts";
import { sentenceOf } from "./sentence.ts";
import { sizesOf } from "./sizes.ts";
import {
  blocksOf,
  finishedBlock,
  finishingIn,
  layoutsOf,
  measuresOf,
  namesOf,
  piecesIn,
  quiltOf,
  recipesIn,
  unitsIn,
} from "./stages.ts";
import type { Answer } from "./types.ts";
import { unprovedWords } from "./unproved.ts";
import { wedgeGuides } from "./wedgeGuide.ts";

/**
 * Everything that follows from a brief. Pure: equal briefs give equal answers. Stages run as far as
 * the findings let them; what is missing is missing because a finding that `blocks` says why.
 */
export function answerBrief(brief: Brief): Answer {
  const names = namesOf(brief);
  if (names.length > 0) return { ...nothingYet(brief), findings: inOrder(names) };
  const m = measuresOf(brief);
  const blocks = blocksOf(brief, m);
  const quilt = quiltOf(brief, blocks);
  const cut = piecesIn(brief, m, blocks, quilt.geometry);
  const recipes = recipesIn(brief, m, cut);
  const finishing = finishingIn(brief, m, quilt.geometry);
  const demands = [...recipes.demands, ...finishingDemands(finishing)];
  const {
    layouts,
    yardages,
    findings: planned,
  } = layoutsOf(brief, m, (_, width) => [
    ...recipes.demands,
    ...finishingDemands(finishingIn(brief, m, quilt.geometry, width)),
  ]);
  const units = unitsIn(m, cut.blocks, recipes);
  const block = finishedBlock(brief, blocks);
  const sizes =
    brief.sizes?.length && quilt.geometry && block
      ? sizesOf(brief, m, block, answerBrief)
      : undefined;
  const look = sightsOf(brief, { blocks: cut.blocks, pieces: cut.pieces, demands, layouts });
  const findings = inOrder([
    ...blocks.findings,
    ...quilt.findings,
    ...cut.findings,
    ...recipes.findings,
    ...planned,
    ...look.findings,
    ...(sizes?.findings ?? []),
  ]);
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
    yardages,
    units,
    sights: look.sights,
    ...(sizes && { sizes: sizes.sizes }),
    findings,
  };
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
