import { radialBlock } from "../block/index.ts";
import type { RulerText } from "../brief/schema.ts";
import type { Finding } from "../findings/index.ts";
import {
  type Degree,
  type Length,
  printLength,
  roundUp,
  type Step,
  tolerances,
  type Unit,
} from "../measure/index.ts";
import { type Piece, piecesOf } from "../piece/index.ts";
import { waysFor } from "./choose.ts";
import type { Bench } from "./plan.ts";
import { ruleWords, tryOut } from "./recipes.ts";
import { evaluateRule } from "./rule.ts";
import { flatTip, halfAcross, type Ruler, rulerOf, wedgeBase } from "./ruler.ts";
import type { Verdict } from "./types.ts";

export interface ChartInput {
  /** Wedges in the circle: 6, 8, 10, 12 or 16. */
  readonly wedges: number;
  readonly point: RulerText["point"];
  /** Strips from, to (included) and by how much apart. */
  readonly from: Length;
  readonly to: Length;
  readonly by: Length;
  readonly seam: Length;
  readonly usable: Length;
  readonly folds: 0 | 1;
  readonly unit: Unit;
  readonly step: Step;
  /** A rule of thumb to test on every row, for one kind of piece. */
  readonly rule?: ChartRule;
}

export interface ChartRule {
  readonly piece: "kite" | "corner" | "background";
  readonly rule: string;
}

type Named<K extends string> = { readonly [key in K]: Length | null } & {
  readonly [key in `${K}Text`]: string | null;
};

/**
 * One strip of the wedge chart. Lengths exact, in the unit asked; each with a text rounded up to the
 * step. What wedges of this number do not have is null. `deepSquare` is for the least deep block,
 * h = a / cos(180/n); `deepSlice` is the height from the raw point, whatever the ruler.
 */
export type ChartRow = Named<
  | "strip"
  | "finished"
  | "unfinished"
  | "octagonSide"
  | "wedgeBase"
  | "cornerSquare"
  | "kiteSquareCover"
  | "kiteSquareSharp"
  | "kiteMark"
  | "deepSquare"
  | "deepSlice"
> & { readonly wedgesPerStrip: number } & Partial<RuleVerdict>;

export interface RuleVerdict {
  readonly rule: string;
  readonly ruleSize: Length | null;
  readonly ruleSizeText: string | null;
  readonly ruleW: Length | null;
  readonly ruleReach: Length | null;
  readonly ruleVerdict: Verdict | "not understood" | null;
}

/** Most rows a chart may have; a chart asked finer than this is a mistake in `by`. */
const MOST_ROWS = 5000;

/** The wedge chart of a ruler. Throws RangeError for a range that has no rows, or too many. */
export function chartRows(input: ChartInput): ChartRow[] {
  const ruler = rulerOf({ point: input.point }, input.wedges, input.unit);
  return stripsOf(input).map((strip) => rowOf(strip, ruler, input));
}

function stripsOf({ from, to, by }: ChartInput): Length[] {
  const count = Math.floor((to - from) / by + 1e-9) + 1;
  if (!(from > 0 && by > 0 && count >= 1 && count <= MOST_ROWS))
    throw new RangeError(
      `chart: from more than 0 up to a greater number, at most ${MOST_ROWS} rows expected, got ${from} to ${to} by ${by}`,
    );
  return Array.from({ length: count }, (_, i) => from + i * by);
}

function rowOf(strip: Length, ruler: Ruler, input: ChartInput): ChartRow {
  const { seam } = input;
  const a = halfAcross(ruler, strip, seam);
  const made = a > 0 ? sizesOf(a, ruler, seam) : NOTHING;
  const lengths = { strip, ...made, wedgeBase: wedgeBase(ruler, strip) };
  const texts = Object.entries(lengths).map(([key, x]) => [`${key}Text`, upText(x, input.step)]);
  return {
    ...lengths,
    ...Object.fromEntries(texts),
    wedgesPerStrip: wedgesInStrip(ruler, strip, input).count,
    ...(input.rule ? testRule(input.rule, a, strip, input) : {}),
  } as ChartRow;
}

const upText = (x: Length | null, step: Step): string | null =>
  x === null ? null : printLength(roundUp(x, step), step);

type Sizes = Readonly<Record<keyof typeof NOTHING, Length | null>>;

const NOTHING = {
  finished: null,
  unfinished: null,
  octagonSide: null,
  cornerSquare: null,
  kiteSquareCover: null,
  kiteSquareSharp: null,
  kiteMark: null,
  deepSquare: null,
  deepSlice: null,
};

