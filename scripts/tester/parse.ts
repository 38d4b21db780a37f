import { after, before, numberIn, numbersIn, sidesIn } from "./numbers.ts";
import { type Line, linesOf, type Print } from "./read.ts";

/** What a stranger has written down after reading the pattern once. */
export interface Reading {
  readonly unit: "in" | "mm";
  readonly sentence: string;
  readonly seam?: number;
  readonly top?: readonly [number, number];
  readonly block?: { readonly finished: number; readonly raw: number };
  readonly blocks?: number;
  readonly grid?: readonly [number, number];
  readonly usable: readonly number[];
  readonly fabrics: readonly Fabric[];
  readonly straighten?: number;
  /** Room for one wrong strip, and for reaching a repeat, by fabric letter. */
  readonly wrongStrip: ReadonlyMap<string, number>;
  readonly toRepeat: ReadonlyMap<string, number>;
  readonly cuts: readonly CutLine[];
  readonly hands: string;
  readonly proofs: readonly Proof[];
  readonly kinds: readonly { readonly name: string; readonly count: number }[];
  readonly steps: readonly Step[];
  readonly after: readonly AfterStep[];
  readonly map: ReadonlyMap<string, number>;
  readonly mapWords: string;
  readonly feet: readonly string[];
}

export interface Fabric {
  readonly letter: string;
  readonly text: string;
  readonly uses: ReadonlyMap<string, number>;
  readonly yards: readonly number[];
  /** Said with the fabric where the widths differ from fabric to fabric. */
  readonly usable?: number;
}

export interface CutLine {
  readonly fabric: string;
  readonly strips?: number;
  readonly wide?: number;
  readonly into: string;
  readonly letters: readonly string[];
  readonly name: string;
  readonly pieces?: number;
}

export interface Proof {
  readonly letter: string;
  readonly text: string;
}

export interface Step {
  readonly number: number;
  readonly name: string;
  readonly kind: string;
  readonly words: string;
  readonly stop: string;
}

export interface AfterStep {
  readonly number: number;
  readonly words: string;
}

const HEADINGS = [
  "How big is it?",
  "Is there enough?",
  "What do I cut?",
  "Does it cover?",
  "In what order?",
  "And then?",
] as const;
type Heading = (typeof HEADINGS)[number];

export function reading(print: readonly Print[]): Reading {
  const feet = linesOf(print).filter((l) => /Version .*Sewn with/.test(l.text));
  const footY = (page: number): number =>
    feet.find((f) => f.page === page)?.y ?? Number.POSITIVE_INFINITY;
  const body = print.filter((p) => p.y < footY(p.page) - 3);
  const lines = linesOf(body);
  const part = (h: Heading): Line[] => section(lines, h);
  const sentence = joined(
    lines.filter(
      (l) =>
        l.page === 1 && l.size >= 10.9 && l.size <= 12.1 && l.y < headingY(lines, "How big is it?"),
    ),
  );
  const supplies = suppliesIn(lines);
  return {
    unit: feet.some((f) => / (?:mm|cm) seam/.test(f.text)) ? "mm" : "in",
    sentence,
    seam: seamIn(sentence),
    ...sizesIn(part("How big is it?")),
    ...supplies,
    ...cutsIn(part("What do I cut?")),
    proofs: proofsIn(columnText(sectionPrint(body, lines, "Does it cover?"), 135)),
    ...stepsIn(body, lines),
    ...afterIn(body, lines),
    feet: feet.map((f) => f.text),
  };
}

function headingY(lines: readonly Line[], h: Heading): number {
  return lines.find((l) => l.text.startsWith(h))?.y ?? Number.POSITIVE_INFINITY;
}

const orderOf = (l: { readonly page: number; readonly y: number }): number => l.page * 1e5 + l.y;

function bounds(lines: readonly Line[], h: Heading): readonly [number, number] | undefined {
  const start = lines.find((l) => l.text.startsWith(h) && l.size > 12);
  if (!start) return undefined;
  const later = lines
    .filter((l) => HEADINGS.some((o) => o !== h && l.text.startsWith(o)) && l.size > 12)
    .map(orderOf)
    .filter((y) => y > orderOf(start) + 1);
  return [orderOf(start), Math.min(...later, Number.POSITIVE_INFINITY)];
}

/** A heading beside a picture begins at its own column: what lies left of it is not its text. */
function section(lines: readonly Line[], h: Heading): Line[] {
  const range = bounds(lines, h);
  const start = lines.find((l) => l.text.startsWith(h) && l.size > 12);
  if (!range || !start) return [];
  return lines.filter(
    (l) =>
      orderOf(l) > range[0] + 1 &&
      orderOf(l) < range[1] - 1 &&
      (l.page !== start.page || l.x >= start.x - 2),
  );
}

