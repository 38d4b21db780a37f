import type PDFDocument from "pdfkit";
import type { Drawing, Op, Run } from "../core/picture/index.ts";
import {
  type Cell,
  type Face,
  type Glyphs,
  INKS,
  type Item,
  type Page,
  type Sheet,
  setRuns,
} from "../core/sheet/index.ts";
import { isPlain, number, pathsOf, rgb } from "./content.ts";
import type { FontFiles } from "./fonts.ts";

export interface PdfOptions {
  readonly fonts: FontFiles;
  /** Printed into the file as its date; the clock is never read. */
  readonly created: Date;
  readonly version?: string;
  readonly author?: string;
  /** Off for files compared byte by byte: compressors differ between Node and browsers. */
  readonly compress?: boolean;
}

/** Lining and tabular figures, no ligatures: the widths the core breaks its lines by. */
const PLAIN = { lnum: true, tnum: true, liga: false };
const FRACTION = { lnum: true, frac: true, liga: false };

const TAGS = { H1: "H1", H2: "H2", H3: "H3", P: "P", Caption: "Caption", Note: "P" } as const;

/**
 * One file from the pages of one or more sheets, in order. Tagged for screen readers, fonts embedded,
 * no scaling asked of the print dialog. Equal input gives equal bytes.
 */
export async function writePdf(sheets: readonly Sheet[], options: PdfOptions): Promise<Uint8Array> {
  const first = sheets[0];
  if (!first) throw new RangeError("at least one sheet expected, got none");
  // Half of the command line's start would go into loading it, and most commands print nothing.
  const { default: Document } = await import("pdfkit");
  const doc = newDocument(Document, first, options);
  const writer = new Writer(doc, options.fonts);
  const bytes = collected(doc);
  for (const sheet of sheets) for (const page of sheet.pages) writer.page(page, sheet.title);
  writer.end();
  doc.end();
  return bytes;
}

type Doc = InstanceType<typeof PDFDocument>;

function newDocument(Document: typeof PDFDocument, sheet: Sheet, options: PdfOptions): Doc {
  const doc = new Document({
    autoFirstPage: false,
    margin: 0,
    compress: options.compress ?? true,
    pdfVersion: "1.7",
    tagged: true,
    displayTitle: true,
    lang: sheet.language,
    // None until a face is registered: Helvetica is in no browser build, and a face given here without
    // a name would be read anew at every stretch that is set in it.
    font: null as unknown as string,
    info: {
      Title: sheet.title,
      ...(options.author ? { Author: options.author } : {}),
      ...(options.version ? { Subject: options.version } : {}),
      Creator: "Eighthwise",
      Producer: "Eighthwise",
      CreationDate: options.created,
      ModDate: options.created,
    },
  });
  askForNoScaling(doc);
  return doc;
}

/** ISO 32000-1, table 150: PrintScaling None, so that the print dialog offers true size first. */
function askForNoScaling(doc: Doc): void {
  const root = (doc as unknown as { _root: { data: Record<string, unknown> } })._root;
  const preferences = root.data.ViewerPreferences as { data: Record<string, unknown> };
  preferences.data.PrintScaling = "None";
  preferences.data.PickTrayByPDFSize = true;
}

function collected(doc: Doc): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  return new Promise((resolve, reject) => {
    doc.on("data", (chunk: Uint8Array) => chunks.push(chunk));
    doc.on("error", reject);
    doc.on("end", () => {
      const out = new Uint8Array(chunks.reduce((sum, c) => sum + c.length, 0));
      let at = 0;
      for (const c of chunks) {
        out.set(c, at);
        at += c.length;
      }
      resolve(out);
    });
  });
}

type Struct = ReturnType<Doc["struct"]>;

class Writer {
  private readonly doc: Doc;
  private readonly root: Struct;
  private readonly fonts: FontFiles;
  private readonly known = new Set<string>();
  private forms = 0;
  private title = "";
  private table: Struct | null = null;

  constructor(doc: Doc, fonts: FontFiles) {
    this.doc = doc;
    this.fonts = fonts;
    this.root = doc.struct("Document");
    doc.addStructure(this.root);
  }

  page(page: Page, title: string): void {
    this.doc.addPage({ size: [page.width, page.height], margin: 0 });
    if (title !== this.title) {
      this.doc.outline.addItem(title);
      this.title = title;
    }
    for (const item of page.items) this.item(item);
  }

  end(): void {
    this.table?.end();
    this.root.end();
  }

