import { type Length, printLength, printWithUnit } from "../../measure/index.ts";
import type { Piece } from "../../piece/types.ts";
import type { Recipe } from "../../recipe/types.ts";
import type { AnswerBlock, Question, QuestionId, ResultNumber } from "../types/answer.ts";
import type { Facts } from "./facts.ts";
import { finishQuestion } from "./finish.ts";
import { lookQuestion } from "./look.ts";
import { meetingQuestion } from "./meeting.ts";
import { makeSizeQuestion, whyQuestion } from "./sewing.ts";

/** A question, the stages it is answered from, and how; undefined where the core cannot answer it. */
export interface Asked {
  readonly id: QuestionId;
  readonly heading: string;
  readonly stages: readonly string[];
  readonly answer: (f: Facts) => Question | undefined;
}

/** Every question in the page's order. */
export const QUESTIONS: readonly Asked[] = [
  { id: "size", heading: "How big is it?", stages: ["blocks", "quilt", "sizes"], answer: size },
  { id: "cover", heading: "Does it cover?", stages: ["pieces", "recipes"], answer: cover },
  {
    id: "look",
    heading: "What will my fabric look like?",
    stages: ["look"],
    answer: (f) => lookQuestion({ ...f, ...f.look }),
  },
  {
    id: "meeting",
    heading: "What appears where blocks meet?",
    stages: ["meetings"],
    answer: meetingQuestion,
  },
  {
    id: "enough",
    heading: "Is there enough?",
    stages: ["demands", "layouts", "cutting"],
    answer: enough,
  },
  { id: "order", heading: "In what order?", stages: ["sewing"], answer: order },
  { id: "measure", heading: "What should it measure now?", stages: ["sewing"], answer: measure },
  {
    id: "make-size",
    heading: "Will it make size?",
    stages: ["pieces", "recipes", "sewing"],
    answer: makeSizeQuestion,
  },
  { id: "why", heading: "Why is mine off?", stages: ["blocks"], answer: whyQuestion },
  { id: "finish", heading: "And then?", stages: ["finishing"], answer: finishQuestion },
];

/**
 * The questions that can be answered, in the page's order. What the core cannot answer is left out;
 * one whose stages failed says so, and the others stand.
 */
export function questionsOf(f: Facts, asked: readonly Asked[] = QUESTIONS): Question[] {
  return asked.flatMap(({ id, heading, stages, answer }): Question[] => {
    const said = stages.map((s) => f.failed.get(s)).find((m) => m !== undefined);
    if (said !== undefined) return [failedQuestion(id, heading, said)];
    try {
      const question = answer(f);
      return question ? [question] : [];
    } catch (error) {
      return [failedQuestion(id, heading, (error as Error).message)];
    }
  });
}

const failedQuestion = (id: QuestionId, heading: string, said: string): Question => ({
  id,
  heading,
  trade: heading,
  line: `This could not be worked out (${said}).`,
  doubt: true,
  because: "The rest of the page stands. Your design is kept as it is.",
  from: [],
});

const exact = (value: Length, f: Facts, from: readonly string[]): ResultNumber => ({
  value,
  unit: f.brief.unit,
  text: printWithUnit(value, f.step),
  status: "exact",
  from,
});

/** "24 x 64 in": two sides with one unit. */
const across = (w: Length, h: Length, f: Facts): string =>
  `${printLength(w, f.step)} x ${printWithUnit(h, f.step)}`;

function size(f: Facts): Question | undefined {
  const { quilt, blocks } = f;
  if (!quilt) return undefined;
  const whole = f.blocks.filter((b) => !b.id.includes("~"));
  const total = whole.reduce((sum, b) => sum + b.count, 0);
  const [first] = whole;
  const made =
    first === undefined
      ? `hexagons ${printWithUnit(quilt.pitch.y, f.step)} across flats, in halves`
      : `${counted(total, "block")} of ${isSquare(first) ? printWithUnit(first.width, f.step) : across(first.width, first.height, f)}`;
  const raw = across(quilt.width + 2 * f.seam, quilt.height + 2 * f.seam, f);
  return {
    id: "size",
    heading: "How big is it?",
    trade: "finished, all seams sewn",
    line: `${across(quilt.width, quilt.height, f)} finished: ${made}. Before the binding, ${raw}.${alsoAs(f)}`,
    doubt: false,
    margin: { caption: "exact" },
    from: ["quilt", ...blocks.map((b) => b.id)],
  };
}

