import { boundingBox } from "../geometry/index.ts";
import type { PdfPoint } from "../measure/index.ts";
import { type Drawing, type Mark, picture, rectangle, unitPicture } from "../picture/index.ts";
import { blockName } from "./block-words.ts";
import { type Block, Column } from "./column.ts";
import { columnAt, columns, STYLES } from "./grid.ts";
import { drawn, pieceOf, type SheetJob, smallAt, trueScale } from "./job.ts";
import { type SetStep, type SewStep, type StepWords, setSteps, stepsOf } from "./steps.ts";
import { setLine, setText } from "./text.ts";

/** Steps of every kind of block in use, numbered on through the sheet. */
export function allSteps(job: SheetJob): SewStep[] {
  const out: SewStep[] = [];
  const before = setSteps(job).length;
  for (const block of job.answer.blocks)
    if (block.count > 0) out.push(...stepsOf(job, block, before + out.length + 1));
  return out;
}

/** The number of the first step after all blocks are sewn. */
export const nextStep = (job: SheetJob, steps: readonly SewStep[]): number =>
  setSteps(job).length +
  steps.reduce((most, s) => Math.max(most, s.number - setSteps(job).length), 0) +
  1;

/** "In what order?": a matrix of steps, four to a row, one scale throughout. */
export function orderBlocks(
  job: SheetJob,
  steps: readonly SewStep[] = allSteps(job),
  most: PdfPoint = 104,
): Block[] {
  const blocks: Block[] = [];
  const scale = stepScale(job, most);
  const kinds = [...new Set(steps.map((s) => s.block))];
  const head = new Column();
  head.question(
    "In what order?",
    "one scale, right sides up; solid: cut edge, dashed: seam, heavy: this step's seam, arrow: pressing",
  );
  head.gap(2);
  const sets = setSteps(job);
  if (sets.length > 0) {
    for (const set of sets) head.put(setBlock(set, setDrawing(job, set)));
    blocks.push(head.block());
  }
  kinds.forEach((block, k) => {
    const own = steps.filter((s) => s.block === block);
    for (let i = 0; i < own.length; i += 4) {
      const c = new Column();
      if (k === 0 && i === 0 && sets.length === 0) c.put(head.block());
      if (i === 0) {
        if (k > 0 || sets.length > 0) {
          c.rule();
          c.gap(2);
        }
        c.paragraph(`${blockName(block, 1)}, ${block.count} of them`, STYLES.name, { role: "H3" });
        c.gap(2);
      }
      c.put(rowOf(own.slice(i, i + 4).map((t) => ({ ...t, drawing: stepDrawing(job, t, scale) }))));
      blocks.push(c.block());
    }
  });
  return blocks;
}

/** One scale for all cells, the largest block `most` points wide or high. */
function stepScale(job: SheetJob, most: PdfPoint): number {
  const widest = Math.max(
    ...job.answer.blocks.map((b) => Math.max(b.width, b.height) + 2 * job.seam),
  );
  return Math.min(trueScale(job) / 5, most / widest);
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
  });
  return drawn(job, made, scale);
}

/** The strips of a set, to scale and lettered, over a short stretch of its length. */
function setDrawing(job: SheetJob, step: SetStep): Drawing {
  const look = job.swatches[step.fabricId]?.look;
  const bands = look?.kind === "bands" ? look.bands : [];
  const high = bands[bands.length - 1]?.to ?? 1;
  const scale = 64 / high;
  const wide = 100 / scale;
  const small = smallAt(scale);
  const marks: Mark[] = [
    {
      kind: "shape",
      polygon: rectangle(0, 0, wide, high),
      fill: { kind: "fabric", fabricId: step.fabricId },
    },
    ...bands.slice(1).map(
      (b): Mark => ({
        kind: "line",
        line: "seam",
        points: [
          { x: 0, y: b.from },
          { x: wide, y: b.from },
        ],
      }),
    ),
    { kind: "shape", polygon: rectangle(0, 0, wide, high), line: "cut" },
    ...bands.map(
      (b): Mark => ({
        kind: "text",
        at: { x: wide / 2, y: (b.from + b.to) / 2 - 0.33 * small },
        text: job.swatches[b.fabricId]?.letter ?? "",
        size: 1,
        anchor: "middle",
        weight: "bold",
        tone: "on-fabric",
      }),
    ),
  ];
  const made = picture({
    title: `Step ${step.number}: strips of set ${job.swatches[step.fabricId]?.letter}`,
    unit: job.brief.unit,
    box: { left: 0, right: wide, bottom: 0, top: high },
    marks,
    small,
  });
  return drawn(job, made, scale);
}

/** A strip set lies beside its words, which are few. */
function setBlock(step: SetStep, drawing: Drawing): Block {
  const c = new Column();
  const x = columnAt(3);
  const number = setLine(String(step.number), STYLES.step, x, 15);
  const name = setLine(step.name, STYLES.name, x + number.width + 6, 15);
  c.add({ kind: "text", role: "H3", glyphs: [...number.glyphs, ...name.glyphs] });
  c.y = 4;
  c.figure(drawing);
  const low = c.y;
  c.y = 20;
  c.paragraph(step.words, STYLES.text, { x });
  c.gap(5);
  c.stop(step.stop.number, step.stop.how, x);
  c.y = Math.max(low, c.y) + 4;
  return c.block();
}

interface SetCell extends StepWords {
  readonly drawing: Drawing;
}

/** Number and name, diagram, words, stop: each begins on the same line across the row. */
function rowOf(steps: readonly SetCell[]): Block {
  const c = new Column();
  const width = columns(3);
  const high = Math.max(...steps.map((s) => s.drawing.height));
  const wordsHigh = Math.max(
    ...steps.map((s) => setText(s.words, STYLES.text, 0, 0, width).height),
  );
  const top = c.y;
  let lowest = top;
  steps.forEach((step, i) => {
    const x = columnAt(3 * i);
    const number = setLine(String(step.number), STYLES.step, x, top + 15);
    const name = setLine(step.name, STYLES.name, x + number.width + 6, top + 15);
    c.add({ kind: "text", role: "H3", glyphs: [...number.glyphs, ...name.glyphs] });
    c.y = top + 20 + (high - step.drawing.height) / 2;
    c.figure(step.drawing, x);
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
