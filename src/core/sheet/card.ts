import { turnsOver } from "../answer/index.ts";
import { moving } from "../geometry/index.ts";
import type { Demand, FabricLayout, Strip } from "../layout/types.ts";
import type { PdfPoint } from "../measure/index.ts";
import {
  cellMarks,
  type Drawing,
  leftHanded,
  type Mark,
  picture,
  rectangle,
} from "../picture/index.ts";
import { blockName } from "./block-words.ts";
import { type Block, beside, Column, paginate, withFeet } from "./column.ts";
import { wanted } from "./cutting.ts";
import { blockLetters } from "./finish.ts";
import { footWords } from "./foot.ts";
import { columns, MEASURE, STYLES } from "./grid.ts";
import { drawn, fabricLetter, fabricName, pieceOf, type SheetJob, say, sayUnit } from "./job.ts";
import type { Item, Sheet } from "./model.ts";
import { type SewStep, setSteps, stepsOf } from "./steps.ts";
import { fabricsInUse } from "./supplies.ts";
import { setLine } from "./text.ts";

const STRIP = { left: 34, width: 276 } as const;
const AXIS = { gives: 338, soFar: 378, want: 418 } as const;
const STOP = 437;

/** The cutting-table card: strips as tally boxes, running counts, stops; then a tally for each block. */
export function cardSheet(job: SheetJob): Sheet {
  const blocks = [
    headBlock(job),
    ...fabricsInUse(job).flatMap((id) => fabricBlocks(job, id)),
    ...tallies(job),
  ];
  return {
    title: `${job.brief.title}: cutting-table card`,
    name: "card",
    language: "en-US",
    pages: withFeet(paginate(blocks, job.paper, 0), job.paper, footWords(job), (i, of) =>
      of > 1 ? `Cutting-table card, ${i + 1} of ${of}` : "Cutting-table card",
    ),
  };
}

function headBlock(job: SheetJob): Block {
  const c = new Column();
  c.question(
    "How far have I got?",
    `${job.brief.title}, cutting table: tick inside each piece as it is cut`,
    "H1",
  );
  const y = c.y + 8;
  const head = (
    text: string,
    x: PdfPoint,
    align: "start" | "end",
    color: "soft" | "accent" = "soft",
  ) => setLine(text, { ...STYLES.small, color }, x, y, align).glyphs;
  c.add({
    kind: "text",
    role: "Note",
    glyphs: [
      ...head("strip", STRIP.left, "start"),
      ...head("gives", AXIS.gives, "end"),
      ...head("so far", AXIS.soFar, "end"),
      ...head("want", AXIS.want, "end"),
      ...head("stop", STOP, "start", "accent"),
    ],
  });
  c.y = y + 5;
  return c.block();
}

/** Copies and pieces cut so far, by demand. */
type Tally = Map<string, number>;

/** Strips one below the other; the stops run down beside them at their own pace. */
function fabricBlocks(job: SheetJob, fabricId: string): Block[] {
  const layout = job.answer.layouts.find((l) => l.fabricId === fabricId);
  if (!layout) return [];
  const tally: Tally = new Map();
  const shown = new Set<string>();
  const blocks: Block[] = [];
  let c = new Column();
  let stopsEnd = 0;
  c.rule(0.6, "ink");
  named(job, c, fabricId);
  const strips = layout.strips.flatMap((s) => Array<Strip>(s.times).fill(s));
  for (const strip of strips) {
    if (c.y > CHUNK) {
      blocks.push({ ...c.block(), height: Math.max(c.y, stopsEnd) });
      c = new Column();
      stopsEnd = 0;
    }
    const top = c.y + 3;
    const stop = stopFor(job, strip, shown);
    if (stop) {
      c.y = Math.max(top, stopsEnd) + 1;
      c.stop(stop[0], stop[1], STOP, c.width - STOP);
      stopsEnd = c.y + 3;
    }
    c.y = top;
    stripRow(job, c, layout, strip, tally);
  }
  blocks.push({ ...c.block(), height: Math.max(c.y, stopsEnd) });
  return blocks;
}

/** A fabric with more strips than this is parted, so that it can go on to the next sheet. */
const CHUNK: PdfPoint = 130;

