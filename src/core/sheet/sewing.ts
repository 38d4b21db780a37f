import { topSteps } from "../answer/index.ts";
import type { PdfPoint } from "../measure/index.ts";
import { halfPicture } from "../picture/index.ts";
import { type Block, Column, paginate, withFeet } from "./column.ts";
import { finishSteps } from "./finishSteps.ts";
import { footWords } from "./foot.ts";
import { columnAt, columns, STYLES } from "./grid.ts";
import { drawn, type SheetJob, sayMeasured, smallAt, trueScale } from "./job.ts";
import type { Sheet } from "./model.ts";
import { allSteps, nextStep, stepDrawing } from "./order.ts";
import type { SewStep } from "./steps.ts";
import { setLine } from "./text.ts";

/** The sewing card: every step with its picture, and every width to check, unfinished and finished. */
export function sewingSheet(job: SheetJob): Sheet {
  const steps = allSteps(job);
  return {
    title: `${job.brief.title}: sewing card`,
    name: "sewing",
    language: "en-US",
    pages: withFeet(
      paginate(sewingBlocks(job, steps), job.paper, 4),
      job.paper,
      footWords(job),
      (i, of) => (of > 1 ? `Sewing card, ${i + 1} of ${of}` : "Sewing card"),
    ),
  };
}

export function sewingBlocks(job: SheetJob, steps: readonly SewStep[]): Block[] {
  const head = new Column();
  head.question("What should it measure now?", "every stop, unfinished and finished", "H1");
  head.gap(2);
  head.paragraph(
    "Measure after pressing. A unit that is off by more than a thread goes no further: see which seam is wide.",
    STYLES.soft,
  );
  return [
    head.block(),
    ...steps.map((s) => stepBlock(job, s)),
    ...rowBlocks(job),
    lastBlock(job, nextStep(job, steps)),
  ];
}

function stepBlock(job: SheetJob, step: SewStep): Block {
  const c = new Column();
  c.rule();
  c.gap(4);
  const top = c.y;
  const widest = Math.max(step.block.width, step.block.height) + 2 * job.seam;
  const scale = Math.min((trueScale(job) * 7) / 72, 76 / widest);
  const drawing = stepDrawing(job, step, scale);
  c.add({ kind: "figure", alt: drawing.title, x: 0, y: top, drawing });
  const x = columnAt(3);
  const number = setLine(String(step.number), STYLES.step, x, top + 14);
  const name = setLine(
    `${step.name}, ${step.block.name}`,
    STYLES.name,
    x + number.width + 6,
    top + 14,
  );
  c.add({ kind: "text", role: "H2", glyphs: [...number.glyphs, ...name.glyphs] });
  c.y = top + 19;
  c.paragraph(step.words, STYLES.text, { x, width: columns(4) + 20 });
  const wordsEnd = c.y;
  c.y = top + 2;
  const right = columnAt(8) - 12;
  const width = columns(4) + 12;
  if (step.stop.number !== "") c.stop(step.stop.number, step.stop.how, right, width);
  for (const line of otherWidths(job, step)) c.paragraph(line, STYLES.small, { x: right, width });
  const stopEnd = c.y;
  c.y = wordsEnd;
  if (step.unit.straightEdge && step.seamIds.length > 0) straightEdge(job, step, c, x);
  c.y = Math.max(c.y, stopEnd, top + drawing.height) + 3;
  return c.block();
}

/** What a half that is not straight shows against a straight edge, both ways. */
function straightEdge(job: SheetJob, step: SewStep, c: Column, x: PdfPoint): void {
  const { width, height } = step.block;
  const scale = HALF_WIDE / (Math.max(width, height) + 2 * job.seam);
  const made = halfPicture(step.block, step.unit, {
    unit: job.brief.unit,
    seam: job.seam,
    small: smallAt(scale),
    beside: true,
  });
  const drawing = drawn(job, made, scale);
  c.y += 3;
  c.add({ kind: "figure", alt: drawing.title, x, y: c.y, drawing });
  c.y += drawing.height;
}

const HALF_WIDE: PdfPoint = 60;

/** Every other width a ruler can take, and the finished size of the one to check. */
function otherWidths(job: SheetJob, step: SewStep): string[] {
  const { measure } = step.stop;
  if (step.squareUp && step.seamIds.length === 0) return [];
  const lines = measure ? [`finished ${sayMeasured(job, measure.finished)}`] : [];
  const others = step.unit.measures.filter((m) => m !== measure && m.kind !== "corner").slice(0, 2);
  for (const m of others)
    lines.push(
      `also ${m.name.replace(/ \d+$/, "")} ${sayMeasured(job, m.unfinished)}, finished ${sayMeasured(job, m.finished)}`,
    );
  return lines;
}

/** The top row by row, as the page tells it; a line to each kind of row, so that long tops may run on. */
function rowBlocks(job: SheetJob): Block[] {
  const made = topSteps(job.brief, job.answer);
  if (!made) return [];
  const lines = [
    ...made.steps.map((s) => `${s.name}: ${s.holds}${s.press === "" ? "" : `; ${s.press}`}.`),
    ...made.lines,
  ];
  return lines.map((line, i) => {
    const c = new Column();
    if (i === 0) {
      c.rule();
      c.gap(4);
      c.paragraph("**The top, row by row.**", STYLES.text);
    }
    c.paragraph(line, STYLES.text, { width: columns(10) });
    return c.block();
  });
}

function lastBlock(job: SheetJob, first: number): Block {
  const c = new Column();
  c.rule(0.6, "ink");
  c.gap(4);
  for (const step of finishSteps(job, first)) {
    const top = c.y;
    c.paragraph(step.words, STYLES.text, { width: columns(7) });
    const end = c.y;
    c.y = top;
    if (step.stop) c.stop(step.stop, step.how ?? "", columnAt(8) - 12, columns(4) + 12);
    c.y = Math.max(end, c.y) + 5;
  }
  return c.block();
}
