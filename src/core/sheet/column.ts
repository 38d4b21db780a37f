import type { PdfPoint } from "../measure/index.ts";
import type { Drawing } from "../picture/index.ts";
import { MEASURE, type Paper, STYLES } from "./grid.ts";
import type { Cell, Glyphs, Ink, Item, Page, TextRole } from "./model.ts";
import { type Align, type Rich, type SetText, type Style, setLine, setText } from "./text.ts";

/** Items set from y = 0 downward, ready to be put on a page. */
export interface Block {
  readonly items: readonly Item[];
  readonly height: PdfPoint;
  /** Gap above it when it follows another on a page; the page's own when not said. */
  readonly before?: PdfPoint;
  /** Set in its stead where it comes first on a further page: the heads of its table again. */
  readonly atTop?: Block;
}

export function movedItem(item: Item, dx: PdfPoint, dy: PdfPoint): Item {
  const move = (glyphs: readonly Glyphs[]): Glyphs[] =>
    glyphs.map((g) => ({ ...g, x: g.x + dx, y: g.y + dy }));
  switch (item.kind) {
    case "text":
    case "furniture":
      return { ...item, glyphs: move(item.glyphs) };
    case "table":
      return {
        ...item,
        rows: item.rows.map((row) => row.map((cell) => ({ ...cell, glyphs: move(cell.glyphs) }))),
      };
    case "figure":
    case "box":
      return { ...item, x: item.x + dx, y: item.y + dy };
    case "rule":
      return {
        ...item,
        from: [item.from[0] + dx, item.from[1] + dy],
        to: [item.to[0] + dx, item.to[1] + dy],
      };
  }
}

/** Lowest point that an item reaches. */
export function footOf(item: Item): PdfPoint {
  const lowest = (glyphs: readonly Glyphs[]): PdfPoint => Math.max(0, ...glyphs.map((g) => g.y));
  switch (item.kind) {
    case "text":
    case "furniture":
      return lowest(item.glyphs);
    case "table":
      return Math.max(0, ...item.rows.flat().map((cell) => lowest(cell.glyphs)));
    case "figure":
      return item.y + item.drawing.height;
    case "box":
      return item.y + item.height;
    case "rule":
      return Math.max(item.from[1], item.to[1]);
  }
}

export const moved = (block: Block, dx: PdfPoint, dy: PdfPoint): Item[] =>
  block.items.map((item) => movedItem(item, dx, dy));

/** Blocks side by side, tops level. */
export function beside(blocks: readonly { readonly block: Block; readonly x: PdfPoint }[]): Block {
  return {
    items: blocks.flatMap(({ block, x }) => moved(block, x, 0)),
    height: Math.max(0, ...blocks.map((b) => b.block.height)),
  };
}

/** Blocks one below the other. */
export function stacked(blocks: readonly Block[], gap: PdfPoint): Block {
  const items: Item[] = [];
  let y = 0;
  blocks.forEach((b, i) => {
    if (i > 0) y += gap;
    items.push(...moved(b, 0, y));
    y += b.height;
  });
  return { items, height: y };
}

/** One column being set from the top down. Every call leaves `y` below what it set. */
export class Column {
  readonly width: PdfPoint;
  y: PdfPoint = 0;
  private readonly items: Item[] = [];

  constructor(width: PdfPoint = MEASURE) {
    this.width = width;
  }

  block(): Block {
    return { items: this.items, height: this.y };
  }

  gap(by: PdfPoint): void {
    this.y += by;
  }

  add(...items: readonly Item[]): void {
    this.items.push(...items);
  }

  /** A whole block, below what is there. */
  put(block: Block, x: PdfPoint = 0): void {
    this.add(...moved(block, x, this.y));
    this.y += block.height;
  }

  rule(
    width: PdfPoint = 0.35,
    color: Ink = "lost",
    from: PdfPoint = 0,
    to: PdfPoint = this.width,
  ): void {
    this.add({ kind: "rule", from: [from, this.y], to: [to, this.y], width, color });
  }

  /** A question as heading, with the trade's word for it at the right. */
  question(heading: string, trade: string, role: TextRole = "H2"): void {
    this.rule(0.6, "ink");
    const y = this.y + 15;
    const left = setLine(heading, STYLES.question, 0, y);
    const right = setText(
      trade,
      STYLES.trade,
      left.width + 16,
      y,
      this.width - left.width - 16,
      "end",
    );
    this.add({ kind: "text", role, glyphs: left.glyphs });
    this.add({ kind: "text", role: "Note", glyphs: right.glyphs });
    this.y += 21 + (right.lines - 1) * STYLES.trade.lead;
  }

