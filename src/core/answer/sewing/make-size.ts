import { type Brief, recorded, seamOf } from "../../brief/index.ts";
import {
  inchToLength,
  knownLength,
  type Length,
  printAtMark,
  printWithUnit,
  roundDown,
  roundNearest,
  roundUp,
  stepOf,
} from "../../measure/index.ts";
import type { Recipe } from "../../recipe/index.ts";
import { aboutLength } from "../../sewing/about.ts";
import { expectedReach } from "../../sewing/draw.ts";
import { type Maker, testedMaker, untestedMaker } from "../../sewing/maker.ts";
import { type MakeSizeAnswer, sewMany } from "../../sewing/makeSize.ts";
import { reachesOf } from "../../sewing/reaches.ts";
import { type SeamFound, seamFrom, shouldMeasure } from "../../sewing/seamTest.ts";
import { type SpareOf, spareFrom } from "../../sewing/spare.ts";
import { measuresOf, recipesIn } from "../cut/stages.ts";
import type { Answer, AnswerBlock } from "../types/answer.ts";
import { changed, inWords, lengthTextProblem, stepOfBrief } from "../words/word.ts";
import { nearFor } from "./spare-left.ts";

/** One kind of block to be sewn by the thousand: plain data, so that a worker can be given it. */
export interface SizeStudy {
  readonly block: AnswerBlock;
  readonly recipes: readonly Recipe[];
  readonly seam: Length;
  readonly maker: Maker;
  readonly within: Length;
  readonly samples: number;
  readonly seed: number;
  /** The recipes with one piece cut a step larger. */
  readonly enlarged: readonly { readonly pieceId: string; readonly recipes: readonly Recipe[] }[];
}

export const SAMPLES = 20_000;
const SEED = 1;
/** How much short a block may be and still be eased in: an estimate, no source. */
const WITHIN_INCH = 1 / 16;

export interface StudyOptions {
  readonly samples?: number;
  readonly seed?: number;
}

/** Strips of one width sewn side by side: what to cut, and what they should come to. */
export interface SeamTestOffer {
  readonly strips: number;
  readonly cut: string;
  readonly should: string;
  readonly typed: string;
  readonly problem?: string;
}

/** Seam tests worth sewing; the sources of the first and last are in docs/sewing.md. */
const TESTS = {
  in: [
    { strips: 4, cut: "1 1/2" },
    { strips: 3, cut: "1 1/2" },
    { strips: 2, cut: "3 1/2" },
  ],
  mm: [
    { strips: 4, cut: "40" },
    { strips: 3, cut: "40" },
    { strips: 2, cut: "90" },
  ],
} as const;

export function seamTests(b: Brief): SeamTestOffer[] {
  const kept = recorded(b, "seam-test");
  const seam = seamOf(b);
  const fine = stepOf(b.unit === "in" ? "1/32" : "0.5", b.unit);
  return TESTS[b.unit].map(({ strips, cut }) => {
    const entry = kept.find((e) => e.strips === strips && e.cut === cut);
    const should = shouldMeasure({ strips, cut: knownLength(cut, b.unit) }, seam);
    const problem = entry && testProblem(b, entry.size, should);
    return {
      strips,
      cut,
      should: printWithUnit(should, fine),
      typed: entry?.size ?? "",
      ...(problem && { problem }),
    };
  });
}

function testProblem(b: Brief, text: string, should: Length): string | undefined {
  const bad = lengthTextProblem(text, b.unit)?.problem;
  if (bad) return bad;
  const off = Math.abs(knownLength(text, b.unit) - should);
  return off > should / 5 ? "That is far off. Is it the same test, in the same unit?" : undefined;
}

/** Her seam, from every test she sewed; undefined when there is none that can be. */
export function foundSeam(b: Brief): SeamFound | undefined {
  const tests = seamTests(b).filter((t) => t.typed !== "" && !t.problem);
  if (tests.length === 0) return undefined;
  return seamFrom(
    tests.map((t) => ({
      strips: t.strips,
      cut: knownLength(t.cut, b.unit),
      measured: knownLength(t.typed, b.unit),
    })),
    seamOf(b),
    inchToLength(1 / 64, b.unit),
  );
}

export function makerOf(b: Brief): Maker {
  const found = foundSeam(b);
  return found ? testedMaker(untestedMaker(b.unit), found) : untestedMaker(b.unit);
}

/** How she is taken to cut and sew, in two sentences. */
export function makerWords(b: Brief): string {
  const found = foundSeam(b);
  const m = makerOf(b);
  const fine = stepOf(b.unit === "in" ? "1/128" : "0.1", b.unit);
  const much = (x: Length): string => printWithUnit(roundNearest(x, fine), fine);
  const cut = `Cuts are taken to vary by ${much(m.cutScatter)}, seams by ${much(m.seamScatter)}, and along one seam by ${much(m.driftScatter)} (one standard deviation)`;
  if (!found) return `${cut}. The seam is presumed to be scant by just what the fold takes.`;
  const scant = Math.abs(found.wider) < inchToLength(1 / 256, b.unit);
  return scant
    ? `${cut}. By the test, the seam is right, the fold counted.`
    : `${cut}. By the test, the seam is ${aboutLength(found.wider, b.unit)} too ${found.wider > 0 ? "wide" : "narrow"}, the fold counted.`;
}

