import { after, before, numberIn, numbersIn, sidesIn } from "./numbers.ts";
import { type Line, linesOf, type Print } from "./read.ts";
import type { CutLine, Fabric, Reading } from "./reading.ts";
import { joined, near95, orderOf, section } from "./sections.ts";

/** Each size stands over its caption and begins where the caption begins. */
export function sizesIn(
  lines: readonly Line[],
): Pick<Reading, "top" | "block" | "blocks" | "halves" | "grid"> {
  const print = lines.flatMap((l) => l.parts);
  const captions = print.filter(
    (p) => near95(p.size) && /^(the top|(half )?blocks?)\b/.test(p.text),
  );
  const out: {
    top?: [number, number];
    block?: { finished: number; raw: number };
    blocks?: number;
    halves?: number;
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
        own.filter((p) => p.size > 11 && p.y < c.y && p.y > c.y - 24),
        200,
      ),
    );
    const next = Math.min(...own.filter((p) => p.size > 11 && p.y > c.y).map((p) => p.y));
    const words = joined(
      linesOf(
        own.filter((p) => near95(p.size) && p.y >= c.y - 1 && p.y < Math.min(c.y + 36, next)),
        200,
      ),
    );
    if (/top, finished/.test(words)) out.top = sidesIn(size);
    else if (/^(half )?block \(/.test(words)) {
      const raw = numberIn(words);
      const finished = numberIn(size);
      if (raw !== undefined && finished !== undefined) out.block = { finished, raw };
    } else if (out.grid === undefined) {
      // The first is meant: a caption may run on with a line that begins with "blocks" too.
      const count = numberIn(size) ?? 0;
      const allHalves = words.startsWith("half");
      out.blocks = allHalves ? 0 : count;
      out.halves = allHalves ? count : (before(words, "half blocks?") ?? 0);
      const [, rows, columns] = /(\d+) rows? of (\d+)/.exec(words) ?? [];
      if (rows && columns) out.grid = [Number(rows), Number(columns)];
    }
  }
  return out;
}

export function suppliesIn(
  lines: readonly Line[],
): Pick<
  Reading,
  "usable" | "fabrics" | "straighten" | "wrongStrip" | "toRepeat" | "extra" | "washed"
> {
  const own = section(lines, "Is there enough?");
  const head = own.find((l) => /usable width of/.test(l.text));
  const usable = own
    .filter((l) => head && l.page === head.page && Math.abs(l.y - head.y) < 2)
    .flatMap((l) => numbersIn(l.text));
  const start = own.filter((l) => /^[A-Z]{1,2}$/.test(l.text) && l.size > 11 && l.size < 15);
  const fabrics = start.map((mark): Fabric => {
    const beside = own.filter((l) => l.page === mark.page && l.x > mark.x + 10);
    const yard = (l: Line): boolean => /(yd|\bm)$/.test(l.text) && l.text.length < 12;
    const row = rowAt(
      beside.filter((l) => !yard(l) && !/^(—|sewn)$/.test(l.text)),
      orderOf(mark),
    );
    const text = joined(row);
    const yards = beside
      .filter((l) => yard(l) && Math.abs(orderOf(l) - orderOf(mark)) < 3)
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
    extra: byLetter(all, "extra"),
    washed: washedIn(all),
  };
}

/** Lines of one row follow each other at their lead; the row is the one that reaches past its letter. */
function rowAt(lines: readonly Line[], order: number): readonly Line[] {
  const LEAD = 13;
  const rows: Line[][] = [];
  for (const l of [...lines].sort((a, b) => orderOf(a) - orderOf(b))) {
    const last = rows.at(-1)?.at(-1);
    if (last && orderOf(l) - orderOf(last) <= LEAD) rows[rows.length - 1].push(l);
    else rows.push([l]);
  }
  const reaches = (row: readonly Line[]): boolean =>
    orderOf(row[0]) <= order + LEAD && orderOf(row[row.length - 1]) >= order - LEAD;
  return rows.find(reaches) ?? [];
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

/** "A and C, losing 4 per cent of the length": the part that is lost, by fabric letter. */
function washedIn(text: string): Map<string, number> {
  const words = /Wash before cutting: (.*?)\. Widths/.exec(text)?.[1] ?? "";
  return new Map(
    words.split("; ").flatMap((group) => {
      const lost = (after(group, "losing") ?? 0) / 100;
      const letters = group.split(", losing")[0].match(/\b[A-Z]{1,2}\b/g) ?? [];
      return letters.map((letter) => [letter, lost] as const);
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
export function cutsIn(lines: readonly Line[]): Pick<Reading, "cuts" | "hands"> {
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
      ...(/\b(left|right) /.test(pieceText)
        ? { hand: /\bleft /.test(pieceText) ? ("left" as const) : ("right" as const) }
        : {}),
      name: singular(pieceText.replace(/[A-Z]+\d+/g, "").replace(/\b(and)\b|,/g, "")),
      ...(count ? { pieces: Number(count.text) } : {}),
    };
  });
  return { cuts, hands };
}
