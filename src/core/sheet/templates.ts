import { clip, halfPlanes, type Polygon, point } from "../geometry/index.ts";
import type { Length, PdfPoint } from "../measure/index.ts";
import type { Drawing, Mark, Picture } from "../picture/index.ts";
import { Column, moved, movedItem } from "./column.ts";
import { MEASURE, STYLES } from "./grid.ts";
import { drawn, type SheetJob, sayUnit, trueScale } from "./job.ts";
import type { Item, Page, Sheet } from "./model.ts";
import { draftReasons } from "./release.ts";
import { levelRuler, testSquares, uprightRuler } from "./ruler.ts";
import { quarterTurned, type Template, templatePicture, templatesOf } from "./shapes.ts";
import { setText } from "./text.ts";

/** Room for shapes, within the text block: right of the upright ruler, above the level one. */
const LEFT: PdfPoint = 52;
const TOP: PdfPoint = 70;
const SQUARES: PdfPoint = 152;
/** Key, level ruler and the margin of the sheet. */
const FOOT: PdfPoint = 98;
/** Height beside the test squares. */
const HEAD: PdfPoint = 40;
/** Tiles overlap by this much, so that two sheets can be laid on each other. */
const OVERLAP: PdfPoint = 36;

/**
 * Every piece at true size. On every page: a test square of 1 in and one of 2 cm, a ruler in both
 * units in each direction, and the request to measure before cutting. A shape larger than the sheet
 * is printed in parts that overlap, with marks to lay on each other.
 */
export function templateSheet(job: SheetJob): Sheet {
  const pages = packed(job, templatesOf(job));
  return {
    title: `${job.brief.title}: templates`,
    name: "templates",
    language: "en-US",
    pages: pages.map((items, i) => framed(job, items, i + 1, pages.length)),
  };
}

/** Shapes set in rows, the first beside the test squares; what is too large is set in tiles. */
function packed(job: SheetJob, templates: readonly Template[]): Item[][] {
  const { paper } = job;
  const room = { width: MEASURE - LEFT, height: paper.height - 40 - TOP - FOOT };
  const pages: Item[][] = [];
  const large: Template[] = [];
  let page: Item[] = [];
  const besideSquares = besideSquaresIn(room);
  const below = HEAD;
  let [x, y, row, right] = [0, 0, 0, besideSquares];
  const turnPage = (): void => {
    if (page.length > 0) pages.push(page);
    page = [];
    [x, y, row, right] = [0, 0, 0, besideSquares];
  };
  const drawings = templates.map((t) => fitting(job, t, room));
  const order = drawings
    .map((d, i) => ({ d, i }))
    .sort((a, b) => b.d.drawing.height - a.d.drawing.height || a.i - b.i);
  for (const { d, i } of order) {
    if (!fits(d.drawing, room)) {
      large.push(templates[i]);
      continue;
    }
    const { drawing } = d;
    if (x + drawing.width > right) {
      [x, y, row] = [0, y + row, 0];
      if (y < below && drawing.width > besideSquares) y = below;
      right = y < below ? besideSquares : room.width;
    }
    if (y + drawing.height > room.height) {
      turnPage();
      if (drawing.width > besideSquares) [y, right] = [below, room.width];
    }
    page.push({
      kind: "figure",
      alt: `${drawing.title}, true size`,
      x: paper.left + LEFT + x,
      y: 40 + TOP + y,
      drawing,
    });
    x += drawing.width + 8;
    row = Math.max(row, drawing.height + 6);
  }
  turnPage();
  for (const t of large) pages.push(...tiles(job, t, room));
  return pages;
}

interface Room {
  readonly width: PdfPoint;
  readonly height: PdfPoint;
}

/** Beside the squares a shape's labels may reach into their margin. */
const besideSquaresIn = (room: Room): PdfPoint => room.width - SQUARES + 14;

/** What is too wide to stand beside the squares begins below them. */
const fits = ({ width, height }: Room, room: Room): boolean =>
  width <= room.width &&
  height <= (width > besideSquaresIn(room) ? room.height - HEAD : room.height);

