import type { RulerText } from "../brief/schema.ts";
import type { Finding } from "../findings/index.ts";
import { add, distance, type Polygon, point } from "../geometry/index.ts";
import { knownLength, type Length, roundDown, roundUp, type Unit } from "../measure/index.ts";
import { grainOf, type Piece } from "../piece/index.ts";
import { wayOf, waysFor } from "./choose.ts";
import { demandsOf } from "./demand.ts";
import type { Demand } from "./demand-types.ts";
import type { Judged, RecipeChoice, RecipesInput, WedgeFacts } from "./input.ts";
import { findingsOf } from "./judge.ts";
import { anglesOf, type Bench, type CutPlan, sizeOf, type Way } from "./plan.ts";
import { type Proof, prove } from "./proof.ts";
import { evaluateRule, type RuleWords } from "./rule.ts";
import { halfAcross, type Ruler, rulerOf } from "./ruler.ts";
import type { Neighbor, Recipe } from "./types.ts";

export interface Recipes {
  readonly recipes: readonly Recipe[];
  readonly demands: readonly Demand[];
  readonly findings: readonly Finding[];
}

/**
 * How to cut every piece, with its proof of cover; what the planner must find room for; and what is
 * wrong or worth knowing. Recipes and demands are ordered by id.
 */
export function recipesOf(input: RecipesInput): Recipes {
  const judged = input.pieces.map((piece) => judge(piece, input));
  return {
    recipes: judged.map((j) => j.recipe).sort((a, b) => (a.pieceId < b.pieceId ? -1 : 1)),
    demands: demandsOf(judged, input.fabrics),
    findings: findingsOf(judged, input),
  };
}

/** The recipe of one piece when nothing but the way and the size is asked: for trying out. */
export function tryOut(piece: Piece, way: Way, bench: Bench, size?: Length): Recipe {
  const plan = way.plan(piece, bench, size);
  return recipeFrom(piece, plan, proofOf(piece, plan, bench), bench, way);
}

export function benchFor(
  piece: Piece,
  input: Pick<RecipesInput, "unit" | "step" | "ruler" | "fabrics">,
): Bench {
  const directional = input.fabrics[piece.fabricId]?.directional ?? false;
  const bench = { unit: input.unit, step: input.step, directional };
  return piece.setsSize ? { ...bench, ruler: wedgeRuler(piece, input.ruler, input.unit) } : bench;
}

/** The maker's ruler for this wedge: its point is opposite edge 0. */
function wedgeRuler(piece: Piece, text: RulerText, unit: Unit): Ruler {
  const n = Math.round(360 / anglesOf(piece.finished)[2]);
  return rulerOf(text, n, unit);
}

function judge(piece: Piece, input: RecipesInput): Judged {
  const bench = benchFor(piece, input);
  const choice = choiceFor(piece, input.choices ?? {});
  const ways = waysFor(piece, bench);
  const asked = choice?.kind === undefined ? undefined : wayOf(choice.kind);
  const way = asked?.fits(piece, bench) ? asked : ways[0];
  const natural = way.plan(piece, bench);
  const wanted = wantedSize(piece, choice, input, natural);
  const size = natural.enlargeable ? wanted.size : undefined;
  const plan = size === undefined ? natural : way.plan(piece, bench, size);
  const recipe = recipeFrom(piece, plan, proofOf(piece, plan, bench), bench, way);
  return {
    piece,
    plan,
    recipe,
    bench,
    refused: {
      ...(choice?.kind !== undefined && way !== asked
        ? { kind: choice.kind, kinds: ways.map((w) => w.kind) }
        : {}),
      ...(wanted.notUnderstood === undefined ? {} : { rule: wanted.notUnderstood }),
      ...(wanted.size !== undefined && !natural.enlargeable ? { size: wanted.size } : {}),
    },
  };
}

/** A choice by piece id is nearer than one by role; of several blocks the first by name decides. */
function choiceFor(
  piece: Piece,
  choices: NonNullable<RecipesInput["choices"]>,
): RecipeChoice | undefined {
  const named = Object.keys(piece.perBlock)
    .sort()
    .map((blockId) => choices[blockId] ?? {});
  const byId = named.map((c) => c[piece.id]).find((c) => c !== undefined);
  if (byId) return byId;
  const speaksOf = (key: string) => piece.roles.some((r) => r === key || r.startsWith(`${key}-`));
  return named
    .flatMap((c) => Object.entries(c))
    .sort(([a], [b]) => b.length - a.length)
    .find(([key]) => speaksOf(key))?.[1];
}

