import { applyTo, centroid } from "../geometry/index.ts";
import type { PdfPoint } from "../measure/index.ts";
import type { Drawing } from "../picture/index.ts";
import { type Mark, picture, rectangle } from "../picture/index.ts";
import { backingDrawing } from "./backing.ts";
import { kindName } from "./block-words.ts";
import { type Block, Column } from "./column.ts";
import { type FinishStep, finishSteps } from "./finishSteps.ts";
import { columnAt, columns, STYLES } from "./grid.ts";
import { drawn, type SheetJob, smallAt } from "./job.ts";

/**
 * "And then?": rows, borders, finishing, cautions. The map of the blocks holds the left third, its
 * steps the rest; few and short ones leave a wide quilt half the sheet.
 */
export function finishBlock(job: SheetJob, first: number, mapHeight: PdfPoint = 130): Block {
  const c = new Column();
  c.question("And then?", "layout, borders, finishing");
  const top = c.y + 4;
  const steps = finishSteps(job, first);
  const { quilt } = job.answer;
  const wide = quilt !== undefined && quilt.width > 1.6 * quilt.height && steps.length <= 2;
  const mapWide = columns(wide ? 6 : 4);
  c.y = top;
  const map = rowsDrawing(job, mapWide, mapHeight);
  if (map) {
    c.figure(map);
    c.gap(4);
    c.paragraph(mapWords(job), STYLES.soft, { width: mapWide });
  }
  let lowest = c.y;
  const width = columns(wide ? 3 : 4);
  // Many steps go on below the map; few stand beside it.
  const under = steps.length > 2;
  const starts = wide ? [6, 9] : under ? [0, 4, 8] : [4, 8];
  const from = starts.map((start) => (start === 0 ? c.y + 10 : top));
  const set = steps.map((step) => stepBlock(job, step, width));
  const turns = turnsOf(
    set.map((b) => b.height + STEP_GAP),
    from,
  );
  starts.forEach((start, k) => {
    c.y = from[k];
    for (const block of set.slice(turns[k], turns[k + 1])) {
      c.put(block, columnAt(start));
      c.gap(STEP_GAP);
    }
    if (turns[k + 1] > turns[k]) lowest = Math.max(lowest, c.y - STEP_GAP);
  });
  c.y = lowest + 8;
  c.paragraph(CAUTION);
  return c.block();
}

const STEP_GAP: PdfPoint = 8;

function stepBlock(job: SheetJob, step: FinishStep, width: PdfPoint): Block {
  const c = new Column(width);
  c.paragraph(step.words);
  c.gap(4);
  const backing = step.backing ? backingDrawing(job, width - 44, 84) : undefined;
  if (backing) {
    c.figure(backing);
    c.gap(6);
  }
  if (step.stop) c.stop(step.stop, step.how ?? "");
  return c.block();
}

/**
 * Where each column begins and the last ends, in steps: of all ways to part them in order, the one
 * whose lowest column ends highest.
 */
function turnsOf(heights: readonly PdfPoint[], from: readonly PdfPoint[]): number[] {
  const low = (turns: readonly number[]): PdfPoint =>
    Math.max(
      ...from.map((y, k) =>
        heights
          .slice(turns[k], turns[k + 1])
          .reduce((sum, h) => sum + h, turns[k] < turns[k + 1] ? y : 0),
      ),
    );
  const ways = (k: number, at: number): number[][] =>
    k === from.length - 1
      ? [[at, heights.length]]
      : Array.from({ length: heights.length - at + 1 }, (_, i) => at + i).flatMap((next) =>
          ways(k + 1, next).map((rest) => [at, ...rest]),
        );
  return ways(0, 0).reduce((best, way) => (low(way) < low(best) - 0.01 ? way : best));
}

/** Plain, and no more than the makers of the tools say themselves. */
const CAUTION =
  "**Take care.** Close the rotary cutter after every cut; cut away from yourself, with your fingers off the ruler's edge. Press the iron down and lift it, never push it along a slanted edge; set it on its heel, away from the mat. Take out pins before the needle. The makers' own instructions for cutter, iron and machine come first.";

/** A letter for each kind of block: its first, or its place in the list where two begin alike. */
export function blockLetters(job: SheetJob): Readonly<Record<string, string>> {
  const { blocks } = job.answer;
  const initials = blocks.map((b) => b.name.charAt(0).toUpperCase());
  const distinct = new Set(initials).size === initials.length;
  return Object.fromEntries(blocks.map((b, i) => [b.id, distinct ? initials[i] : String(i + 1)]));
}

/** The blocks by letter, row by row. */
function rowsDrawing(job: SheetJob, room: PdfPoint, most: PdfPoint): Drawing | undefined {
  const { quilt } = job.answer;
  if (!quilt) return undefined;
  const scale = Math.min(room / quilt.width, most / quilt.height);
  const letters = blockLetters(job);
  const small = smallAt(scale);
  const marks: Mark[] = [];
  const outline = rectangle(-quilt.width / 2, -quilt.height / 2, quilt.width, quilt.height);
  for (const p of job.between) marks.push({ kind: "shape", polygon: p.polygon, line: "rule" });
  for (const p of job.placed) {
    const block = job.answer.blocks.find((b) => b.id === p.blockId);
    if (!block) continue;
    marks.push({
      kind: "group",
      at: p.at,
      marks: [{ kind: "shape", polygon: block.outline, line: "seam" }],
    });
    const size = Math.min(block.width, block.height) / small;
    // A half lies beside the center of its block, not about it.
    const middle = applyTo(p.at, centroid(block.outline));
    const square = block.outline.length === 4;
    const fits = square ? block.width / small > 0.25 + 0.6 * letters[p.blockId].length : size > 1.1;
    if (fits && block.height / small > 1.1)
      marks.push({
        kind: "text",
        at: { x: middle.x, y: middle.y - 0.4 * small * 1.2 },
        text: letters[p.blockId],
        size: size > 1.6 ? 1.2 : 1,
        anchor: "middle",
        weight: "bold",
      });
  }
  marks.push({ kind: "shape", polygon: outline, line: "cut" });
  const made = picture({
    title: `Where each block lies: ${quilt.rows} rows of ${quilt.columns}`,
    unit: job.brief.unit,
    box: {
      left: -quilt.width / 2,
      right: quilt.width / 2,
      bottom: -quilt.height / 2,
      top: quilt.height / 2,
    },
    marks,
    small,
    edges: { left: 0.1 * small, right: 0.1 * small, top: 0.1 * small, bottom: 0.1 * small },
  });
  return drawn(job, made, scale);
}

function mapWords(job: SheetJob): string {
  const letters = blockLetters(job);
  const kinds = job.answer.blocks
    .filter((b) => b.count > 0)
    .map((b) => `${letters[b.id]}: ${kindName(b)}, ${b.count}`);
  return `${kinds.join("; ")}. ${turnWords(job)}`;
}

/** How an arrangement turns every block. */
const LAID = { rows: 0, "on-point": Math.PI / 4, "hexagon-rows": Math.PI / 2 } as const;

/** Which blocks lie otherwise than all the others do in this arrangement. */
function turnWords(job: SheetJob): string {
  const usual = LAID[job.answer.quilt?.arrangement ?? "rows"];
  const turned = job.placed.some((p) => Math.abs(p.at.turn - usual) > 1e-9);
  const mirrored = job.placed.some((p) => p.at.mirrored);
  const ways = [...(turned ? ["turned"] : []), ...(mirrored ? ["mirrored"] : [])];
  return ways.length === 0
    ? "No block is turned."
    : `Some blocks are ${ways.join(" or ")}: follow the picture.`;
}