/** Upright or turned by a quarter, whichever fits. */
function fitting(job: SheetJob, t: Template, room: Room): { readonly drawing: Drawing } {
  const ways = [t, quarterTurned(t)].map((way, i) => ({
    drawing: drawn(job, templatePicture(job, way, i === 1), trueScale(job)),
  }));
  return ways.find((w) => fits(w.drawing, room)) ?? ways[0];
}

/** A large shape, the way round that takes the fewest sheets, and how many across and down. */
interface Tiling {
  readonly shape: Template;
  readonly upright: boolean;
  readonly whole: Picture;
  readonly across: number;
  readonly down: number;
  readonly wide: Length;
  readonly high: Length;
  readonly lap: Length;
}

function tilingOf(job: SheetJob, t: Template, room: Room): Tiling {
  const scale = trueScale(job);
  const lap = OVERLAP / scale;
  const [wide, high] = [room.width / scale, (room.height - HEAD) / scale];
  const ways = [t, quarterTurned(t)].map((shape, i): Tiling => {
    const whole = templatePicture(job, shape, i === 1, shape.finished);
    const across = Math.max(1, Math.ceil((whole.width - lap) / (wide - lap)));
    const down = Math.max(1, Math.ceil((whole.height - lap) / (high - lap)));
    return { shape, upright: i === 1, whole, across, down, wide, high, lap };
  });
  return ways[1].across * ways[1].down < ways[0].across * ways[0].down ? ways[1] : ways[0];
}

/**
 * Parts of one large shape, each a page: the window moved on, less the overlap; what room is over
 * is shared between both ends, so that no part is a splinter. Each part has its letter.
 */
function tiles(job: SheetJob, t: Template, room: Room): Item[][] {
  const scale = trueScale(job);
  const tiling = tilingOf(job, t, room);
  const { shape, upright, whole, across, down, wide, high, lap } = tiling;
  const over = (n: number, each: Length, of: Length): Length => (n * (each - lap) + lap - of) / 2;
  const pages: Item[][] = [];
  for (let r = 0; r < down; r++)
    for (let c = 0; c < across; c++) {
      const left = whole.left - over(across, wide, whole.width) + c * (wide - lap);
      const top = whole.bottom + whole.height + over(down, high, whole.height) - r * (high - lap);
      const part = partIn(shape, { left, bottom: top - high, width: wide, height: high });
      const own = templatePicture(job, shape, upright, part);
      const window: Picture = { ...own, left, bottom: top - high, width: wide, height: high };
      const marks = lapMarks(window, { r, c, across, down, lap });
      const drawing = drawn(job, { ...window, marks: [...own.marks, ...marks] }, scale);
      const edge: Polygon = [
        point(0, 0),
        point(0, drawing.height),
        point(drawing.width, drawing.height),
        point(drawing.width, 0),
      ];
      const title = `${whole.title}, part ${r * across + c + 1} of ${across * down}`;
      const clipped: Drawing = {
        ...drawing,
        title,
        ops: [{ op: "group", ops: drawing.ops, clip: edge }],
      };
      const words = setText(
        `**${title}:** row ${r + 1}, column ${c + 1}. Lay the rings of neighboring parts on each other.`,
        STYLES.text,
        job.paper.left + LEFT,
        40 + TOP + 10,
        room.width - SQUARES - 12,
      );
      pages.push([
        { kind: "text", role: "Caption", glyphs: words.glyphs },
        {
          kind: "figure",
          alt: title,
          x: job.paper.left + LEFT,
          y: 40 + TOP + HEAD,
          drawing: clipped,
        },
      ]);
    }
  return pages;
}

/** What of the sewn shape lies well inside a window. */
function partIn(
  shape: Template,
  w: {
    readonly left: Length;
    readonly bottom: Length;
    readonly width: Length;
    readonly height: Length;
  },
): Polygon {
  const frame: Polygon = [
    point(w.left, w.bottom),
    point(w.left + w.width, w.bottom),
    point(w.left + w.width, w.bottom + w.height),
    point(w.left, w.bottom + w.height),
  ];
  const part = halfPlanes(frame).reduce<Polygon>((p, h) => clip(p, h, 1e-9), shape.finished);
  return part.length >= 3 ? part : shape.finished;
}