function named(job: SheetJob, c: Column, fabricId: string): void {
  const letter = setLine(fabricLetter(job, fabricId), STYLES.step, 0, c.y + 17);
  c.add({ kind: "text", role: "H2", glyphs: letter.glyphs });
  const name = setLine(fabricName(job, fabricId), STYLES.small, STRIP.left, c.y + 11);
  c.add({ kind: "text", role: "Note", glyphs: name.glyphs });
  c.y += 12;
}

/** What to measure at this strip: said once, where a shape is cut for the first time. */
function stopFor(
  job: SheetJob,
  strip: Strip,
  shown: Set<string>,
): readonly [string, string] | undefined {
  const run = strip.runs.find((r) => !shown.has(r.demandId));
  if (!run) return undefined;
  shown.add(run.demandId);
  const demand = job.answer.demands.find((d) => d.id === run.demandId);
  if (!demand) return undefined;
  const { first, height, kind } = demand.shape;
  if (run.segment)
    return [`${say(job, height)} ${job.brief.unit} wide`, `joined to ${sayUnit(job, first)}`];
  if (kind === "nested") return [sayUnit(job, height), `edge to edge, ${demand.count} of them`];
  const square = Math.abs(first - height) < 1e-9;
  return square
    ? [sayUnit(job, height), `square, ${demand.count} of them`]
    : [`${say(job, height)} × ${sayUnit(job, first)}`, `${demand.count} of them`];
}

function stripRow(
  job: SheetJob,
  c: Column,
  layout: FabricLayout,
  strip: Strip,
  tally: Tally,
): void {
  const top = c.y;
  const drawing = stripDrawing(job, layout, strip);
  c.add({ kind: "figure", alt: drawing.title, x: STRIP.left, y: top, drawing });
  const middle = top + drawing.height / 2 + 4;
  const ids = [...new Set(strip.runs.map((r) => r.demandId))];
  ids.forEach((id, i) => {
    const demand = job.answer.demands.find((d) => d.id === id);
    if (!demand) return;
    const y = middle + (i - (ids.length - 1) / 2) * 12;
    c.add({ kind: "text", role: "P", glyphs: countGlyphs(job, strip, demand, tally, y) });
  });
  c.y = top + Math.max(drawing.height, 12 * ids.length) + 2;
}

function countGlyphs(job: SheetJob, strip: Strip, demand: Demand, tally: Tally, y: PdfPoint) {
  const letters =
    demand.pieceIds.map((id) => pieceOf(job, id)?.letter ?? id.slice(0, 4)).join(" ") || "set";
  const name = setLine(letters, STYLES.strong, STRIP.left - 5, y, "end").glyphs;
  const runs = strip.runs.filter((r) => r.demandId === demand.id);
  if (runs.some((r) => r.segment)) return name;
  const gives = strip.layers * runs.reduce((sum, r) => sum + r.copies, 0) * demand.piecesEach;
  const before = tally.get(demand.id) ?? 0;
  const soFar = before + gives;
  tally.set(demand.id, soFar);
  const want = wanted(job, demand);
  const done = soFar >= want && before < want;
  return [
    ...name,
    ...setLine(String(gives), STYLES.total, AXIS.gives, y, "end").glyphs,
    ...setLine(String(soFar), STYLES.totalBold, AXIS.soFar, y, "end").glyphs,
    ...(done
      ? setLine(String(want), { ...STYLES.total, color: "soft" }, AXIS.want, y, "end").glyphs
      : []),
  ];
}

/** One strip to scale, empty, so that each piece is its own tick box. */
function stripDrawing(job: SheetJob, layout: FabricLayout, strip: Strip): Drawing {
  const scale = STRIP.width / layout.width;
  const marks: Mark[] = [
    { kind: "shape", polygon: rectangle(0, 0, layout.width, strip.height), line: "hair" },
  ];
  for (const run of strip.runs) {
    const demand = job.answer.demands.find((d) => d.id === run.demandId);
    const cells: Mark[] =
      demand && !run.segment
        ? cellMarks({
            demand,
            copies: run.copies,
            turned: run.turned,
            width: run.width,
            height: run.height,
            fabricId: layout.fabricId,
            pieces: job.answer.pieces,
            recipes: job.answer.recipes,
            small: 1e9,
          })
        : [{ kind: "shape", polygon: rectangle(0, 0, run.width, run.height), line: "cut" }];
    const bare = cells.flatMap((m): Mark[] =>
      m.kind === "shape" ? [{ kind: "shape", polygon: m.polygon, line: "cut" }] : [],
    );
    marks.push({ kind: "group", at: moving(run.x, run.y), marks: bare });
    if (strip.layers === 2)
      marks.push({
        kind: "group",
        at: { turn: 0, x: layout.width - run.x, y: run.y, mirrored: true },
        marks: bare,
      });
  }
  const upright = picture({
    title: `Strip ${say(job, strip.height)} wide, to tick`,
    unit: job.brief.unit,
    box: { left: 0, right: layout.width, bottom: 0, top: strip.height },
    marks,
  });
  const made =
    job.leftHanded && turnsOver(job.answer, layout.fabricId) ? leftHanded(upright) : upright;
  return drawn(job, made, scale);
}

