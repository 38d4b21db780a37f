import type { PdfPoint } from "../measure/index.ts";
import { coverPicture, type Drawing } from "../picture/index.ts";
import type { Piece } from "../piece/index.ts";
import type { Cut, Mark as CutMark, Recipe } from "../recipe/index.ts";
import { type Block, beside, Column } from "./column.ts";
import { columnAt, columns } from "./grid.ts";
import { drawn, pieceOf, plural, type SheetJob, say, sayUnit, smallAt } from "./job.ts";

/** "Does it cover?": every piece inside what is really cut, at one scale, with what is to spare. */
export function proofBlocks(job: SheetJob, most = 116): Block[] {
  const head = new Column();
  head.question(
    "Does it cover?",
    "finished patch dashed, cut edge solid, lost fabric hatched; to one scale",
  );
  head.gap(3);
  const recipes = job.answer.recipes.flatMap((r) => {
    const piece = pieceOf(job, r.pieceId);
    return piece ? [{ recipe: r, piece }] : [];
  });
  recipes.sort((a, b) => a.piece.letter.localeCompare(b.piece.letter, "en", { numeric: true }));
  // A long border would shrink every other picture, and a rectangle needs none.
  const shaped = recipes.filter((r) => r.recipe.kind !== "rectangle");
  const plain = recipes.filter((r) => r.recipe.kind === "rectangle");
  const scale = oneScale(
    shaped.map((r) => r.recipe),
    most,
  );
  const rows: Block[] = [];
  for (let i = 0; i < shaped.length; i += 4) rows.push(rowOf(job, shaped.slice(i, i + 4), scale));
  if (plain.length > 0) rows.push(plainBlock(job, plain));
  const first = rows.shift();
  if (!first) return [head.block()];
  head.put(first);
  return [head.block(), ...rows];
}

interface Proved {
  readonly recipe: Recipe;
  readonly piece: Piece;
}

/** Pictures stand on one line, and what is said of them begins on one line below. */
function rowOf(job: SheetJob, list: readonly Proved[], scale: number): Block {
  const drawings = list.map(({ recipe, piece }) => proofDrawing(job, recipe, piece, scale));
  const high = Math.max(...drawings.map((d) => d.height));
  return beside(
    list.map(({ recipe, piece }, k) => {
      const c = new Column(columns(3));
      c.gap(high - drawings[k].height);
      c.figure(drawings[k]);
      c.gap(3);
      c.paragraph(
        `**${piece.letter} ${plural(piece.name)}.** ${cutWords(job, recipe)} ${spareSentence(job, recipe)}`,
      );
      return { x: columnAt(3 * k), block: c.block() };
    }),
  );
}

/** What is cut with two straight cuts each way: its size, and what is to spare, if anything. */
function plainBlock(job: SheetJob, list: readonly Proved[]): Block {
  const exact = list.filter((p) => p.recipe.verdict === "proved" && p.recipe.spare <= 1e-4);
  const others = list.filter((p) => !exact.includes(p));
  const c = new Column();
  if (exact.length > 0)
    c.paragraph(
      `**Squares and rectangles**, cut to their own lines, no spare and none needed: ${exact.map((p) => plainWords(job, p)).join("; ")}.`,
    );
  if (others.length > 0)
    c.paragraph(
      `**${exact.length > 0 ? "With more to trim" : "Squares and rectangles"}:** ${others.map((p) => `${plainWords(job, p)}: ${spareSentence(job, p.recipe).replace(/\.(\**)$/, "$1")}`).join("; ")}.`,
    );
  return c.block();
}

/** "A1 borders, each 3 × 41 1/2 in" */
function plainWords(job: SheetJob, { recipe, piece }: Proved): string {
  const sides = recipe.cuts.flatMap((cut) => cut.lengths).map((x) => say(job, x));
  const size = sides.length === 2 && sides[0] === sides[1] ? sides.slice(1) : sides;
  return `**${piece.letter}** ${plural(piece.name)}, each ${size.join(" × ")} ${job.brief.unit}`;
}

