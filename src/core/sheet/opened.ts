import { fourLives } from "../picture/index.ts";
import { type Block, Column, paginate } from "./column.ts";
import { MEASURE, STYLES } from "./grid.ts";
import { drawn, pieceOf, type SheetJob, smallAt } from "./job.ts";
import { layoutBlocks } from "./layouts.ts";
import type { Item } from "./model.ts";
import type { Opened } from "./options.ts";
import { allSteps } from "./order.ts";
import { cutWords, spareSentence } from "./proofs.ts";
import { sewingBlocks } from "./sewing.ts";

/** What stands open, each question on sides of its own. */
export function openedPages(job: SheetJob, opened: readonly Opened[] = job.opened): Item[][] {
  const pages: Record<Opened, () => Item[][]> = {
    cover: () => paginate(livesBlocks(job), job.paper, 12),
    enough: () => paginate(layoutBlocks(job), job.paper, 12),
    measure: () => paginate(sewingBlocks(job, allSteps(job)), job.paper, 4),
  };
  return opened.flatMap((q) => pages[q]());
}

/** One piece on the fabric, cut, sewn and in the block; then how it is cut and what is to spare. */
function livesBlocks(job: SheetJob): Block[] {
  const recipes = [...job.answer.recipes].sort((a, b) =>
    (pieceOf(job, a.pieceId)?.letter ?? "") < (pieceOf(job, b.pieceId)?.letter ?? "") ? -1 : 1,
  );
  return recipes.flatMap((recipe, i): Block[] => {
    const piece = pieceOf(job, recipe.pieceId);
    const block = job.answer.blocks.find((b) => Object.values(b.pieceOf).includes(recipe.pieceId));
    const c = new Column();
    if (i === 0)
      c.question(
        "Does it cover?",
        "one piece, four lives: the same corner lit in each, one scale",
        "H1",
      );
    else c.rule();
    c.gap(5);
    if (!piece) return [];
    if (block) {
      const make = (scale: number) =>
        drawn(
          job,
          fourLives({
            block,
            piece,
            recipe,
            pieces: job.answer.pieces,
            looks: job.looks[block.id] ?? [],
            unit: job.brief.unit,
            seam: job.seam,
            small: smallAt(scale),
          }),
          scale,
          "color",
        );
      const guess = 90 / Math.max(block.width, block.height);
      const first = make(guess);
      const scale = guess * Math.min(1.5, (MEASURE - 60) / Math.max(1, first.width - 60));
      const drawing = make(scale);
      c.figure(drawing.width <= MEASURE ? drawing : first);
      c.gap(4);
    }
    c.paragraph(
      `**${piece.letter} ${piece.name}, ${piece.count} of them.** ${cutWords(job, recipe)} ${spareSentence(job, recipe)}`,
      STYLES.text,
    );
    return [c.block()];
  });
}