/** One column for each kind of block, one line for each step, one box for each block. */
function tallies(job: SheetJob): Block[] {
  const kinds = job.answer.blocks.filter((b) => b.count > 0);
  let first = setSteps(job).length + 1;
  const blocks = kinds.flatMap((block) => {
    const steps = stepsOf(job, block, first);
    first += steps.length;
    if (steps.length === 0) return [];
    return [tallyBlock(job, steps, kinds.length === 1 ? MEASURE : columns(6))];
  });
  const rows: Block[] = [];
  for (let i = 0; i < blocks.length; i += 2) {
    const pair = blocks.slice(i, i + 2).map((block, k) => ({ block, x: k * (columns(6) + 12) }));
    rows.push({ ...beside(pair), before: 10 });
  }
  return rows;
}

const BOX = 13;

function tallyBlock(job: SheetJob, steps: readonly SewStep[], width: PdfPoint): Block {
  const c = new Column(width);
  const { block } = steps[0];
  c.rule(0.6, "ink");
  const letter = setLine(blockLetters(job)[block.id], STYLES.step, 0, c.y + 17);
  const name = setLine(
    `${blockName(block, 1)}, ${block.count}`,
    STYLES.soft,
    letter.width + 6,
    c.y + 17,
  );
  const stop = setLine(
    "should measure",
    { ...STYLES.small, color: "accent" },
    width,
    c.y + 17,
    "end",
  );
  c.add({ kind: "text", role: "H2", glyphs: [...letter.glyphs, ...name.glyphs, ...stop.glyphs] });
  c.y += 23;
  for (const step of steps) tallyRow(c, step, block.count);
  c.rule();
  return c.block();
}

/** Many blocks share a box by fives, and the line says so. */
function tallyRow(c: Column, step: SewStep, count: number): void {
  c.rule();
  const per = count > 36 ? 5 : 1;
  const boxes = Math.ceil(count / per);
  const left = 74;
  const across = Math.floor((c.width - left - 74) / (BOX + 3));
  const lines = Math.ceil(boxes / across);
  const top = c.y + 4;
  const items: Item[] = [];
  for (let i = 0; i < boxes; i++) {
    const x = left + (i % across) * (BOX + 3);
    const y = top + Math.floor(i / across) * (BOX + 3);
    items.push({ kind: "box", x, y, width: BOX, height: BOX, line: 0.6 });
    const parts = Math.min(step.unit.copies, 4);
    if (step.seamIds.length > 0 && parts >= 2)
      items.push({
        kind: "rule",
        from: [x, y + BOX / 2],
        to: [x + BOX, y + BOX / 2],
        width: 0.4,
        color: "ink",
      });
    if (step.seamIds.length > 0 && parts >= 4)
      items.push({
        kind: "rule",
        from: [x + BOX / 2, y],
        to: [x + BOX / 2, y + BOX],
        width: 0.4,
        color: "ink",
      });
  }
  c.add(...items);
  const y = top + 10;
  const name = setLine(`${step.number} ${step.name}`, { ...STYLES.strong, size: 9 }, 0, y);
  const number = setLine(
    step.stop.number.replace(/ (in|mm)$/, ""),
    STYLES.stopNumber,
    c.width,
    y + 1,
    "end",
  );
  const how = setLine(per > 1 ? "a box is five blocks" : "", STYLES.small, c.width, y + 12, "end");
  c.add({ kind: "text", role: "P", glyphs: [...name.glyphs, ...number.glyphs, ...how.glyphs] });
  c.y = top + Math.max(lines * (BOX + 3), per > 1 ? 26 : 0) + 3;
}