/** What to sample for one kind of block, with every cut that may be enlarged tried a step larger. */
export function sizeStudy(
  b: Brief,
  a: Answer,
  block: AnswerBlock,
  { samples = SAMPLES, seed = SEED }: StudyOptions = {},
): SizeStudy {
  const own = new Set(Object.values(block.pieceOf));
  const recipes = a.recipes.filter((r) => own.has(r.pieceId));
  return {
    block,
    recipes,
    seam: seamOf(b),
    maker: makerOf(b),
    within: inchToLength(WITHIN_INCH, b.unit),
    samples,
    seed,
    enlarged: recipes.flatMap((r) => {
      const larger = enlargedBy(b, a, r);
      return larger
        ? [{ pieceId: r.pieceId, recipes: recipes.map((x) => (x === r ? larger : x)) }]
        : [];
    }),
  };
}

/** The same piece from a cut one step larger; undefined where the size sets the patch. */
function enlargedBy(b: Brief, a: Answer, r: Recipe): Recipe | undefined {
  const piece = a.pieces.find((p) => p.id === r.pieceId);
  if (!piece || r.size === undefined || r.smallest === undefined) return undefined;
  const m = measuresOf(b);
  const size = String(r.size + m.step.size.valueOf());
  const larger = changed(b, (d) => {
    for (const k of d.blocks)
      if (piece.perBlock[k.id] !== undefined)
        k.cut = { ...k.cut, [piece.id]: { kind: r.kind, size } };
  });
  const [made] = recipesIn(larger, m, {
    pieces: [piece],
    blocks: a.blocks,
    findings: [],
  }).recipes;
  return made && made.w > r.w + 1e-9 ? made : undefined;
}

/** Yields how many blocks are sewn so far; returns the answer. */
export function* sampleSize(s: SizeStudy): Generator<number, MakeSizeAnswer> {
  const spare = (recipes: readonly Recipe[]): SpareOf =>
    spareFrom(recipes, s.block.pieceOf, nearFor(s.block));
  return yield* sewMany({
    block: s.block,
    seam: s.seam,
    maker: s.maker,
    spareOf: spare(s.recipes),
    within: s.within,
    samples: s.samples,
    seed: s.seed,
    enlarged: s.enlarged.map((e) => ({ id: e.pieceId, spareOf: spare(e.recipes) })),
  });
}

/** What the samples say, in sentences: share, spread, what helps, and the check by formula. */
export interface SizeWords {
  readonly share: string;
  readonly spread: string;
  readonly helps: string;
  readonly check: string;
}

const percent = (share: number): string =>
  share > 0 && share < 0.005 ? "fewer than 1" : String(Math.round(100 * share));

/** The width that comes short most often. */
export const tightest = (r: MakeSizeAnswer): MakeSizeAnswer["widths"][number] =>
  r.widths.reduce((worst, w) => (w.mean - w.trim < worst.mean - worst.trim ? w : worst));

export function sizeWords(b: Brief, a: Answer, s: SizeStudy, r: MakeSizeAnswer): SizeWords {
  const fine = stepOf(b.unit === "in" ? "1/64" : "0.1", b.unit);
  const w = tightest(r);
  const trim = printAtMark(w.trim, stepOfBrief(b));
  return {
    share: `${percent(r.share)} of 100 ${s.block.name} blocks reach ${trim}, or come within ${printWithUnit(s.within, fine)} of it and can be eased in (give or take ${Math.max(1, Math.round(196 * r.shareError))})`,
    spread: `19 of 20 measure ${printWithUnit(roundDown(w.mean - 1.96 * w.sd, fine), fine)} to ${printWithUnit(roundUp(w.mean + 1.96 * w.sd, fine), fine)} before trimming`,
    helps: helpsWords(b, a, s, r),
    check: checkWords(s, r),
  };
}

function helpsWords(b: Brief, a: Answer, s: SizeStudy, r: MakeSizeAnswer): string {
  if (r.share >= 0.995) return "No cut need be larger.";
  const step = printWithUnit(measuresOf(b).step.size.valueOf(), stepOfBrief(b));
  const best = r.enlarged.find((e) => e.id === r.bestCut);
  const letter = (id: string): string => {
    const p = a.pieces.find((x) => x.id === id);
    return p ? `${p.name} ${p.letter}` : id;
  };
  if (best)
    return `Cut the ${letter(best.id)} ${step} larger and ${percent(best.share)} of 100 do.`;
  return s.enlarged.length === 0
    ? "No cut can be enlarged: each one sets its patch. A narrower seam is what helps."
    : "No larger cut helps: what sets the size is the wedges and the seam.";
}

/** Mean of every raw side beside its formula, in standard errors of the samples. */
export function worstOfCheck(s: SizeStudy, r: MakeSizeAnswer): number | undefined {
  const n = s.block.radial?.n;
  if (n === undefined) return undefined;
  const spareOf = spareFrom(s.recipes, s.block.pieceOf, nearFor(s.block));
  return reachesOf(s.block, s.seam, spareOf).reduce((most, reach, i) => {
    const expected = expectedReach(reach, n, s.maker);
    const error = r.reaches[i].sd / Math.sqrt(r.samples);
    return Math.max(most, Math.abs(r.reaches[i].mean - expected.mean) / error);
  }, 0);
}

function checkWords(s: SizeStudy, r: MakeSizeAnswer): string {
  const worst = worstOfCheck(s, r);
  const sewn = `${r.samples.toLocaleString("en-US")} blocks sewn in numbers, seed ${s.seed}`;
  return worst === undefined
    ? `${sewn}.`
    : `${sewn}; every side agrees with the formula within ${worst.toFixed(1)} standard errors of the samples.`;
}

/** "four strips cut 1 1/2 in": how a seam test is said. */
export const sayTest = (t: Pick<SeamTestOffer, "strips" | "cut">, unit: Brief["unit"]): string =>
  `${inWords(t.strips)} strips cut ${t.cut} ${unit}`;
