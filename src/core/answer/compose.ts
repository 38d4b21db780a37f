import { type Brief, contentHash } from "../brief/index.ts";
import type { Finding } from "../findings/index.ts";
import type { Demand, FabricPlanOptions } from "../layout/index.ts";
import { type Length, tolerances } from "../measure/index.ts";
import type { Recipes } from "../recipe/index.ts";
import { Attempts } from "./attempt.ts";
import { cuttingOf } from "./cut/cutting.ts";
import { finishingDemands } from "./cut/finishing.ts";
import { layoutsOf } from "./cut/layouts.ts";
import { roundDemands } from "./cut/round-demands.ts";
import {
  type Blocks,
  blocksOf,
  type CutPieces,
  finishedBlock,
  finishingIn,
  measuresOf,
  namesOf,
  piecesIn,
  quiltOf,
  recipesIn,
  type Sewing,
  sewingIn,
} from "./cut/stages.ts";
import { wedgeGuides } from "./cut/wedge-guide.ts";
import { meetingShapes } from "./look/meetings.ts";
import { sightsOf } from "./look/sights.ts";
import { questionsOf } from "./questions/questions.ts";
import { sizesOf } from "./size/sizes.ts";
import type { Answer } from "./types/answer.ts";
import { unprovedWords } from "./unproved.ts";
import { sentenceOf } from "./words/sentence.ts";

/**
 * Everything that follows from a brief. Pure: equal briefs give equal answers. Stages run as far as
 * the findings let them; what is missing is missing because a finding that `blocks` says why.
 *
 * `planning` says how hard to look for the least fabric. Unless told, the first plan; with a loaded
 * solver, the best one, which blocks its thread while it is looked for.
 */
export function answerBrief(brief: Brief, planning: FabricPlanOptions = {}): Answer {
  const names = namesOf(brief);
  if (names.length > 0)
    return {
      ...nothingYet(brief, sentenceOf(brief, { unproved: [] })),
      findings: inOrder(names),
    };
  const m = measuresOf(brief);
  const tried = new Attempts();
  const blocks = tried.of("blocks", () => blocksOf(brief, m), NO_BLOCKS);
  const quilt = tried.of("quilt", () => quiltOf(brief, blocks), { findings: [] });
  const { geometry } = quilt;
  const cut = tried.of("pieces", () => piecesIn(brief, m, blocks, geometry), NO_PIECES);
  const recipes = tried.of("recipes", () => recipesIn(brief, m, cut), NO_RECIPES);
  const finishing = tried.of("finishing", () => finishingIn(brief, m, geometry), {});
  const rounds = tried.of(
    "demands",
    () => roundDemands(brief, cut.blocks, recipes.demands, m.seam),
    recipes.demands,
  );
  const asked = (width?: Length) => [
    ...rounds,
    ...(tried.failed.has("finishing")
      ? []
      : finishingDemands(finishingIn(brief, m, geometry, width), m.step)),
  ];
  const planned = tried.of(
    "layouts",
    () => layoutsOf(brief, m, (_, width) => asked(width), planning),
    NO_LAYOUTS,
  );
  const { layouts, yardages, plans } = planned;
  const demands = tried.of("demands", () => likeAsked(asked(), planned.demands), []);
  const cutting = tried.of(
    "cutting",
    () =>
      cuttingOf({
        brief,
        plans,
        layouts,
        demands,
        pieces: cut.pieces,
        recipes: recipes.recipes,
        narrower: planned.narrower,
      }),
    [],
  );
  const sewing = tried.of(
    "sewing",
    () => sewingIn(brief, m, cut.blocks, recipes, blocks),
    NO_SEWING,
  );
  const sizes = tried.of(
    "sizes",
    () => {
      const block = finishedBlock(brief, blocks);
      return brief.sizes?.length && geometry && block
        ? sizesOf(brief, m, block, answerBrief)
        : undefined;
    },
    undefined,
  );
  const look = tried.of(
    "look",
    () => sightsOf(brief, { blocks: cut.blocks, pieces: cut.pieces, demands, layouts }),
    { sights: [], findings: [] },
  );
  const meetings = tried.of(
    "meetings",
    () =>
      meetingShapes(brief, {
        quilt: geometry,
        blocks: cut.blocks,
        pieces: cut.pieces,
        demands,
        layouts,
      }),
    [],
  );
  const wedges = tried.of(
    "wedges",
    () => wedgeGuides(brief, m.seam, new Set(cut.blocks.map((b) => b.id))),
    [],
  );
  const agreed = new Set((brief.accepted ?? []).map((a) => `${a.code} ${a.place}`));
  const found = [
    ...blocks.findings,
    ...quilt.findings,
    ...cut.findings,
    ...recipes.findings,
    ...planned.findings,
    ...look.findings,
    ...sewing.findings,
    ...(sizes?.findings ?? []),
  ];
  const told = found.filter((f) => f.severity !== "draft" || !agreed.has(`${f.code} ${f.place}`));
  const sentence = tried.of(
    "sentence",
    () => sentenceOf(brief, { unproved: unprovedWords(brief, cut.pieces, inOrder(told)) }),
    [{ text: brief.title }],
  );
  const findings = inOrder([...tried.findings, ...told]);
  const questions = questionsOf({
    brief,
    step: m.step,
    seam: m.seam,
    quilt: geometry,
    blocks: cut.blocks,
    pieces: cut.pieces,
    recipes: recipes.recipes,
    accepted: new Set((brief.accepted ?? []).map((a) => a.place)),
    layouts,
    cutting,
    yardages,
    units: sewing.units,
    look,
    meetings,
    finishing,
    failed: tried.failed,
    sizes: sizes?.sizes ?? [],
    blocked: findings.some((f) => f.severity === "blocks"),
  });
  return {
    ...nothingYet(brief, sentence),
    questions,
    quilt: geometry,
    blocks: cut.blocks,
    pieces: cut.pieces,
    recipes: recipes.recipes,
    demands,
    finishing,
    wedges,
    layouts,
    cutting,
    yardages,
    units: sewing.units,
    ...(sewing.rows && geometry && { rows: sewing.rows }),
    sights: look.sights,
    meetings,
    ...(sizes && { sizes: sizes.sizes }),
    findings,
  };
}

/** What stands in the place of a stage that failed. */
const NO_BLOCKS: Blocks = { blocks: [], findings: [] };
const NO_PIECES: CutPieces = { pieces: [], blocks: [], findings: [] };
const NO_RECIPES: Recipes = { recipes: [], demands: [], findings: [] };
const NO_LAYOUTS: ReturnType<typeof layoutsOf> = {
  layouts: [],
  yardages: [],
  plans: [],
  demands: [],
  narrower: [],
  findings: [],
};
const NO_SEWING: Sewing = { units: [], findings: [] };

/** What was planned in the order it was asked for, then the strips that strip sets need. */
function likeAsked(asked: readonly Demand[], planned: readonly Demand[]): Demand[] {
  const place = new Map(asked.map((d, i) => [d.id, i]));
  const at = (d: Demand): number => place.get(d.id) ?? asked.length;
  return [...planned].sort((a, b) => at(a) - at(b));
}

function nothingYet(brief: Brief, sentence: Answer["sentence"]): Answer {
  return {
    format: "eighthwise-answer",
    version: 1,
    briefHash: contentHash({ ...brief, record: undefined }),
    unit: brief.unit,
    tolerances: tolerances(brief.unit),
    sentence,
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
    meetings: [],
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