  paragraph(rich: Rich, style: Style = STYLES.text, more: Partial<Placed> = {}): SetText {
    const x = more.x ?? 0;
    const width = more.width ?? this.width - x;
    const first = this.y + style.size * 0.95;
    const set = setText(rich, style, x, first, width, more.align ?? "start");
    this.add({ kind: "text", role: more.role ?? "P", glyphs: set.glyphs });
    this.y += set.height;
    return set;
  }

  figure(drawing: Drawing, x: PdfPoint = 0, alt: string = drawing.title): void {
    this.add({ kind: "figure", alt, x, y: this.y, drawing });
    this.y += drawing.height;
  }

  /** "Should measure", the number, and how: what a hand must check. */
  stop(number: string, how: string, x: PdfPoint = 0, width: PdfPoint = this.width - x): void {
    this.add({
      kind: "rule",
      from: [x, this.y],
      to: [x + 22, this.y],
      width: 1.6,
      color: "accent",
    });
    const y = this.y;
    const label = setLine("Should measure", STYLES.stop, x, y + 13.5);
    const beside = setLine(number, STYLES.stopNumber, x + label.width + 5, y + 13.5);
    const fits = label.width + 5 + beside.width <= width;
    const below = fits ? 0 : 13;
    const value = fits ? beside : setLine(number, STYLES.stopNumber, x, y + 26.5);
    const words = setText(how, STYLES.text, x, y + 25.5 + below, width);
    this.add({
      kind: "text",
      role: "P",
      glyphs: [...label.glyphs, ...value.glyphs, ...words.glyphs],
    });
    this.y += 17 + below + words.lines * STYLES.text.lead + 3;
  }
}

export interface Placed {
  readonly x: PdfPoint;
  readonly width: PdfPoint;
  readonly align: Align;
  readonly role: TextRole;
}

/** A table cell set on one base line. */
export function cell(
  rich: Rich,
  style: Style,
  x: PdfPoint,
  y: PdfPoint,
  align: Align = "start",
  header = false,
): Cell {
  const { glyphs } = setLine(rich, style, x, y, align);
  return header ? { glyphs, header } : { glyphs };
}

/**
 * A number that lines up in its column: the whole number ends on the axis and the fraction hangs to
 * the right of it; decimals line up on the point.
 */
export function numberCell(text: string, style: Style, axis: PdfPoint, y: PdfPoint): Cell {
  const m = /^(\d+)( \d+\/\d+|\.\d+)?(.*)$/.exec(text);
  if (!m) return cell(text, style, axis, y);
  const whole = setLine(m[1], style, 0, 0);
  const { glyphs } = setLine(text, style, axis - whole.width, y);
  return { glyphs };
}

/**
 * Blocks put on pages, each whole on one page; what does not fit goes to the next. A block higher
 * than a page is a broken contract.
 */
export function paginate(
  blocks: readonly Block[],
  sheet: Paper,
  gap: PdfPoint,
  first: PdfPoint = 0,
): Item[][] {
  const pages: Item[][] = [[]];
  const room = sheet.bottom - sheet.top;
  let y = first;
  blocks.forEach((block) => {
    const here = y === first ? y : y + (block.before ?? gap);
    if (here + block.height > room + 0.01 && pages[pages.length - 1].length > 0) {
      pages.push([]);
      const top = block.atTop ?? block;
      pages[pages.length - 1].push(...moved(top, sheet.left, sheet.top));
      y = top.height;
      return;
    }
    pages[pages.length - 1].push(...moved(block, sheet.left, sheet.top + here));
    y = here + block.height;
  });
  return pages;
}

/** The running foot: what the sheet is, its version and date, and which of how many it is. */
export function withFeet(
  pages: readonly (readonly Item[])[],
  sheet: Paper,
  left: string,
  right: (index: number, of: number) => string,
): Page[] {
  return pages.map((items, i) => {
    const y = sheet.foot + 11;
    const a = setLine(left, STYLES.small, sheet.left, y);
    const b = setLine(right(i, pages.length), STYLES.small, sheet.left + MEASURE, y, "end");
    return {
      width: sheet.width,
      height: sheet.height,
      items: [
        ...items,
        {
          kind: "rule",
          from: [sheet.left, sheet.foot],
          to: [sheet.left + MEASURE, sheet.foot],
          width: 0.35,
          color: "soft",
        },
        { kind: "furniture", glyphs: [...a.glyphs, ...b.glyphs] },
      ],
    };
  });
}

const WORDS = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];
/** one, two ... ten, 11: for "Side one of two". */
export const numberWord = (n: number): string => WORDS[n - 1] ?? String(n);
