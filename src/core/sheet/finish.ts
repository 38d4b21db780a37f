import type { PdfPoint } from "../measure/index.ts";
import type { Drawing } from "../picture/index.ts";
import { type Mark, picture, rectangle } from "../picture/index.ts";
import { type Block, Column } from "./column.ts";
import { columnAt, columns, STYLES } from "./grid.ts";
import {
  counted,
  drawn,
  fabricName,
  listed,
  type SheetJob,
  sayBoth,
  sayUnit,
  smallAt,
} from "./job.ts";

/** "And then?": rows, borders, finishing, cautions. `first` numbers its first step. */
export function finishBlock(job: SheetJob, first: number, mapHeight: PdfPoint = 130): Block {
  const c = new Column();
  c.question("And then?", "layout, borders, finishing");
  const top = c.y + 4;
  const half = columns(6);
  c.y = top;
  const map = rowsDrawing(job, half, mapHeight);
  if (map) {
    c.figure(map);
    c.gap(4);
    c.paragraph(mapWords(job), STYLES.soft, { width: half });
  }
  let lowest = c.y;
  const steps = finishSteps(job, first);
  const x = columnAt(6);
  const two = steps.length > 1;
  steps.forEach((step, i) => {
    const right = two && i >= Math.ceil(steps.length / 2);
    if (i === 0 || (right && i === Math.ceil(steps.length / 2))) c.y = top;
    const at = right ? columnAt(9) : x;
    const width = two ? columns(3) : half;
    c.paragraph(step.words, STYLES.text, { x: at, width });
    c.gap(4);
    if (step.stop) c.stop(step.stop, step.how ?? "", at, width);
    lowest = Math.max(lowest, c.y);
    c.gap(7);
  });
  c.y = lowest + 3;
  c.paragraph(CAUTION);
  return c.block();
}

/** Plain, and no more than the makers of the tools say themselves. */
const CAUTION =
  "**Take care.** Close the rotary cutter after every cut; cut away from yourself, with your fingers off the ruler's edge. Press the iron down and lift it, never push it along a slanted edge; set it on its heel, away from the mat. Take out pins before the needle. The makers' own instructions for cutter, iron and machine come first.";

interface FinishStep {
  readonly words: string;
  readonly stop?: string;
  readonly how?: string;
}

export function finishSteps(job: SheetJob, first: number): FinishStep[] {
  const { quilt, finishing } = job.answer;
  if (!quilt) return [];
  const { brief, seam } = job;
  const raw = (w: number, h: number): string => sayBoth(job, w + 2 * seam, h + 2 * seam);
  let number = first;
  const steps: FinishStep[] = [
    {
      words: `**${number++} Rows.** ${rowWords(job)}`,
      stop: raw(quilt.centerWidth, quilt.centerHeight),
      how: "unfinished",
    },
  ];
  for (const facts of quilt.borders) {
    const border = brief.quilt.borders[facts.index];
    const fabric = fabricName(job, border.fabric);
    const wide = sayUnit(job, facts.width + 2 * seam);
    const [upright, level] = [facts.upright, facts.level].map((x) => sayUnit(job, x + 2 * seam));
    const corners = border.cornerstone
      ? ` A square of ${fabricName(job, border.cornerstone)} ends each of the last two.`
      : "";
    steps.push({
      words:
        facts.join === "mitred"
          ? `**${number++} Border, mitered.** ${fabric}, ${wide} wide. Sew each strip from mark to mark, a seam short of the corners; then the corners at 45 degrees. Press outward.`
          : `**${number++} Border.** ${fabric}, ${wide} wide. Measure through the middle: sides about ${upright}, then top and bottom about ${level}.${corners} Press outward.`,
      stop: raw(facts.outerWidth, facts.outerHeight),
      how: "unfinished",
    });
  }
  const binding = finishing?.binding;
  const join = brief.finishing?.binding?.join === "straight" ? "end to end" : "on the slant";
  const bind = binding
    ? `Join the ${fabricName(job, binding.fabricId)} strips ${join}, fold in half, bind.`
    : "Bind.";
  steps.push({
    words: `**${number++} Finish.** Layer with batting and backing. Quilt, trim square. ${bind}`,
    stop: sayBoth(job, quilt.width, quilt.height),
    how: "when bound",
  });
  return steps;
}

/** How the blocks come together, by the way the quilt is arranged. */
function rowWords(job: SheetJob): string {
  const { quilt } = job.answer;
  if (!quilt) return "";
  const names = listed(job.answer.blocks.filter((b) => b.count > 0).map((b) => `${b.name} blocks`));
  const press =
    "Press odd rows to the left and even rows to the right, so that they nest. Join the rows.";
  switch (quilt.arrangement) {
    case "on-point":
      return `Lay out the ${names} on point, as drawn, with what fills the edges. Sew ${counted(quilt.assembly.rows, "diagonal row")}. ${press} Sew the corners on last.`;
    case "hexagon-rows":
      return `Lay out the ${names} in offset rows, as drawn, half blocks at the ends. Sew ${counted(quilt.assembly.rows, "row")}. ${press}`;
    default: {
      const sashed = job.brief.quilt.sashing !== undefined ? ", with the sashing between" : "";
      return `Lay out ${counted(quilt.rows, "row")} of ${quilt.columns}: ${names}${sashed}, as drawn. Sew each row. ${press}`;
    }
  }
}

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
    if (size > 1.1)
      marks.push({
        kind: "text",
        at: { x: p.at.x, y: p.at.y - 0.4 * small * 1.2 },
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
    .map((b) => `${letters[b.id]}: ${b.name}, ${b.count}`);
  const turned = job.placed.some((p) => Math.abs(p.at.turn) > 1e-9);
  return `${kinds.join("; ")}. ${turned ? "Some blocks are turned: follow the picture." : "No block is turned."}`;
}