function oneScale(recipes: readonly Recipe[], most: PdfPoint): number {
  const sizes = recipes.flatMap((r) => {
    const xs = r.polygon.map((p) => p.x);
    const ys = r.polygon.map((p) => p.y);
    return [
      (Math.max(...xs) - Math.min(...xs)) / (columns(3) - 6),
      (Math.max(...ys) - Math.min(...ys)) / (most - 40),
    ];
  });
  return 1 / Math.max(...sizes);
}

function proofDrawing(job: SheetJob, recipe: Recipe, piece: Piece, scale: number): Drawing {
  const made = coverPicture(recipe, {
    unit: job.brief.unit,
    seam: job.seam,
    fabricId: piece.fabricId,
    name: `${piece.name} ${piece.letter}`,
    small: smallAt(scale),
    tapes: false,
    leftHanded: job.leftHanded && piece.hand === "none",
  });
  return drawn(job, made, scale);
}

/** How one piece is got, in a sentence. */
export function cutWords(job: SheetJob, recipe: Recipe): string {
  const slices = recipe.cuts.flatMap((c) => (c.op === "slice" && c.marks ? [c.marks] : []));
  const others = recipe.cuts.filter((c) => !(c.op === "slice" && c.marks));
  const sentences = others.map((cut) => wordsOfCut(job, cut));
  if (slices.length > 0) sentences.push(sliceWords(job, slices));
  return [...new Set(sentences)].join(" ");
}

/** Slices from mark to mark; a pair that mirrors itself is said once. */
function sliceWords(job: SheetJob, slices: readonly (readonly CutMark[])[]): string {
  const kinds = new Set(
    slices.map((marks) => [...marks.map((m) => say(job, m.at))].sort().join(" ")),
  );
  const [near, far] = [...slices[0]].sort((a, b) => a.at - b.at).map((m) => say(job, m.at));
  if (slices.length === 2 && kinds.size === 1)
    return `Mark ${near} from the square corner along both its edges, ${far} along the edges facing them; slice mark to mark.`;
  return slices
    .map(
      (marks) =>
        `Slice from ${marks.map((m) => `${say(job, m.at)} on the ${m.side}`).join(" to ")}.`,
    )
    .join(" ");
}

function wordsOfCut(job: SheetJob, cut: Cut): string {
  const l = cut.lengths.map((x) => say(job, x));
  const unit = job.brief.unit;
  switch (cut.op) {
    case "strip":
      return `From a ${l[0]} ${unit} strip.`;
    case "square":
      return `From a ${l[0]} ${unit} square.`;
    case "rectangle":
      return `From a ${l.join(" × ")} ${unit} rectangle.`;
    case "crosscut":
      return `Cut every ${l[0]} ${unit}.`;
    case "wedge":
      return `Outer edge ${l[0]}, point ${cut.lengths[1] > 1e-9 ? `${l[1]} wide` : "sharp"}.`;
    case "slant":
      return `On the slant, ${l[0]} along the lower edge.`;
    case "once":
      return "Cut once, corner to corner.";
    case "twice":
      return "Cut twice, corner to corner.";
    case "slice":
      return `Slice ${l[0]} from the point.`;
    case "template":
      return "By its template.";
  }
}

/** What the proof says of it. */
export function spareSentence(job: SheetJob, recipe: Recipe): string {
  if (recipe.verdict === "blocked")
    return recipe.reach < 0
      ? `~~Does not cover~~: ${sayUnit(job, -recipe.reach)} short of the patch.`
      : `~~Does not cover~~: only ${sayUnit(job, recipe.w)} of allowance.`;
  if (recipe.verdict === "thin")
    return `~~Thin~~: ${sayUnit(job, recipe.w)} of allowance where ${sayUnit(job, job.seam)} is wanted.`;
  const exact = recipe.spareBySide.every((s) => s.spare <= 1e-4);
  if (recipe.spare <= 1e-4 || (exact && recipe.kind === "wedge"))
    return "Cut to its line: no spare, none needed.";
  return `**${sayUnit(job, recipe.spare)} to spare${exact ? " at the point" : ""}.**`;
}