  private item(item: Item): void {
    switch (item.kind) {
      case "text":
        this.root.add(this.doc.struct(TAGS[item.role], {}, () => this.glyphs(item.glyphs)));
        return;
      case "table":
        this.rows(item.rows, item.continues === true);
        return;
      case "figure": {
        const { x, y, drawing } = item;
        const box: [number, number, number, number] = [x, y, x + drawing.width, y + drawing.height];
        // The types know neither the picture's box nor its placement; the library writes both.
        const options = { alt: item.alt, bbox: box, placement: "Block" } as { alt: string };
        this.root.add(this.doc.struct("Figure", options, () => this.drawing(drawing, x, y)));
        return;
      }
      case "rule":
        this.unread(() =>
          this.doc.addContent(
            `q ${rgb(INKS[item.color])} RG ${number(item.width)} w ${item.from.map(number).join(" ")} m ${item.to.map(number).join(" ")} l S Q`,
          ),
        );
        return;
      case "box":
        this.unread(() =>
          this.doc.addContent(
            `q ${rgb(INKS.ink)} RG ${number(item.line)} w ${[item.x, item.y, item.width, item.height].map(number).join(" ")} re S Q`,
          ),
        );
        return;
      case "furniture":
        this.unread(() => this.glyphs(item.glyphs));
        return;
    }
  }

  /** Marked as decoration, which a screen reader skips. */
  private unread(draw: () => void): void {
    this.doc.markContent("Artifact", { type: "Layout" });
    draw();
    this.doc.endMarkedContent();
  }

  /** Rows of a new table, or more of the one before. */
  private rows(rows: readonly (readonly Cell[])[], more: boolean): void {
    if (!more || !this.table) {
      this.table?.end();
      this.table = this.doc.struct("Table");
      this.root.add(this.table);
    }
    const { table } = this;
    for (const row of rows) {
      const tr = this.doc.struct("TR");
      table.add(tr);
      for (const cell of row) {
        const tag = cell.header ? "TH" : "TD";
        tr.add(this.doc.struct(tag, {}, () => this.glyphs(cell.glyphs)));
      }
      tr.end();
    }
  }

  private glyphs(glyphs: readonly Glyphs[]): void {
    glyphs.forEach((g, i) => {
      const text = standsApart(g, glyphs[i + 1]) ? `${g.text} ` : g.text;
      this.write({ ...g, text }, INKS[g.color]);
      if (g.doubt) this.doubt(g);
    });
  }

  private doubt(g: Glyphs): void {
    const y = number(g.y + 2.1);
    this.doc.addContent(
      `q ${rgb(INKS.ink)} RG 1.1 w 1 J [0 2.6] 0 d ${number(g.x)} ${y} m ${number(g.x + g.width)} ${y} l S Q`,
    );
  }

  private write(g: Omit<Glyphs, "color" | "width">, color: string): void {
    const { doc } = this;
    this.face(g.face, g.more === true);
    doc.fontSize(g.size).fillColor(color);
    doc.text(g.text, g.x, g.y, {
      lineBreak: false,
      baseline: "alphabetic",
      // Names with false turn a feature off, which the types do not know.
      features: (g.fraction ? FRACTION : PLAIN) as unknown as never[],
    });
  }

  private face(face: Face, more: boolean): void {
    const name = more ? `${face} more` : face;
    if (!this.known.has(name)) {
      const files = this.fonts[face];
      this.doc.registerFont(name, (more ? files.more : files.latin) as unknown as Buffer);
      this.known.add(name);
      this.doc.font(name);
      remember((this.doc as unknown as { _font: LaysOut })._font);
    }
    this.doc.font(name);
  }

  private drawing(drawing: Drawing, x: number, y: number): void {
    const { doc } = this;
    doc.save();
    doc.translate(x, y);
    const forms = new Map<string, string>();
    for (const [name, ops] of Object.entries(drawing.stamps))
      if (isPlain(ops)) forms.set(name, this.form(ops));
    this.ops(drawing.ops, drawing, forms);
    doc.restore();
  }

  private ops(ops: readonly Op[], drawing: Drawing, forms: ReadonlyMap<string, string>): void {
    for (const op of ops) {
      if (op.op === "text") this.words(op);
      else if (op.op === "image") this.image(op);
      else if (op.op === "use") this.stamp(op, drawing, forms);
      else if (op.op === "group" && !isPlain(op.ops)) this.group(op, drawing, forms);
      else this.doc.addContent(pathsOf([op]).trimEnd());
    }
  }

  private group(
    op: Extract<Op, { op: "group" }>,
    drawing: Drawing,
    forms: ReadonlyMap<string, string>,
  ): void {
    this.doc.save();
    if (op.clip) this.clipTo(op.clip);
    this.ops(op.ops, drawing, forms);
    this.doc.restore();
  }

