// Writing the sheets of one example, against the library's bare drawing calls for the same marks (no
// tags, no stamps, no page model). Run: npx tsx bench/sheets.ts. Ratios, not times, are to be read.
import { readFileSync } from "node:fs";
import PDFDocument from "pdfkit";
import type { Op } from "../src/core/picture/index.ts";
import {
  type Glyphs,
  INKS,
  makeSheet,
  type Sheet,
  setRuns,
  sheetNames,
} from "../src/core/sheet/index.ts";
import { jobOf } from "../src/core/sheet/job.testing.ts";
import { nodeFonts } from "../src/pdf/fonts.node.ts";
import { writePdf } from "../src/pdf/index.ts";

const fonts = nodeFonts();
const created = new Date(Date.UTC(2026, 10, 25));
type Doc = InstanceType<typeof PDFDocument>;

function bare(sheets: readonly Sheet[]): Promise<number> {
  const doc = new PDFDocument({
    autoFirstPage: false,
    margin: 0,
    compress: false,
    font: fonts.sans.latin as unknown as string,
  });
  let bytes = 0;
  doc.on("data", (chunk: Uint8Array) => {
    bytes += chunk.length;
  });
  const known = new Set<string>();
  const text = (
    g: Pick<Glyphs, "text" | "x" | "y" | "face" | "size" | "fraction">,
    color: string,
  ): void => {
    if (!known.has(g.face)) doc.registerFont(g.face, fonts[g.face].latin as unknown as Buffer);
    known.add(g.face);
    const features = (g.fraction
      ? { lnum: true, frac: true, liga: false }
      : { lnum: true, tnum: true, liga: false }) as unknown as never[];
    doc
      .font(g.face)
      .fontSize(g.size)
      .fillColor(color)
      .text(g.text, g.x, g.y, { lineBreak: false, baseline: "alphabetic", features });
  };
  for (const sheet of sheets)
    for (const page of sheet.pages) {
      doc.addPage({ size: [page.width, page.height], margin: 0 });
      for (const item of page.items) {
        if (item.kind === "figure") {
          doc.save().translate(item.x, item.y);
          ops(doc, item.drawing.ops, item.drawing.stamps, text);
          doc.restore();
        } else if (item.kind === "rule")
          doc
            .lineWidth(item.width)
            .moveTo(...item.from)
            .lineTo(...item.to)
            .stroke(INKS[item.color]);
        else if (item.kind === "box")
          doc.lineWidth(item.line).rect(item.x, item.y, item.width, item.height).stroke(INKS.ink);
        else
          for (const g of item.kind === "table"
            ? item.rows.flat().flatMap((c) => c.glyphs)
            : item.glyphs)
            text(g, INKS[g.color]);
      }
    }
  doc.end();
  return new Promise((resolve) => doc.on("end", () => resolve(bytes)));
}

function ops(
  doc: Doc,
  list: readonly Op[],
  stamps: Readonly<Record<string, readonly Op[]>>,
  text: (g: Glyphs, color: string) => void,
): void {
  for (const op of list) {
    if (op.op === "group") ops(doc, op.ops, stamps, text);
    else if (op.op === "use") {
      const [a, b, c, d, e, f] = op.matrix;
      doc.save().transform(a, b, c, d, e, f);
      ops(doc, stamps[op.of] ?? [], stamps, text);
      doc.restore();
    } else if (op.op === "text") {
      const { glyphs } = setRuns(op.runs, op.bold ? "bold" : "sans", op.size);
      doc.save().translate(op.at.x, op.at.y).rotate(op.turn);
      for (const g of glyphs) text(g, op.color);
      doc.restore();
    } else if (op.op === "path" || op.op === "strokes") {
      const lines = op.op === "path" ? [op.points] : op.segments;
      for (const line of lines)
        line.forEach((p, i) => {
          if (i === 0) doc.moveTo(p.x, p.y);
          else doc.lineTo(p.x, p.y);
        });
      const stroke = op.stroke;
      if (stroke) doc.lineWidth(stroke.width);
      if (stroke?.dash) doc.dash(Math.max(0.01, stroke.dash[0]), { space: stroke.dash[1] });
      if (op.op === "path" && op.closed) doc.closePath();
      const fill = op.op === "path" && op.fill !== "none" ? op.fill : undefined;
      if (fill && stroke) doc.fillAndStroke(fill, stroke.color);
      else if (fill) doc.fill(fill);
      else if (stroke) doc.stroke(stroke.color);
      if (stroke?.dash) doc.undash();
    } else if (op.op === "circle")
      doc.circle(op.at.x, op.at.y, op.radius).fill(op.fill ?? "#000000");
  }
}

const name = process.argv[2] ?? "tidepool-runner";
const brief = readFileSync(new URL(`../examples/${name}.json`, import.meta.url), "utf8");
const job = jobOf(brief);
const sheets = sheetNames(job).map((n) => makeSheet(job, n));
const pages = sheets.reduce((sum, s) => sum + s.pages.length, 0);
const cpu = async (run: () => Promise<unknown>): Promise<number> => {
  const before = process.cpuUsage();
  await run();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
};
const ours = () => writePdf(sheets, { fonts, created, compress: false });
await bare(sheets);
await ours();
const rounds: [number, number][] = [];
for (let i = 0; i < 7; i++) rounds.push([await cpu(ours), await cpu(() => bare(sheets))]);
const middle = (list: number[]): number =>
  [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
const [a, b] = [middle(rounds.map((r) => r[0])), middle(rounds.map((r) => r[1]))];
console.log(
  `${name}: ${pages} pages; written ${a.toFixed(0)} ms of processor, bare calls ${b.toFixed(0)} ms, ratio ${(a / b).toFixed(2)}`,
);
