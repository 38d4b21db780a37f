import type { Yardage } from "../layout/types.ts";
import { knownLength, type PdfPoint } from "../measure/index.ts";
import { type Block, Column, cell, numberCell } from "./column.ts";
import { sayUp } from "./cutting.ts";
import { STYLES } from "./grid.ts";
import { swatchDrawing } from "./head.ts";
import {
  counted,
  fabricLetter,
  fabricName,
  listed,
  plural,
  type SheetJob,
  say,
  sayUnit,
} from "./job.ts";
import type { Cell, Glyphs } from "./model.ts";
import { setText } from "./text.ts";

/** Fabrics in order of use, then finishing, each with what to buy at both widths. */
export function suppliesBlock(job: SheetJob, width: PdfPoint): Block {
  const c = new Column(width);
  c.question("Is there enough?", "supplies, in order of use");
  const heads = headsOf(job);
  const axes = [width - 92, width - 30];
  const rows: Cell[][] = [];
  const head = c.y + 9;
  rows.push([
    cell(heads.lead, STYLES.small, axes[0] - 26, head, "end", true),
    ...heads.each.map((text, i) => cell(text, STYLES.strong, axes[i] + 27, head, "end", true)),
  ]);
  c.y += 14;
  for (const fabricId of fabricsInUse(job)) c.y = fabricRow(job, c, rows, fabricId, axes);
  finishingRows(job, c, rows, axes);
  c.add({ kind: "table", rows });
  c.rule();
  c.gap(4);
  c.paragraph(`**Also:** ${toolsOf(job)}`);
  const wash = washWords(job);
  if (wash !== "") c.paragraph(wash);
  c.paragraph(marginWords(job), STYLES.soft);
  return c.block();
}

/** Widths at which a fabric's yardage is given: its own, and the next narrower. */
const widthsOf = (job: SheetJob, fabricId: string): number[] =>
  job.answer.yardages
    .filter((y) => y.fabricId === fabricId)
    .map((y) => y.width)
    .sort((a, b) => b - a);

/** The pairs of widths that fabrics are given at, each once. */
function pairsOf(job: SheetJob): number[][] {
  const pairs = fabricsInUse(job)
    .map((id) => widthsOf(job, id))
    .filter((w) => w.length > 0);
  return pairs.filter((w, i) => pairs.findIndex((v) => v.join() === w.join()) === i);
}

/** The widths over both columns, or beside each fabric where fabrics differ. */
function headsOf(job: SheetJob): { readonly lead: string; readonly each: readonly string[] } {
  const [pair, ...others] = pairsOf(job);
  return pair && others.length === 0
    ? { lead: "buy, at a usable width of", each: pair.map((w) => sayUnit(job, w)) }
    : { lead: "buy", each: ["as stated", "narrower"] };
}

