import { type Fabric, usableWidth, type WedgeBlock } from "../brief/index.ts";
import type { PdfPoint } from "../measure/index.ts";
import { knownLength, lengthToInch, liesOnStep, printLength } from "../measure/index.ts";
import { wedgePointPicture } from "../picture/index.ts";
import {
  type ChartRow,
  chartRows,
  flatTip,
  pastCenter,
  type Ruler,
  rulerOf,
} from "../recipe/index.ts";
import { type Block, Column, cell, numberCell, paginate, withFeet } from "./column.ts";
import { footWords } from "./foot.ts";
import { columns, STYLES } from "./grid.ts";
import { drawn, type SheetJob, sayUnit, smallAt } from "./job.ts";
import type { Cell, Sheet } from "./model.ts";
import { setLine } from "./text.ts";

/** Strips from, to and by, unless the ruler's own range says otherwise. */
const RANGE = { in: { from: 3, to: 10, by: 0.25 }, mm: { from: 75, to: 250, by: 5 } } as const;

/** "What does my strip make?": one ruler over its whole range, and the key to the two points. */
export function chartSheet(job: SheetJob): Sheet {
  const n = wedgesIn(job);
  const ruler = rulerOf(job.brief.ruler, n, job.brief.unit);
  const blocks = [
    headBlock(job, ruler, n),
    ...tableBlocks(job, ruler, n),
    noteBlock(job, ruler, n),
  ];
  return {
    title: `${job.brief.title}: wedge chart`,
    name: "chart",
    language: "en-US",
    pages: withFeet(paginate(blocks, job.paper, 6), job.paper, footWords(job), (i, of) =>
      of > 1 ? `Wedge chart, ${i + 1} of ${of}` : "Wedge chart",
    ),
  };
}

const firstWedges = ({ brief }: SheetJob): WedgeBlock | undefined =>
  brief.blocks.find((b) => b.kind === "wedges");

const wedgesIn = (job: SheetJob): number => firstWedges(job)?.n ?? 8;

/** The fabric the first wedges are cut from; the first there is where no block has wedges. */
function wedgeFabric(job: SheetJob): Fabric {
  const { wedge, "wedge-even": even } = firstWedges(job)?.fabric ?? {};
  return job.brief.fabrics.find((f) => f.id === (wedge ?? even)) ?? job.brief.fabrics[0];
}

function rowsFor(
  job: SheetJob,
  ruler: Ruler,
  n: number,
  point: SheetJob["brief"]["ruler"]["point"],
): ChartRow[] {
  const { unit } = job.brief;
  const { from, to, by } = RANGE[unit];
  const fabric = wedgeFabric(job);
  return chartRows({
    wedges: n,
    point,
    from: ruler.shortest ?? from,
    to: ruler.longest ?? to,
    by,
    seam: job.seam,
    usable: usableWidth(job.brief, fabric),
    folds: fabric.folds,
    unit,
    step: job.step,
  });
}

function headBlock(job: SheetJob, ruler: Ruler, n: number): Block {
  const { unit } = job.brief;
  const c = new Column();
  c.question(
    "What does my strip make?",
    `${n} wedges of ${360 / n} degrees; sewn with a ${sayUnit(job, job.seam)} seam`,
    "H1",
  );
  const top = c.y + 6;
  const past = pastCenter(ruler, job.seam);
  const sharp = rulerOf({ point: "sharp" }, n, unit);
  const sharpPast = pastCenter(sharp, job.seam);
  const tip = flatTip(ruler);
  c.y = top;
  c.paragraph(tip > 0 ? "One strip, two answers." : "The strip sets the block.", STYLES.size, {
    width: columns(5),
  });
  c.gap(4);
  const words =
    tip > 0
      ? `What is fixed is the strip; where the **finished center** (the dot) falls depends on how the point is cut. A **sharp** point runs ${sayUnit(job, sharpPast)} past the center; yours is cut off ${sayUnit(job, past)} past it. From the same strip it makes a round **${sayUnit(job, 2 * (sharpPast - past))}** larger.`
      : `Where the **finished center** (the dot) falls depends on how the point is cut. Your **sharp** point runs ${sayUnit(job, past)} past the center. A point cut off makes a larger round from the same strip.`;
  c.paragraph(words, STYLES.text, { width: columns(5) });
  c.gap(4);
  c.paragraph(
    `**Not sure which you have?** Measure the narrow end of a cut wedge: 0 is sharp; this chart's is ${sayUnit(job, tip)}.`,
    STYLES.text,
    { width: columns(5) },
  );
  const lowest = c.y;
  c.y = top;
  const strip = unit === "in" ? 4.5 : 115;
  const scale = 80 / strip;
  const pictures = tip > 0 ? [sharp, ruler] : [ruler];
  pictures.forEach((r, i) => {
    c.y = top;
    const made = wedgePointPicture({
      unit,
      angle: 360 / n,
      strip,
      seam: job.seam,
      missing: r.missing,
      caption: r.missing > 0 ? "cut off" : "sharp",
      small: smallAt(scale),
      leftHanded: job.leftHanded,
    });
    c.figure(drawn(job, made, scale), 236 + i * 146);
  });
  c.y = Math.max(lowest, c.y);
  return c.block();
}