function sectionPrint(print: readonly Print[], lines: readonly Line[], h: Heading): Print[] {
  const range = bounds(lines, h);
  return range ? print.filter((p) => orderOf(p) > range[0] + 1 && orderOf(p) < range[1] - 1) : [];
}

const joined = (lines: readonly Line[]): string => lines.map((l) => l.text).join(" ");

function seamIn(sentence: string): number | undefined {
  return after(sentence, "sewn with an?") ?? before(sentence, "(in|mm) seam");
}

/** Each size stands over its caption and begins where the caption begins. */
function sizesIn(lines: readonly Line[]): Pick<Reading, "top" | "block" | "blocks" | "grid"> {
  const print = lines.flatMap((l) => l.parts);
  const captions = print.filter((p) => near95(p.size) && /^(the top|block|blocks)\b/.test(p.text));
  const out: {
    top?: [number, number];
    block?: { finished: number; raw: number };
    blocks?: number;
    grid?: [number, number];
  } = {};
  for (const c of captions) {
    const right = Math.min(
      ...captions.filter((o) => o.x > c.x + 5 && Math.abs(o.y - c.y) < 2).map((o) => o.x),
      1e4,
    );
    const own = print.filter((p) => p.page === c.page && p.x >= c.x - 2 && p.x < right - 2);
    const size = joined(
      linesOf(
        own.filter((p) => p.size > 12.2 && p.y < c.y && p.y > c.y - 24),
        200,
      ),
    );
    const words = joined(
      linesOf(
        own.filter((p) => near95(p.size) && p.y >= c.y - 1 && p.y < c.y + 13),
        200,
      ),
    );
    if (/top, finished/.test(words)) out.top = sidesIn(size);
    else if (/^block \(/.test(words)) {
      const raw = numberIn(words);
      const finished = numberIn(size);
      if (raw !== undefined && finished !== undefined) out.block = { finished, raw };
    } else if (/^blocks?,/.test(words)) {
      out.blocks = numberIn(size);
      const [rows, columns] = numbersIn(words);
      if (rows && columns) out.grid = [rows, columns];
    }
  }
  return out;
}

function suppliesIn(
  lines: readonly Line[],
): Pick<Reading, "usable" | "fabrics" | "straighten" | "wrongStrip" | "toRepeat"> {
  const own = section(lines, "Is there enough?");
  const head = own.find((l) => /usable width of/.test(l.text));
  const usable = own
    .filter((l) => head && Math.abs(l.y - head.y) < 2 && l !== head)
    .flatMap((l) => numbersIn(l.text));
  const start = own.filter((l) => /^[A-Z]{1,2}$/.test(l.text) && l.size > 11 && l.size < 15);
  const closing = own.find((l) => /^(Backing|Batting|Binding|To finish|Also:)/.test(l.text));
  const fabrics = start.map((mark, i): Fabric => {
    const next = start[i + 1];
    const end = next ? orderOf(next) - 14 : closing ? orderOf(closing) - 3 : Infinity;
    const row = own.filter(
      (l) =>
        l.page === mark.page &&
        l.x > mark.x + 10 &&
        orderOf(l) > orderOf(mark) - 15 &&
        orderOf(l) < Math.min(end, orderOf(mark) + 21),
    );
    const text = joined(row.filter((l) => !/yd$|\bm$|^[—]$|^sewn$/.test(l.text)));
    const yards = row
      .filter((l) => /(yd|\bm)$/.test(l.text) && l.text.length < 12)
      .flatMap((l) => numberIn(l.text) ?? []);
    return { letter: mark.text, text, uses: usesIn(text), yards };
  });
  const all = joined(own);
  return {
    usable,
    fabrics: fabrics.map((f) => ({
      ...f,
      usable: numbersIn(/, ([^,]*) (?:in|mm) usable/.exec(f.text)?.[1] ?? "")[0],
    })),
    straighten: before(all, "(?:in|mm) to straighten"),
    wrongStrip: byLetter(all, "wrong strip"),
    toRepeat: byLetter(all, "in the repeat"),
  };
}

/** "room for one wrong strip (A 4 1⁄2, B 3 1⁄4)" */
function byLetter(text: string, words: string): Map<string, number> {
  const list = new RegExp(`${words} \\(([^)]*)\\)`).exec(text)?.[1] ?? "";
  return new Map(
    list.split(",").flatMap((part) => {
      const letter = /^\s*([A-Z]{1,2}) /.exec(part)?.[1];
      const n = numberIn(part);
      return letter && n !== undefined ? [[letter, n] as const] : [];
    }),
  );
}

/** "Kelp: 48 wedges, 12 kites": only what stands after the name. */
function usesIn(text: string): Map<string, number> {
  const out = new Map<string, number>();
  for (const m of text.matchAll(/(\d+) ([a-z][a-z -]*[a-z])/g)) {
    if (/^(in|mm|usable|of|or|sewn)\b/.test(m[2])) continue;
    out.set(singular(m[2]), (out.get(singular(m[2])) ?? 0) + Number(m[1]));
  }
  return out;
}

export const singular = (name: string): string =>
  name
    .trim()
    .replace(/^(left|right) /, "")
    .replace(/halves$/, "half")
    .replace(/(s|x|sh|ch)es$/, "$1")
    .replace(/([^s])s$/, "$1");

/** The columns of the list begin under their heads, so each stretch of print is sorted by its x. */
function cutsIn(lines: readonly Line[]): Pick<Reading, "cuts" | "hands"> {
  const head = lines.find((l) => l.text.startsWith("cut them into"));
  const level =
    (y: number): ((l: { readonly y: number }) => boolean) =>
    (l) =>
      Math.abs(l.y - y) < 2.5;
  const heads = head ? lines.filter((l) => l.page === head.page && level(head.y)(l)) : [];
  const find = (text: string) => heads.flatMap((l) => l.parts).find((p) => p.text.trim() === text);
  const [wide, into, piece, pieces] = ["wide", "cut them into", "piece", "pieces"].map(find);
  if (!head || !wide || !into || !piece || !pieces) return { cuts: [], hands: "" };
  const note = lines.find((l) => /^Lefts/.test(l.text));
  const hands = note
    ? joined(
        lines.filter((l) => l.page === note.page && l.y >= note.y && Math.abs(l.x - note.x) < 3),
      )
    : "";
  const end = note ? orderOf(note) : Number.POSITIVE_INFINITY;
  const print = lines
    .flatMap((l) => l.parts)
    .filter((p) => orderOf(p) > orderOf(head) + 3 && orderOf(p) < end - 3);
  const inside = (from: number, to: number): Print[] =>
    print.filter((p) => p.x >= from - 3 && p.x < to - 3);
  const starts = inside(piece.x, pieces.x).filter(
    (p) => Math.abs(p.x - piece.x) < 3 && /^([A-Z]+\d|set [A-Z]|binding|backing)/.test(p.text),
  );
  let fabric = "";
  const cuts = starts.map((start, i): CutLine => {
    const next = starts[i + 1];
    const last = next ? orderOf(next) - 3 : Number.POSITIVE_INFINITY;
    const own = (from: number, to: number): string =>
      joined(
        linesOf(
          inside(from, to).filter(
            (p) =>
              orderOf(p) > orderOf(start) - 3.5 && orderOf(p) < Math.min(last, orderOf(start) + 60),
          ),
          200,
        ),
      );
    const front = inside(0, wide.x - 7).filter((p) => p.page === start.page && level(start.y)(p));
    const mark = front.find((p) => /^[A-Z]{1,2}$/.test(p.text.trim()));
    if (mark) fabric = mark.text.trim();
    const strips = front.find((p) => /^\d+$/.test(p.text.trim()));
    const across = own(wide.x - 7, into.x);
    const pieceText = own(piece.x, pieces.x);
    const count = inside(pieces.x, 1e4).find((p) => p.page === start.page && level(start.y)(p));
    return {
      fabric,
      ...(strips ? { strips: Number(strips.text) } : {}),
      ...(across ? { wide: numberIn(across) } : {}),
      into: own(into.x, piece.x),
      letters: pieceText.match(/[A-Z]+\d+/g) ?? [],
      name: singular(pieceText.replace(/[A-Z]+\d+/g, "").replace(/\b(and)\b|,/g, "")),
      ...(count ? { pieces: Number(count.text) } : {}),
    };
  });
  return { cuts, hands };
}

/** Text of equal columns, one after the other, each read downward; a new page begins anew. */
function columnText(print: readonly Print[], pitch: number): string {
  if (print.length === 0) return "";
  const left = Math.min(...print.map((p) => p.x));
  const words = print.filter((p) => p.size < 12);
  const columns = new Map<number, Print[]>();
  for (const p of words) {
    const k = Math.floor((p.x - left + 1) / pitch);
    columns.set(k, [...(columns.get(k) ?? []), p]);
  }
  return [...columns.entries()]
    .sort((a, b) => a[0] - b[0])
    .map(([, own]) => joined(linesOf(own, 200)))
    .join(" ");
}

function proofsIn(text: string): Proof[] {
  const at = [...text.matchAll(/\b([A-Z]+\d+) [a-z ]+\./g)];
  return at.map((m, i) => ({ letter: m[1], text: text.slice(m.index, at[i + 1]?.index) }));
}

function stepsIn(body: readonly Print[], lines: readonly Line[]): Pick<Reading, "steps" | "kinds"> {
  const own = sectionPrint(body, lines, "In what order?");
  const ownLines = linesOf(own);
  const kindLines = ownLines.filter((l) => / block, \d+ of them/.test(l.text));
  const kinds = kindLines.map((l) => ({
    name: l.text.split(" block, ")[0],
    count: numberIn(l.text.split(" block, ")[1]) ?? 0,
  }));
  const marks = own.filter((p) => p.size > 16 && /^\d+$/.test(p.text.trim()));
  marks.sort((a, b) => orderOf(a) - orderOf(b) || a.x - b.x);
  const rows = [...new Set(marks.map((m) => orderOf(m).toFixed(0)))].map(Number);
  const starts = [...rows, ...kindLines.map((l) => orderOf(l) - 10)].sort((a, b) => a - b);
  const steps = marks.map((m): Step => {
    const rowEnd = starts.find((s) => s > orderOf(m) + 3) ?? Number.POSITIVE_INFINITY;
    const right = Math.min(
      ...marks
        .filter((o) => Math.abs(orderOf(o) - orderOf(m)) < 2 && o.x > m.x + 5)
        .map((o) => o.x),
      Number.POSITIVE_INFINITY,
    );
    const cell = own.filter(
      (p) =>
        orderOf(p) > orderOf(m) - 3 &&
        orderOf(p) < rowEnd - 6 &&
        p.x >= m.x - 1 &&
        p.x < Math.min(right, m.x + 134) - 1,
    );
    const text = cell.filter((p) => p !== m);
    const name = joined(
      linesOf(
        text.filter((p) => Math.abs(p.y - m.y) < 2),
        200,
      ),
    );
    const words = linesOf(
      text.filter((p) => p.y > m.y + 3 && (near95(p.size) || p.size > 12)),
      200,
    );
    const stopAt = words.findIndex((l) => /Should measure/.test(l.text));
    const kind = [...kindLines].reverse().find((k) => orderOf(k) < orderOf(m));
    return {
      number: Number(m.text),
      name,
      kind: kind?.text.split(" block, ")[0] ?? "",
      words: joined(stopAt < 0 ? words : words.slice(0, stopAt)),
      stop: stopAt < 0 ? "" : joined(words.slice(stopAt)).replace("Should measure", "").trim(),
    };
  });
  return { steps, kinds };
}

const near95 = (size: number): boolean => Math.abs(size - 9.5) < 0.06;

function afterIn(
  body: readonly Print[],
  lines: readonly Line[],
): Pick<Reading, "after" | "map" | "mapWords"> {
  const own = sectionPrint(body, lines, "And then?");
  const map = new Map<string, number>();
  for (const p of own) {
    const t = p.text.trim();
    if (/^([A-Z]|\d)$/.test(t) && Math.abs(p.size - 9.5) > 0.2 && p.size < 12)
      map.set(t, (map.get(t) ?? 0) + 1);
  }
  const words = own.filter((p) => near95(p.size) || p.size > 12);
  const starts = words.filter((p) => /^\d+ [A-Z]/.test(p.text));
  const steps = starts
    .map((s): AfterStep => {
      const below = starts
        .filter((o) => Math.abs(o.x - s.x) < 3 && orderOf(o) > orderOf(s) + 2)
        .map(orderOf);
      const right = starts.filter((o) => o.x > s.x + 10).map((o) => o.x);
      const end = Math.min(...below, orderOf(s) + 150);
      const care = words.find((p) => /Take care/.test(p.text));
      const text = words.filter(
        (p) =>
          orderOf(p) >= orderOf(s) - 1 &&
          orderOf(p) < Math.min(end, care ? orderOf(care) : end) - 1 &&
          p.x >= s.x - 1 &&
          p.x < Math.min(...right, s.x + 400) - 2,
      );
      return { number: Number(s.text.split(" ")[0]), words: joined(linesOf(text, 200)) };
    })
    .sort((a, b) => a.number - b.number);
  const legend = linesOf(own, 200).find((l) => /block is turned|follow the picture/.test(l.text));
  return { after: steps, map, mapWords: legend?.text ?? "" };
}