  private clipTo(points: readonly { readonly x: number; readonly y: number }[]): void {
    const path = points
      .map((p, i) => `${number(p.x)} ${number(p.y)} ${i === 0 ? "m" : "l"}`)
      .join(" ");
    this.doc.addContent(`${path} h W n`);
  }

  /** A stamp kept once in the file: pages grow with the kinds of block, not with the blocks. */
  private form(ops: readonly Op[]): string {
    const { doc } = this;
    this.forms++;
    const name = `F${this.forms}`;
    const far = 14400;
    const form = doc.ref({
      Type: "XObject",
      Subtype: "Form",
      BBox: [-far, -far, far, far],
      Resources: {},
    });
    form.end(pathsOf(ops) as unknown as Uint8Array);
    const page = doc.page as unknown as { xobjects: Record<string, unknown> };
    page.xobjects[name] = form;
    return name;
  }

  private stamp(
    op: Extract<Op, { op: "use" }>,
    drawing: Drawing,
    forms: ReadonlyMap<string, string>,
  ): void {
    const { doc } = this;
    const matrix = op.matrix.map((v, i) => (i < 4 ? v.toFixed(9) : number(v))).join(" ");
    const form = forms.get(op.of);
    if (form) {
      doc.addContent(`q ${matrix} cm /${form} Do Q`);
      return;
    }
    doc.save();
    doc.addContent(`${matrix} cm`);
    this.ops(drawing.stamps[op.of] ?? [], drawing, forms);
    doc.restore();
  }

  private words(op: Extract<Op, { op: "text" }>): void {
    const { doc } = this;
    const face: Face = op.bold ? "bold" : "sans";
    const { glyphs, width } = setRuns(op.runs as Run[], face, op.size);
    const shift = op.anchor === "start" ? 0 : op.anchor === "end" ? width : width / 2;
    doc.save();
    doc.translate(op.at.x, op.at.y);
    if (op.turn !== 0) doc.rotate(op.turn);
    if (op.halo) doc.addContent(plate(-shift, width, op.size, op.halo.color));
    for (const g of glyphs) this.write({ ...g, x: g.x - shift, y: 0 }, op.color);
    doc.restore();
  }

  private image(op: Extract<Op, { op: "image" }>): void {
    const { doc } = this;
    doc.save();
    this.clipTo(op.clip);
    for (const tile of op.tiles) {
      doc.save();
      const [a, b, c, d, e, f] = tile;
      doc.transform(a, b, c, d, e, f);
      doc.image(op.data, 0, -op.height, { width: op.width, height: op.height });
      doc.restore();
    }
    doc.restore();
  }
}

/** The face in use, as the library keeps it. */
interface LaysOut {
  layoutRun(text: string, features: unknown): unknown;
}

/** The library lays a stretch out for its width and again for its glyphs: here each is, once in a file. */
function remember(face: LaysOut): void {
  const runs = new Map([PLAIN, FRACTION].map((features) => [features, new Map<string, unknown>()]));
  const layOut = face.layoutRun.bind(face);
  face.layoutRun = (text, features) => {
    const known = runs.get(features as typeof PLAIN);
    const run = known?.get(text) ?? layOut(text, features);
    known?.set(text, run);
    return run;
  };
}

/**
 * Whether a space is read between two stretches of one text: they stand on two lines, or apart on one
 * by more than a tenth of their height. A screen reader hears characters, not places.
 */
const standsApart = (g: Glyphs, next: Glyphs | undefined): boolean =>
  next !== undefined &&
  !g.text.endsWith(" ") &&
  (Math.abs(next.y - g.y) > g.size / 2 || next.x - (g.x + g.width) > g.size / 10);

/**
 * A plate of paper with rounded ends under a word on fabric, so that no hatch runs through it. (The
 * word itself, stroked with paper first, would stand twice in the text of the page.)
 */
function plate(x: number, width: number, size: number, color: string): string {
  const pad = size * 0.16;
  const left = x - pad;
  const right = x + width + pad;
  const top = -size * 0.74;
  const foot = size * 0.12;
  const r = size * 0.2;
  const k = r * 0.45;
  const path = [
    [left + r, top, "m"],
    [right - r, top, "l"],
    [right - k, top, right, top + k, right, top + r, "c"],
    [right, foot - r, "l"],
    [right, foot - k, right - k, foot, right - r, foot, "c"],
    [left + r, foot, "l"],
    [left + k, foot, left, foot - k, left, foot - r, "c"],
    [left, top + r, "l"],
    [left, top + k, left + k, top, left + r, top, "c"],
  ];
  const text = path
    .map((step) => step.map((v) => (typeof v === "number" ? number(v) : v)).join(" "))
    .join(" ");
  return `q ${rgb(color)} rg ${text} h f Q`;
}
