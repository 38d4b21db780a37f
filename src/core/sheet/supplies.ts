import type { PdfPoint } from "../measure/index.ts";
import { type Block, Column, cell, numberCell } from "./column.ts";
import { STYLES } from "./grid.ts";
import { swatchDrawing } from "./head.ts";
import { fabricLetter, fabricName, listed, plural, type SheetJob, say, sayUnit } from "./job.ts";
import type { Cell, Glyphs } from "./model.ts";
import { setText } from "./text.ts";

/** Fabrics in order of use, then finishing, each with what to buy at both widths. */
export function suppliesBlock(job: SheetJob, width: PdfPoint): Block {
  const c = new Column(width);
  c.question("Is there enough?", "supplies, in order of use");
  const widths = widthsOf(job);
  const axes = widths.map((_, i) => width - 30 - (widths.length - 1 - i) * 62);
  const rows: Cell[][] = [];
  const head = c.y + 9;
  rows.push([
    cell("buy, at a usable width of", STYLES.small, (axes[0] ?? width) - 26, head, "end", true),
    ...widths.map((w, i) => cell(sayUnit(job, w), STYLES.strong, axes[i] + 27, head, "end", true)),
  ]);
  c.y += 14;
  for (const fabricId of fabricsInUse(job)) c.y = fabricRow(job, c, rows, fabricId, widths, axes);
  finishingRows(job, c, rows, axes);
  c.add({ kind: "table", rows });
  c.rule();
  c.gap(4);
  c.paragraph(`**Also:** ${toolsOf(job)}`);
  c.paragraph(marginWords(job), STYLES.soft);
  return c.block();
}

/** Usable widths at which yardage is given: the stated one, and the next narrower. */
export function widthsOf(job: SheetJob): number[] {
  const all = new Set(job.answer.yardages.map((y) => y.width));
  return [...all].sort((a, b) => b - a).slice(0, 3);
}

/** Fabrics with something to cut, in the order their pieces are first sewn, then the rest. */
export function fabricsInUse(job: SheetJob): string[] {
  const cut = new Set(job.answer.layouts.map((l) => l.fabricId));
  return job.brief.fabrics.map((f) => f.id).filter((id) => cut.has(id));
}

function fabricRow(
  job: SheetJob,
  c: Column,
  rows: Cell[][],
  fabricId: string,
  widths: readonly number[],
  axes: readonly number[],
): PdfPoint {
  c.rule();
  const top = c.y;
  const name = `**${fabricName(job, fabricId)}**${descriptionOf(job, fabricId)}`;
  const uses = usesOf(job, fabricId);
  const room = (axes[0] ?? c.width) - 78 - 26;
  const together = `${name}: ${uses}`;
  const lines = setText(together, STYLES.text, 74, 0, room).lines === 1 ? [together] : [name, uses];
  const glyphs: Glyphs[] = [];
  let down = lines.length === 1 ? 14 : 10.5;
  lines.forEach((text, i) => {
    const set = setText(text, i === 0 ? STYLES.text : STYLES.soft, 74, top + down, room);
    glyphs.push(...set.glyphs);
    down += set.height;
  });
  const high = Math.max(20, down - 9);
  const base = lines.length === 1 ? top + 14 : top + high / 2 + 5.5;
  for (const [i, look] of (["color", "hatch"] as const).entries()) {
    const drawing = swatchDrawing(job, fabricId, look);
    c.add({
      kind: "figure",
      alt: drawing.title,
      drawing,
      x: 22 + i * 22,
      y: top + high / 2 - drawing.height / 2 + 1.5,
    });
  }
  const yards = widths.map((w, i): Cell => {
    const y = job.answer.yardages.find((v) => v.fabricId === fabricId && v.width === w);
    return y
      ? numberCell(y.buyText, STYLES.number, axes[i], base)
      : cell("—", STYLES.small, axes[i], base);
  });
  rows.push([cell(fabricLetter(job, fabricId), STYLES.letter, 0, base), { glyphs }, ...yards]);
  return top + high + 3.5;
}

