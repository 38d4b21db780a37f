import type { PdfPoint } from "../../measure/index.ts";
import { type Block, Column, paginate, withFeet } from "../column.ts";
import { footWords } from "../foot.ts";
import { STYLES } from "../grid.ts";
import { sentenceSpans } from "../head.ts";
import type { SheetJob } from "../job.ts";
import type { Sheet } from "../model.ts";

/** The side of a box to tick. */
export const TICK: PdfPoint = 10;

/** A block with a box to tick at its left, on its first line. */
export const withBox = (block: Block, x: PdfPoint = 0): Block => ({
  ...block,
  items: [...block.items, { kind: "box", x, y: 2.6, width: TICK, height: TICK, line: 0.6 }],
});

/** The head of a sheet for the shop or the class: its question, the trade's word, the whole job. */
export function headOf(job: SheetJob, question: string, trade: string): Block {
  const c = new Column();
  c.gap(4);
  c.question(question, `${job.brief.title}: ${trade}`, "H1");
  c.gap(2);
  c.paragraph(sentenceSpans(job), STYLES.soft);
  return c.block();
}

/** A section under its question. */
export function section(question: string, trade: string, fill: (c: Column) => void): Block {
  const c = new Column();
  c.question(question, trade);
  c.gap(2);
  fill(c);
  return { ...c.block(), before: 16 };
}

/** Lines one below the other, each its own paragraph. */
export function lines(c: Column, texts: readonly string[]): void {
  for (const text of texts) {
    c.paragraph(text);
    c.gap(2);
  }
}

export function sheetOf(
  job: SheetJob,
  name: string,
  what: string,
  blocks: readonly Block[],
): Sheet {
  const capital = what.charAt(0).toUpperCase() + what.slice(1);
  return {
    title: `${job.brief.title}: ${what}`,
    name,
    language: "en-US",
    pages: withFeet(paginate(blocks, job.paper, 4), job.paper, footWords(job), (i, of) =>
      of > 1 ? `${capital}, ${i + 1} of ${of}` : capital,
    ),
  };
}