function widthWords(job: SheetJob, fabricId: string): string {
  const widths = widthsOf(job, fabricId);
  if (widths.length === 0 || pairsOf(job).length < 2) return "";
  return `, ${widths.map((w) => say(job, w)).join(" or ")} ${job.brief.unit} usable`;
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
  axes: readonly number[],
): PdfPoint {
  c.rule();
  const top = c.y;
  const name = `**${fabricName(job, fabricId)}**${descriptionOf(job, fabricId)}${widthWords(job, fabricId)}`;
  const widths = widthsOf(job, fabricId);
  const sewn = job.brief.fabrics.find((f) => f.id === fabricId)?.kind === "strip-set";
  const uses = usesOf(job, fabricId);
  const room = (axes[0] ?? c.width) - 78 - 26;
  const together = uses ? `${name}: ${uses}` : name;
  const lines =
    setText(together, STYLES.text, 74, 0, room).lines === 1
      ? [together]
      : [name, uses].filter((t) => t !== "");
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
  const yards = axes.map((axis, i): Cell => {
    const y = job.answer.yardages.find((v) => v.fabricId === fabricId && v.width === widths[i]);
    if (y && !sewn) return numberCell(y.buyText, STYLES.number, axis, base);
    return cell(sewn && i === 0 ? "sewn" : "—", STYLES.small, axis, base);
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
      return `, ${setWords(job, fabricId)}`;
    case "print":
      return fabric.directional ? ", a print with a way up" : ", a print";
    default:
      return fabric?.directional ? ", directional" : "";
  }
}

/** "strip set: 6 of A 2, B 1 1/4, C 2 1/4": how many sets, and their strips from the outer edge in. */
export function setWords(job: SheetJob, fabricId: string): string {
  const fabric = job.brief.fabrics.find((f) => f.id === fabricId);
  if (fabric?.kind !== "strip-set") return "";
  const sets = job.answer.cutting.find((c) => c.fabricId === fabricId)?.sets ?? 0;
  const strips = fabric.strips.map(
    (t) => `${fabricLetter(job, t.fabric)} ${say(job, knownLength(t.cut, job.brief.unit))}`,
  );
  return `strip set, ${sets} of them: ${strips.join(", ")}`;
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
  const cut = new Set(fabricsInUse(job));
  for (const set of job.brief.fabrics)
    if (
      set.kind === "strip-set" &&
      cut.has(set.id) &&
      set.strips.some((t) => t.fabric === fabricId)
    )
      uses.push(`strips of set ${fabricLetter(job, set.id)}`);
  return uses.join(", ");
}

function finishingRows(job: SheetJob, c: Column, rows: Cell[][], axes: readonly number[]): void {
  const { finishing } = job.answer;
  const line = (name: string, what: string): void => {
    c.rule();
    const set = setText(what, STYLES.soft, 74, c.y + 10.5, (axes[0] ?? c.width) - 78);
    rows.push([cell(name, STYLES.strong, 0, c.y + 10.5), { glyphs: set.glyphs }]);
    c.y += set.height + 3.5;
  };
  const { binding, backing, batting } = finishing ?? {};
  const size = (w: number, h: number): string =>
    `${sayUp(job, w)} × ${sayUp(job, h)} ${job.brief.unit}`;
  const over = (x: number): string => `${sayUnit(job, x)} over on every side`;
  if (backing) {
    const panels =
      backing.panels > 1
        ? `${backing.panels} panels ${size(backing.panelWidth, backing.panelLength)}, seams ${backing.seams}; `
        : "one piece, no seam; ";
    line(
      "Backing",
      `${fabricName(job, backing.fabricId)}, ${panels}${size(backing.width, backing.height)}, ${over(backing.overhang)}`,
    );
  }
  if (batting) line("Batting", `${size(batting.width, batting.height)}, ${over(batting.overhang)}`);
  if (binding)
    line(
      "Binding",
      `${fabricName(job, binding.fabricId)}, ${sayUnit(job, binding.strip)} strips${binding.cut === "bias" ? " on the bias" : ""}, joined to ${sayUp(job, binding.length)} ${job.brief.unit}`,
    );
  const missing = [
    ...(backing ? [] : ["backing"]),
    ...(batting ? [] : ["batting"]),
    ...(binding ? [] : ["binding"]),
  ];
  if (missing.length > 0)
    line("To finish", `${listed(missing)} of your own choice; not in the yardage`);
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

/** Fabrics that are washed before they are cut: who cuts them unwashed sews another size. */
function washWords(job: SheetJob): string {
  const groups = new Map<string, string[]>();
  let inHand = false;
  for (const id of fabricsInUse(job)) {
    const { shrinkage, inHand: pieces = [] } = job.brief.fabrics.find((f) => f.id === id) ?? {};
    if (!shrinkage) continue;
    inHand ||= pieces.length > 0;
    const loss = `losing ${shrinkage.length} per cent of the length and ${shrinkage.width} of the width`;
    groups.set(loss, [...(groups.get(loss) ?? []), fabricLetter(job, id)]);
  }
  if (groups.size === 0) return "";
  const each = [...groups].map(([loss, letters]) => `${listed(letters)}, ${loss}`);
  const washed = inHand ? "Widths in this list and pieces in hand" : "Widths in this list";
  return `**Wash before cutting:** ${each.join("; ")}. ${washed} are as washed, yardages as bought.`;
}

function marginWords(job: SheetJob): string {
  const at = job.answer.layouts.flatMap((l) => {
    const y = job.answer.yardages.find((v) => v.fabricId === l.fabricId && v.width === l.width);
    // What comes from pieces in hand alone holds no margins.
    return y && y.buy > 0 ? [y] : [];
  });
  if (at.length === 0) return "";
  const { unit } = job.brief;
  const each = (list: typeof at, of: (y: Yardage) => number): string =>
    list.map((y) => `${fabricLetter(job, y.fabricId)} ${sayUp(job, of(y))}`).join(", ");
  const parts = [`${say(job, at[0].straighten)} ${unit} to straighten the end`];
  const wrong = at.filter((y) => y.wrongStrip > 0);
  if (wrong.length > 0)
    parts.push(`room for one wrong strip (${each(wrong, (y) => y.wrongStrip)})`);
  const repeat = at.filter((y) => (y.toRepeat ?? 0) > 0);
  if (repeat.length > 0)
    parts.push(
      `room to reach the first start in the repeat (${each(repeat, (y) => y.toRepeat ?? 0)})`,
    );
  const extra = at.filter((y) => y.extra > 0);
  if (extra.length > 0) parts.push(`extra (${each(extra, (y) => y.extra)})`);
  return `Each yardage holds ${listed(parts)}.`;
}

const WAYS = {
  blocks: "blocks of",
  float: "blocks of",
  strip: "wedges from strips of",
  sashing: "sashing of",
  borders: "a border of",
} as const;

/** The same design in other sizes, each planned in full: its blocks, its finished size, what to buy. */
export function sizesBlock(job: SheetJob, width: PdfPoint): Block | undefined {
  const sizes = (job.answer.sizes ?? []).filter((s) => s.width !== undefined);
  if (sizes.length === 0) return undefined;
  const ids = fabricsInUse(job).filter((id) =>
    sizes.some((s) => s.yardages.some((v) => v.fabricId === id)),
  );
  const axes = ids.map((_, i) => width - (ids.length - i) * BUY + 12);
  const room = width - ids.length * BUY - 6;
  const c = new Column(width);
  c.rule(0.6, "ink");
  const head = c.y + 10;
  const rows: Cell[][] = [
    [
      cell("in other sizes, to buy", STYLES.small, 0, head, "start", true),
      ...ids.map((id, i) =>
        cell(fabricLetter(job, id), STYLES.strong, axes[i] + 3, head, "middle", true),
      ),
    ],
  ];
  c.y = head + 4;
  for (const s of sizes) {
    c.rule();
    const name = setText(
      `**${s.name}**, ${say(job, s.width ?? 0)} × ${sayUnit(job, s.height ?? 0)}`,
      STYLES.text,
      0,
      c.y + 10.5,
      room,
    );
    const change =
      s.plan.length === undefined ? "" : `, ${WAYS[s.plan.way]} ${sayUnit(job, s.plan.length)}`;
    const blocks = setText(
      `${counted(s.blocks, "block")}, ${counted(s.plan.rows, "row")} of ${s.plan.columns}${change}`,
      STYLES.soft,
      0,
      c.y + 10.5 + name.height,
      room,
    );
    rows.push([
      { glyphs: [...name.glyphs, ...blocks.glyphs] },
      ...ids.map((id, i) => {
        const y = s.yardages.find((v) => v.fabricId === id);
        return y
          ? numberCell(y.buyText, STYLES.number, axes[i], c.y + 10.5)
          : cell("—", STYLES.small, axes[i], c.y + 10.5);
      }),
    ]);
    c.y += name.height + blocks.height + 3.5;
  }
  c.add({ kind: "table", rows });
  return c.block();
}

/** Width of a column of yardages. */
const BUY: PdfPoint = 48;