interface Head {
  readonly head: readonly [string, string];
  readonly axis: PdfPoint;
  readonly text: (row: ChartRow) => string | null;
  readonly bold?: boolean;
}

const AXES = [124, 206, 282, 356, 430, 504] as const;

function headsOf(job: SheetJob, n: number): Head[] {
  const decimal = (x: number | null): string | null =>
    x === null
      ? null
      : liesOnStep(x, job.step)
        ? printLength(x, job.step)
        : x.toFixed(job.brief.unit === "in" ? 3 : 1);
  const round: Head = {
    head: [n === 8 ? "octagon" : "round", "finishes"],
    axis: AXES[0],
    text: (r) => decimal(r.finished),
    bold: true,
  };
  const wedges: Head = {
    head: ["wedges", "a strip"],
    axis: AXES[5],
    text: (r) => String(r.wedgesPerStrip),
  };
  if (n !== 8)
    return [
      round,
      { head: ["unfinished", "across"], axis: AXES[1], text: (r) => decimal(r.unfinished) },
      { head: ["wedge", "outer edge"], axis: AXES[2], text: (r) => decimal(r.wedgeBase) },
      wedges,
    ];
  return [
    round,
    { head: ["kite", "square"], axis: AXES[1], text: (r) => r.kiteSquareCoverText },
    { head: ["corner", "square"], axis: AXES[2], text: (r) => r.cornerSquareText },
    { head: ["deep", "square"], axis: AXES[3], text: (r) => r.deepSquareText },
    { head: ["wedge", "outer edge"], axis: AXES[4], text: (r) => decimal(r.wedgeBase) },
    wedges,
  ];
}

const ROW: PdfPoint = 14.2;

/** One block for the head, then one for each whole inch, so that a page ends between inches. */
function tableBlocks(job: SheetJob, ruler: Ruler, n: number): Block[] {
  const heads = headsOf(job, n);
  const rows = rowsFor(job, ruler, n, job.brief.ruler.point);
  const top = new Column();
  top.rule(0.6, "ink");
  top.add({
    kind: "table",
    rows: [
      [
        cell("Strip", STYLES.strong, 24, top.y + 21, "start", true),
        ...heads.map((h): Cell => {
          const lines = h.head.map((text, i) =>
            setLine(text, STYLES.small, h.axis + 14, top.y + 10 + 11 * i, "end"),
          );
          return { header: true, glyphs: lines.flatMap((l) => l.glyphs) };
        }),
      ],
    ],
  });
  top.y += 27;
  const groups = new Map<number, ChartRow[]>();
  for (const row of rows) {
    const whole =
      job.brief.unit === "in" ? Math.floor(row.strip! + 1e-9) : Math.floor(row.strip! / 25 + 1e-9);
    groups.set(whole, [...(groups.get(whole) ?? []), row]);
  }
  return [top.block(), ...[...groups.values()].map((g) => groupBlock(job, g, heads))];
}

function groupBlock(job: SheetJob, rows: readonly ChartRow[], heads: readonly Head[]): Block {
  const used = new Set(
    job.brief.blocks.flatMap((b) =>
      b.kind === "wedges"
        ? [lengthToInch(knownLength(b.strip, job.brief.unit), job.brief.unit).toFixed(6)]
        : [],
    ),
  );
  const c = new Column();
  c.rule();
  const cells: Cell[][] = [];
  for (const row of rows) {
    const y = c.y + 10.5;
    const isUsed = used.has(lengthToInch(row.strip ?? 0, job.brief.unit).toFixed(6));
    const color = isUsed ? ("accent" as const) : ("ink" as const);
    const plain = { ...STYLES.text, color };
    const bold = { ...STYLES.strong, color };
    if (isUsed)
      c.add({
        kind: "rule",
        from: [0, c.y + 2],
        to: [0, c.y + ROW - 2],
        width: 2,
        color: "accent",
      });
    cells.push([
      numberCell(row.stripText ?? "", bold, 30, y),
      ...heads.map((h): Cell => {
        const text = h.text(row);
        return text === null
          ? cell("—", STYLES.small, h.axis, y, "end")
          : numberCell(text, h.bold || isUsed ? bold : plain, h.axis, y);
      }),
      ...(isUsed ? [cell("this pattern", { ...STYLES.trade, color: "accent" }, 52, y)] : []),
    ]);
    c.y += ROW;
  }
  c.add({ kind: "table", rows: cells });
  return { ...c.block(), before: 0 };
}

function noteBlock(job: SheetJob, ruler: Ruler, n: number): Block {
  const c = new Column();
  c.rule();
  c.gap(4);
  const fabric = wedgeFabric(job);
  const usable = sayUnit(job, usableWidth(job.brief, fabric));
  const squares =
    n === 8
      ? " **Kite square**, **corner square** (cut once) and **deep square** (cut once, for the least deep block) are the smallest that give every stitch its full allowance, rounded up to the step."
      : "";
  c.paragraph(
    `**Finishes** is across flats.${squares} **Wedges** turned end for end from one strip ${usable} usable, cut ${fabric.folds === 1 ? "folded" : "single"}. The strip itself is never rounded: it sets the block.${ruler.longest === undefined ? "" : ` The ruler ends at ${sayUnit(job, ruler.longest)}.`}`,
    STYLES.text,
  );
  return c.block();
}