function descriptionOf(job: SheetJob, fabricId: string): string {
  const fabric = job.brief.fabrics.find((f) => f.id === fabricId);
  switch (fabric?.kind) {
    case "stripe":
      return `, printed stripe ${fabric.runs === "across" ? "from selvage to selvage" : "along the selvage"}, repeat ${repeatOf(job, fabricId)}`;
    case "strip-set":
      return ", a strip set, sewn from the fabrics it names";
    case "print":
      return fabric.directional ? ", a print with a way up" : ", a print";
    default:
      return fabric?.directional ? ", directional" : "";
  }
}

function repeatOf(job: SheetJob, fabricId: string): string {
  const look = job.swatches[fabricId]?.look;
  return look?.kind === "bands" && look.period ? sayUnit(job, look.period) : "unknown";
}

/** "48 wedges, 12 kites, binding": every use of the fabric. */
export function usesOf(job: SheetJob, fabricId: string): string {
  const counts = new Map<string, number>();
  for (const p of job.answer.pieces) {
    if (p.fabricId !== fabricId) continue;
    const name = p.name.replace(/^(left|right) /, "");
    counts.set(name, (counts.get(name) ?? 0) + p.count);
  }
  const uses = [...counts].map(([name, n]) => `${n} ${n === 1 ? name : plural(name)}`);
  const { finishing } = job.brief;
  if (finishing?.binding?.fabric === fabricId) uses.push("binding");
  if (finishing?.backing?.fabric === fabricId) uses.push("backing");
  return uses.join(", ");
}

function finishingRows(job: SheetJob, c: Column, rows: Cell[][], axes: readonly number[]): void {
  const { finishing } = job.brief;
  const { quilt } = job.answer;
  if (!quilt) return;
  const line = (name: string, what: string): void => {
    c.rule();
    const set = setText(what, STYLES.soft, 74, c.y + 10.5, (axes[0] ?? c.width) - 78);
    rows.push([cell(name, STYLES.strong, 0, c.y + 10.5), { glyphs: set.glyphs }]);
    c.y += set.height + 3.5;
  };
  const over = (text: string): string => `${text} over on every side`;
  if (finishing?.backing)
    line(
      "Backing",
      `${fabricName(job, finishing.backing.fabric)}, the top's size and ${over(finishing.backing.overhang)}`,
    );
  if (finishing?.batting) line("Batting", `the top's size and ${over(finishing.batting.overhang)}`);
  if (!finishing?.binding && !finishing?.backing)
    line("To finish", "backing, batting and binding of your own choice; not in the yardage");
}

/** Tools in the order they are needed; a ruler's special name is never asked for. */
function toolsOf(job: SheetJob): string {
  const kinds = new Set(job.answer.recipes.map((r) => r.kind));
  const wedges = new Set(job.brief.blocks.flatMap((b) => (b.kind === "wedges" ? [360 / b.n] : [])));
  const tools = ["rotary cutter and mat", "long ruler"];
  if (kinds.has("wedge"))
    tools.push(
      `${listed([...wedges].map((a) => `${a}-degree`))} wedge ruler, or the wedge template`,
    );
  if (kinds.has("kite") || kinds.has("half-square-sliced") || kinds.has("template"))
    tools.push("the printed templates");
  const block = job.answer.blocks[0];
  if (block) tools.push(`square ruler of at least ${sayUnit(job, block.width + 2 * job.seam)}`);
  tools.push("pins", "thread", "iron");
  return `${tools.join("; ")}.`;
}

function marginWords(job: SheetJob): string {
  const y = job.answer.yardages[0];
  if (!y) return "";
  const parts = [`${say(job, y.straighten)} ${job.brief.unit} to straighten the end`];
  if (y.wrongStrip > 0) parts.push("room for one wrong strip of the widest size");
  if (y.extra > 0) parts.push(`${sayUnit(job, y.extra)} extra`);
  return `Each yardage holds ${listed(parts)}.`;
}