/** " Also as runner, 6 by 2, 14.386 x 43.158 in": the other sizes of the design. */
function alsoAs(f: Facts): string {
  const each = f.sizes.map(({ name, plan }) =>
    [name, `${plan.rows} by ${plan.columns}`, across(plan.width, plan.height, f)].join(", "),
  );
  return each.length === 0 ? "" : ` Also as ${each.join("; ")}.`;
}

const isSquare = (b: AnswerBlock): boolean => Math.abs(b.width - b.height) < 1e-9;

const counted = (n: number, thing: string): string => `${n} ${thing}${n === 1 ? "" : "s"}`;

/** Worst first: blocked before thin before proved, then by least spare. */
export function coverOrder(f: Facts): { recipe: Recipe; piece: Piece }[] {
  const rank = { blocked: 0, thin: 1, proved: 2 } as const;
  return f.recipes
    .map((recipe) => ({ recipe, piece: f.pieces.find((p) => p.id === recipe.pieceId)! }))
    .sort((a, b) => rank[a.recipe.verdict] - rank[b.recipe.verdict] || a.recipe.w - b.recipe.w);
}

function cover(f: Facts): Question | undefined {
  if (f.recipes.length === 0) return undefined;
  const [worst] = coverOrder(f);
  const doubtful = coverOrder(f).filter(
    ({ recipe }) => recipe.verdict !== "proved" && !f.accepted.has(recipe.pieceId),
  );
  const base = { id: "cover", heading: "Does it cover?", trade: "cut sizes and spare" } as const;
  if (doubtful.length === 0) return { ...base, ...covered(worst, f), doubt: false };
  const { recipe, piece } = doubtful[0];
  const others = doubtful.length - 1;
  return {
    ...base,
    line: `Not ${nameOf(piece)}: ${fault(recipe, f)}.${others > 0 ? ` ${counted(others, "other piece")} in doubt.` : ""}`,
    doubt: true,
    because:
      recipe.smallest === undefined
        ? undefined
        : `${printWithUnit(recipe.smallest, f.step)} would cover.`,
    margin: { number: exact(recipe.w - f.seam, f, [recipe.pieceId]), caption: recipe.verdict },
    from: doubtful.map((d) => d.recipe.pieceId),
  };
}

const nameOf = (p: Piece): string => `${p.name} ${p.letter}`;

function fault(recipe: Recipe, f: Facts): string {
  if (recipe.reach < 0)
    return `its fabric stops ${printWithUnit(-recipe.reach, f.step)} short of the finished patch`;
  return `${printWithUnit(recipe.w, f.step)} of allowance where ${printWithUnit(f.seam, f.step)} is wanted`;
}

function covered(
  worst: { recipe: Recipe; piece: Piece },
  f: Facts,
): Pick<Question, "line" | "margin" | "from"> {
  const from = f.pieces.map((p) => p.id);
  const least = coverOrder(f)
    .filter(({ recipe }) => recipe.spare > 1e-9)
    .sort((a, b) => a.recipe.spare - b.recipe.spare)[0];
  if (!least)
    return {
      line: "Every piece: each is cut exactly to size, with nothing to spare.",
      margin: { number: exact(0, f, [worst.piece.id]), caption: "every edge is set" },
      from,
    };
  const { recipe, piece } = least;
  const exactly = coverOrder(f).filter((x) => x.recipe.spare <= 1e-9);
  const said =
    exactly.length === 0
      ? "Every piece. The"
      : `Every piece; ${exactly.length === 1 ? `${nameOf(exactly[0].piece)} is` : `${exactly.length} are`} cut exactly. Of the others the`;
  return {
    line: `${said} least to spare is ${printWithUnit(recipe.spare, f.step)}, at ${nameOf(piece)}.`,
    margin: { number: exact(recipe.spare, f, [piece.id]), caption: `to spare at ${piece.letter}` },
    from,
  };
}

/** Name of a fabric as the maker gave it. */
const fabricName = (id: string, f: Facts): string =>
  f.brief.fabrics.find((x) => x.id === id)?.name ?? id;