const EIGHTH = Math.PI / 8;
const [SIN, COS, TAN] = [Math.sin(EIGHTH), Math.cos(EIGHTH), Math.tan(EIGHTH)];

/** Formulas: docs/geometry/allowance.md and docs/geometry/proof-of-cover.md. */
function sizesOf(a: Length, ruler: Ruler, seam: Length): Sizes {
  const across = { finished: 2 * a, unfinished: 2 * (a + seam) };
  if (ruler.n !== 8) return { ...NOTHING, ...across };
  const halfSquare = seam * (2 + Math.SQRT2);
  return {
    ...across,
    octagonSide: 2 * a * TAN,
    cornerSquare: a * (2 - Math.SQRT2) + halfSquare,
    kiteSquareCover: a + seam + seam * COS,
    kiteSquareSharp: a + seam + seam / (Math.SQRT2 * SIN),
    // Kite's short side a (1 - tan 22.5), each seam at its ends adding seam / tan(half the corner).
    kiteMark: a * (1 - TAN) + seam + seam / Math.tan((112.5 / 2) * (Math.PI / 180)),
    deepSquare: a / COS + halfSquare,
    deepSlice: a - seam + seam / SIN,
  };
}

/**
 * Wedges from one strip laid head to tail, and by how much the strip missed one more. A strip folded
 * once is cut double, so it gives twice what half of it holds.
 */
export function wedgesInStrip(
  ruler: Ruler,
  strip: Length,
  { usable, folds, unit }: Pick<ChartInput, "usable" | "folds" | "unit">,
): { count: number; missedBy: Length } {
  const base = wedgeBase(ruler, strip);
  const pitch = (base + flatTip(ruler)) / 2;
  const room = folds === 1 ? usable / 2 : usable;
  const slack = tolerances(unit).step;
  const each = room + slack < base ? 0 : 1 + Math.floor((room + slack - base) / pitch);
  return { count: each * (folds === 1 ? 2 : 1), missedBy: base + each * pitch - room };
}

/** Do n wedges of this angle fill the circle? A finding that says how many would, when they do not. */
export function checkCircle(angle: Degree, wedges: number): Finding | undefined {
  if (Math.abs(angle * wedges - 360) < 1e-6) return undefined;
  return {
    code: "circle-not-closed",
    severity: "blocks",
    place: "ruler",
    needed: 360,
    found: +angle * wedges,
    unit: "degrees",
  };
}

function testRule({ piece, rule }: ChartRule, a: Length, strip: Length, input: ChartInput) {
  const none = { ruleSize: null, ruleSizeText: null, ruleW: null, ruleReach: null };
  const name = `${piece}=${rule}`;
  if (a <= 0 || input.wedges !== 8) return { rule: name, ...none, ruleVerdict: null };
  const target = pieceAt(piece, a, input);
  const bench: Bench = { unit: input.unit, step: input.step, directional: false };
  const [way] = waysFor(target, bench);
  const words = ruleWords(target, way.plan(target, bench), input.seam, { strip, a });
  const size = evaluateRule(rule, words, input.unit);
  if (size === undefined) return { rule: name, ...none, ruleVerdict: "not understood" as const };
  const recipe = tryOut(target, way, bench, size);
  return {
    rule: name,
    ruleSize: size,
    ruleSizeText: printLength(size, input.step),
    ruleW: recipe.w,
    ruleReach: recipe.reach,
    ruleVerdict: recipe.verdict,
  };
}

/** The piece that goes beside wedges finishing `a`: deep backgrounds at twice the square's half. */
function pieceAt(kind: ChartRule["piece"], a: Length, { seam, unit }: ChartInput): Piece {
  const geometry = radialBlock({
    id: "chart",
    n: 8,
    outline: "square",
    turned: kind === "background" ? "corner" : "flat",
    a,
    half: kind === "background" ? (a / COS) * DEEP_FLOAT : a,
    whole: kind === "kite" ? [1, 3, 5, 7] : [],
    join: tolerances(unit).join,
  });
  const { pieces } = piecesOf({
    unit,
    seam,
    blocks: [
      {
        geometry,
        count: 1,
        fabricOf: Object.fromEntries(geometry.patches.map((p) => [p.id, "any"])),
      },
    ],
    extras: [],
    fabrics: { any: { name: "any", letter: "A", directional: false, reversible: false } },
  });
  const found = pieces.find((p) => p.roles.some((r) => r === kind || r.startsWith(`${kind}-`)));
  if (!found) throw new RangeError(`chart: a ${kind} expected in the block`);
  return found;
}

/** A deep block's background needs some float; the least any ruler shows is tested: a thousandth. */
const DEEP_FLOAT = 1.001;