/** Rings on the middle of every overlap, named alike on both sheets; dotted lines where it begins. */
function lapMarks(
  w: Picture,
  at: {
    readonly r: number;
    readonly c: number;
    readonly across: number;
    readonly down: number;
    readonly lap: Length;
  },
): Mark[] {
  const marks: Mark[] = [];
  const ring = (x: Length, y: Length, name: string): void => {
    const p = point(x, y);
    marks.push(
      { kind: "dot", at: p, line: "rule", ring: true },
      {
        kind: "text",
        at: point(x + at.lap * 0.14, y + at.lap * 0.1),
        text: name,
        size: 1,
        anchor: "start",
      },
    );
  };
  const seamAcross = (x: Length, column: number): void => {
    for (const [i, share] of [0.3, 0.7].entries())
      ring(x, w.bottom + w.height * share, `${at.r + 1}${"ab"[i]}${column}`);
  };
  const seamDown = (y: Length, row: number): void => {
    for (const [i, share] of [0.3, 0.7].entries())
      ring(w.left + w.width * share, y, `${at.c + 1}${"cd"[i]}${row}`);
  };
  const half = at.lap / 2;
  if (at.c > 0) seamAcross(w.left + half, at.c);
  if (at.c < at.across - 1) seamAcross(w.left + w.width - half, at.c + 1);
  if (at.r > 0) seamDown(w.bottom + w.height - half, at.r);
  if (at.r < at.down - 1) seamDown(w.bottom + half, at.r + 1);
  return marks;
}

/** What every template page carries round its shapes. */
function framed(job: SheetJob, shapes: readonly Item[], number: number, of: number): Page {
  const { paper } = job;
  const c = new Column(MEASURE - LEFT);
  c.question(
    "Templates, true size",
    "print at 100 percent, no fitting to the page",
    number === 1 ? "H1" : "H2",
  );
  c.paragraph("Measure before cutting", { ...STYLES.size, color: "accent" });
  c.paragraph(
    "Both squares, and both rulers over their whole length, must be true. If not, print again.",
    STYLES.small,
    { width: MEASURE - LEFT - SQUARES - 12 },
  );
  const upright = uprightRuler(10, 25);
  const level = levelRuler(5, 13);
  const squares = testSquares();
  const foot = paper.height - 76;
  const right = paper.left + MEASURE;
  const sign = new Column(96);
  const lines = [`Sheet T${number} of ${of}`, job.brief.title, `Version ${job.version}`, job.date];
  for (const text of draftReasons(job).length > 0 ? ["Draft", ...lines] : lines)
    sign.paragraph(text, STYLES.small, { align: "end" });
  return {
    width: paper.width,
    height: paper.height,
    items: [
      ...moved(c.block(), paper.left + LEFT, 40),
      {
        kind: "figure",
        alt: squares.title,
        x: right - squares.width,
        y: 40 + 28,
        drawing: squares,
      },
      ...shapes.map((s) => movedItem(s, 0, 0)),
      ...moved(keyBlock(job, MEASURE - LEFT).block(), paper.left + LEFT, foot - 16),
      { kind: "figure", alt: upright.title, x: paper.left - 4, y: 31, drawing: upright },
      { kind: "figure", alt: level.title, x: paper.left + LEFT - 5, y: foot, drawing: level },
      ...moved(sign.block(), right - 96, paper.height - 32 - sign.y),
    ],
  };
}

function keyBlock(job: SheetJob, width: PdfPoint): Column {
  const c = new Column(width);
  c.paragraph(
    `**Solid** cut. **Dashed** sew, ${sayUnit(job, job.seam)} inside. **Rings:** corners of the seam. **Filled dot:** the block's center.`,
    STYLES.small,
  );
  return c;
}
