import { boundingBox } from "../geometry/index.ts";
import { type Drawing, unitPicture } from "../picture/index.ts";
import { type Block, Column } from "./column.ts";
import { columnAt, columns, STYLES } from "./grid.ts";
import { drawn, pieceOf, type SheetJob, smallAt, trueScale } from "./job.ts";
import { type SewStep, stepsOf } from "./steps.ts";
import { setLine, setText } from "./text.ts";

/** Steps of every kind of block in use, numbered on through the sheet. */
export function allSteps(job: SheetJob): SewStep[] {
  const out: SewStep[] = [];
  for (const block of job.answer.blocks)
    if (block.count > 0) out.push(...stepsOf(job, block, out.length + 1));
  return out;
}

/** "In what order?": a matrix of steps, four to a row, one scale throughout. */
export function orderBlocks(
  job: SheetJob,
  steps: readonly SewStep[] = allSteps(job),
  most = 11,
): Block[] {
  const blocks: Block[] = [];
  const scale = stepScale(job, most);
  const kinds = [...new Set(steps.map((s) => s.block))];
  kinds.forEach((block, k) => {
    const own = steps.filter((s) => s.block === block);
    for (let i = 0; i < own.length; i += 4) {
      const c = new Column();
      if (k === 0 && i === 0) {
        c.question(
          "In what order?",
          "one scale, right sides up; solid: cut edge, dashed: seam, heavy: this step's seam, arrow: pressing",
        );
        c.gap(2);
      }
      if (i === 0) {
        if (k > 0) {
          c.rule();
          c.gap(2);
        }
        c.paragraph(`${block.name} block, ${block.count} of them`, STYLES.name, { role: "H3" });
        c.gap(2);
      }
      c.put(rowOf(job, own.slice(i, i + 4), scale));
      blocks.push(c.block());
    }
  });
  return blocks;
}

/** One scale for all cells, at most `most` points to the inch. */
function stepScale(job: SheetJob, most: number): number {
  const widest = Math.max(
    ...job.answer.blocks.map((b) => Math.max(b.width, b.height) + 2 * job.seam),
  );
  const room = columns(3) - 24;
  return Math.min((trueScale(job) * most) / 72, room / widest);
}

export function stepDrawing(job: SheetJob, step: SewStep, scale: number): Drawing {
  const { block, unit } = step;
  const letter = (id: string): string | undefined => pieceOf(job, block.pieceOf[id] ?? "")?.letter;
  const small = smallAt(scale);
  const made = unitPicture(block, unit, {
    unit: job.brief.unit,
    seam: job.seam,
    pieces: job.answer.pieces,
    looks: job.looks[block.id],
    letters: (p) => {
      const box = boundingBox(p.polygon);
      const room = Math.min(box.right - box.left, box.top - box.bottom);
      return room > 1.2 * small ? letter(p.id) : undefined;
    },
    small,
    steps: step.seamIds,
    ...(step.stop.measure ? { measure: step.stop.measure } : {}),
    ...(step.squareUp ? { squareUp: step.squareUp } : {}),
    title: `Step ${step.number}, ${block.name}: ${step.name.toLowerCase()}`,
    leftHanded: job.leftHanded,
  });
  return drawn(job, made, scale);
}

/** Number and name, diagram, words, stop: each begins on the same line across the row. */
function rowOf(job: SheetJob, steps: readonly SewStep[], scale: number): Block {
  const c = new Column();
  const width = columns(3);
  const drawings = steps.map((s) => stepDrawing(job, s, scale));
  const high = Math.max(...drawings.map((d) => d.height));
  const words = steps.map((s) => setText(s.words, STYLES.text, 0, 0, width));
  const wordsHigh = Math.max(...words.map((w) => w.height));
  const top = c.y;
  let lowest = top;
  steps.forEach((step, i) => {
    const x = columnAt(3 * i);
    const number = setLine(String(step.number), STYLES.step, x, top + 15);
    const name = setLine(step.name, STYLES.name, x + number.width + 6, top + 15);
    c.add({ kind: "text", role: "H3", glyphs: [...number.glyphs, ...name.glyphs] });
    c.y = top + 20 + (high - drawings[i].height) / 2;
    c.figure(drawings[i], x);
    c.y = top + 20 + high + 4;
    c.paragraph(step.words, STYLES.text, { x, width });
    if (step.stop.number !== "") {
      c.y = top + 20 + high + 4 + wordsHigh + 7;
      c.stop(step.stop.number, step.stop.how, x, width);
    }
    lowest = Math.max(lowest, c.y);
  });
  c.y = lowest;
  return c.block();
}