/** " Sew 3 sets of Tide bands." for fabrics that are sewn, not bought. */
function setsToSew(f: Facts): string {
  const sets = f.cutting.flatMap((c) =>
    c.sets ? [`${counted(c.sets, "set")} of ${fabricName(c.fabricId, f)}`] : [],
  );
  return sets.length === 0 ? "" : ` Sew ${sets.join(", ")}.`;
}

function enough(f: Facts): Question | undefined {
  const atStated = f.layouts.flatMap((l) =>
    f.yardages.filter((y) => y.fabricId === l.fabricId && y.width === l.width),
  );
  if (atStated.length === 0) return undefined;
  const toBuy = atStated.filter((y) => y.buy > 0);
  const list = toBuy.map((y) => `${fabricName(y.fabricId, f)} ${y.buyText}`).join(", ");
  const bought = f.layouts.filter((l) => atStated.some((y) => y.fabricId === l.fabricId));
  const saved = bought.reduce((sum, l) => sum + l.handbook - l.length, 0);
  const proven = f.layouts.every((l) => l.proven);
  return {
    id: "enough",
    heading: "Is there enough?",
    trade: "supplies",
    line: `${list === "" ? "Nothing to buy: the pieces in hand give it all." : `Buy ${list}.`}${setsToSew(f)}`,
    doubt: false,
    margin:
      saved > 1e-9
        ? {
            number: exact(
              saved,
              f,
              f.layouts.map((l) => l.fabricId),
            ),
            caption: "saved over one size a strip",
          }
        : { caption: proven ? "no plan uses less: proved" : "one size a strip" },
    from: atStated.map((y) => y.fabricId),
  };
}

function order(f: Facts): Question | undefined {
  if (f.units.length === 0 || f.blocks.length === 0) return undefined;
  const whole = f.blocks.filter((b) => !b.id.includes("~"));
  const sewn = whole.length > 0 ? whole : f.blocks;
  const several = sewn.length > 1;
  const ways = sewn.map((b) => ({ name: b.name, words: orderWords(b) }));
  const same = ways.every((w) => w.words === ways[0].words);
  const line =
    several && !same ? ways.map((w) => `${w.name}: ${w.words}`).join("; ") : ways[0].words;
  return {
    id: "order",
    heading: "In what order?",
    trade: "sewing order and pressing",
    line: `${line.charAt(0).toUpperCase()}${line.slice(1)}.`,
    doubt: false,
    margin: {
      caption: `${counted(
        f.units.reduce((n, u) => n + u.inAll, 0),
        "seam",
      )} in the blocks`,
    },
    from: f.blocks.map((b) => b.id),
  };
}

/** The order of one kind of block in a few words, read from its tree. */
function orderWords(b: AnswerBlock): string {
  if (!b.radial) return counted(b.patches.length - 1, "seam");
  const { n } = b.radial;
  const circle: Readonly<Record<number, string>> = {
    6: "a pair and one for each half",
    8: "pairs, then halves",
    10: "two pairs and one for each half",
    12: "pairs, then threes of them, then halves",
    16: "pairs, fours, then halves",
  };
  const round = `${circle[n] ?? "halves"}, then one long seam`;
  const corners = b.patches.some((p) => p.role === "corner");
  if (corners && b.choice.name === "corners-last") return `${round}, and the corners last`;
  if (corners && b.choice.name === "corners-first") return `corners onto their wedges, ${round}`;
  return round;
}

function measure(f: Facts): Question | undefined {
  if (f.blocks.length === 0 || !f.quilt) return undefined;
  const first = f.blocks.find((b) => !b.id.includes("~")) ?? f.blocks[0];
  const raw = first.width + 2 * f.seam;
  const flats = first.radial
    ? ` ${printWithUnit(first.radial.a + f.seam, f.step)} from the center to each raw edge of the wedges.`
    : "";
  return {
    id: "measure",
    heading: "What should it measure now?",
    trade: "stops",
    line: `Every block ${printWithUnit(raw, f.step)} unfinished.${flats}`,
    doubt: false,
    margin: { number: exact(raw, f, [first.id]), caption: "unfinished" },
    from: f.blocks.map((b) => b.id),
  };
}