function wantedSize(
  piece: Piece,
  choice: RecipeChoice | undefined,
  input: RecipesInput,
  plan: CutPlan,
): { size?: Length; notUnderstood?: string } {
  if (choice?.size !== undefined) return { size: knownLength(choice.size, input.unit) };
  if (choice?.rule === undefined) return {};
  const blockId = Object.keys(piece.perBlock).sort()[0];
  const facts = blockId === undefined ? undefined : input.wedges?.[blockId];
  const size = evaluateRule(choice.rule, ruleWords(piece, plan, input.seam, facts), input.unit);
  return size === undefined ? { notUnderstood: choice.rule } : { size };
}

/** What rules of thumb about this piece may speak of. */
export function ruleWords(
  piece: Piece,
  plan: CutPlan,
  seam: Length,
  facts?: WedgeFacts,
): RuleWords {
  const sides = piece.edges.map((e) => e.finished);
  const triangle = piece.finished.length === 3;
  const leg = Math.min(...sides);
  const long = Math.max(...sides);
  const finished =
    plan.kind === "square-twice" ? long : triangle ? leg : sizeOf(piece.finished).height;
  return {
    ...(facts ? { strip: facts.strip, across: 2 * facts.a } : {}),
    ...(triangle ? { leg, long } : {}),
    finished,
    seam,
  };
}

const proofOf = (piece: Piece, plan: CutPlan, bench: Bench): Proof =>
  prove({ ...plan, allowances: piece.edges.map((e) => e.allowance) }, bench.unit);

/** Side of the scrap that stands for nothing, as a part of the patch's first edge. */
const SCRAP = 1e-3;

/** What the cuts leave of the blank; where they leave nothing a scrap, so that there is a place to show. */
function whatIsLeft({ raw, finished }: CutPlan, { shift }: Proof): Polygon {
  if (raw.length >= 3) return raw;
  const [from] = finished;
  const side = SCRAP * distance(from, finished[1]);
  return [point(0, 0), point(side, 0), point(0, side)].map((v) => add(add(from, shift), v));
}

function recipeFrom(piece: Piece, plan: CutPlan, proof: Proof, bench: Bench, way: Way): Recipe {
  const smallest = plan.enlargeable ? smallestOf(piece, plan, bench, way) : undefined;
  const neighbors = neighborsOf(piece, plan, bench);
  return {
    pieceId: piece.id,
    kind: plan.kind,
    cuts: plan.cuts,
    yields: plan.piecesEach,
    yieldsLeft: plan.hands === "either" || piece.hand === "left" ? plan.piecesEach : 0,
    yieldsRight: plan.hands === "either" || piece.hand === "right" ? plan.piecesEach : 0,
    polygon: whatIsLeft(plan, proof),
    patch: plan.finished.map((v) => add(v, proof.shift)),
    setEdges: plan.setEdges,
    w: proof.w,
    reach: proof.reach,
    spare: proof.spare,
    spareBySide: proof.spareBySide,
    spareByCorner: proof.spareByCorner,
    offCenter: proof.offCenter,
    ...(smallest === undefined ? {} : { smallest }),
    size: plan.size,
    exactSize: plan.exactSize,
    verdict: proof.verdict,
    grain: grainOf(plan.finished).map((g) => (plan.turned === 45 ? 45 - g : g)),
    ...(neighbors.length === 0 ? {} : { neighbors }),
    ...(proof.thin.length === 0 ? {} : { thin: proof.thin }),
  };
}

/** Steps tried either side of the exact size before giving up. */
const TRIES = 64;

/** Smallest size on the maker's step that is proved; undefined when none near the exact one is. */
function smallestOf(piece: Piece, plan: CutPlan, bench: Bench, way: Way): Length | undefined {
  const step = bench.step.size.valueOf();
  const proved = (size: Length) =>
    size > 0 && proofOf(piece, way.plan(piece, bench, size), bench).verdict === "proved";
  let size = roundUp(plan.exactSize, bench.step);
  if (proved(size)) {
    for (let i = 0; i < TRIES; i++) {
      const less = roundDown(size - step, bench.step);
      if (!proved(less)) return size;
      size = less;
    }
    return size;
  }
  for (let i = 0; i < TRIES; i++) {
    size = roundUp(size + step, bench.step);
    if (proved(size)) return size;
  }
  return undefined;
}

/** Strips on the ruler either side of a wedge strip that is not on it, and the octagon of each. */
function neighborsOf(piece: Piece, plan: CutPlan, bench: Bench): Neighbor[] {
  const { ruler } = bench;
  if (!piece.setsSize || !ruler) return [];
  const below = roundDown(plan.size, bench.step);
  const above = roundUp(plan.size, bench.step);
  if (distance({ x: below, y: 0 }, { x: above, y: 0 }) === 0) return [];
  const seam = piece.edges[0].allowance;
  return [below, above]
    .filter((strip) => strip > 0)
    .map((strip) => ({ strip, across: 2 * halfAcross(ruler, strip, seam) }));
}
