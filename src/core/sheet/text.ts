import type { PdfPoint } from "../measure/index.ts";
import { FRACTION_SLASH, type Run, runsOf } from "../picture/index.ts";
import { type Face, fileOf, fractionGap, fractionWidth, printable, widthOf } from "./faces.ts";
import type { Glyphs, Ink } from "./model.ts";

export interface Style {
  readonly face: Face;
  readonly size: PdfPoint;
  /** Distance of base lines. */
  readonly lead: PdfPoint;
  readonly color: Ink;
}

export interface Span {
  readonly text: string;
  readonly face?: Face;
  readonly color?: Ink;
  readonly size?: PdfPoint;
  readonly doubt?: boolean;
}

export type Rich = string | readonly Span[];

/** `**bold**` and `~~not proved~~` in plain text, the only markup the sheets need. */
export function spansOf(rich: Rich): Span[] {
  if (typeof rich !== "string") return [...rich];
  return rich.split(/(\*\*.+?\*\*|~~.+?~~)/).flatMap((part): Span[] => {
    if (part === "") return [];
    if (part.startsWith("**")) return [{ text: part.slice(2, -2), face: "bold" }];
    if (part.startsWith("~~")) return [{ text: part.slice(2, -2), doubt: true }];
    return [{ text: part }];
  });
}

/** A stretch placed from the beginning of its word. */
type Part = Omit<Glyphs, "y">;

/** What no line may break. */
interface Word {
  readonly parts: readonly Part[];
  readonly width: PdfPoint;
  /** Width of the space after it, when the line goes on. */
  readonly space: PdfPoint;
  /** Can be broken at its own spaces when it is wider than the line. */
  readonly pieces?: readonly Word[];
}

export interface SetText {
  readonly glyphs: readonly Glyphs[];
  readonly lines: number;
  readonly height: PdfPoint;
  /** Widest line. */
  readonly width: PdfPoint;
}

export type Align = "start" | "middle" | "end";

/**
 * Text set in lines no wider than `width`, first base line at `y`. A mixed number, a number with what
 * it counts or measures, and `19 × 51 in` are never broken. Lines are broken so that they come out
 * even: least sum of squares of the room left, the last line free.
 */
export function setText(
  rich: Rich,
  style: Style,
  x: PdfPoint,
  y: PdfPoint,
  width: PdfPoint,
  align: Align = "start",
): SetText {
  const words = wordsOf(rich, style).flatMap((w) => (w.width > width && w.pieces ? w.pieces : [w]));
  const lines = breakLines(words, width);
  const glyphs: Glyphs[] = [];
  let widest = 0;
  lines.forEach((line, i) => {
    const wide = lineWidth(line);
    widest = Math.max(widest, wide);
    const shift = align === "start" ? 0 : align === "end" ? width - wide : (width - wide) / 2;
    let at = x + shift;
    for (const [k, word] of line.entries()) {
      for (const part of word.parts)
        glyphs.push({ ...part, x: at + part.x, y: y + i * style.lead });
      at += word.width + (k < line.length - 1 ? word.space : 0);
    }
  });
  return {
    glyphs: joined(glyphs),
    lines: lines.length,
    height: lines.length * style.lead,
    width: widest,
  };
}

/** One line, never broken. */
export function setLine(
  rich: Rich,
  style: Style,
  x: PdfPoint,
  y: PdfPoint,
  align: Align = "start",
): SetText {
  const width = textWidth(rich, style);
  const left = align === "start" ? x : align === "end" ? x - width : x - width / 2;
  return setText(rich, style, left, y, width + 1);
}

export const textWidth = (rich: Rich, style: Style): PdfPoint => lineWidth(wordsOf(rich, style));

const lineWidth = (line: readonly Word[]): PdfPoint =>
  line.reduce((sum, w, i) => sum + w.width + (i < line.length - 1 ? w.space : 0), 0);

/** Stretches that follow one another in one face become one, so that extracted text has its spaces. */
function joined(glyphs: readonly Glyphs[]): Glyphs[] {
  const out: Glyphs[] = [];
  for (const g of glyphs) {
    const last = out[out.length - 1];
    const same =
      last !== undefined &&
      !last.fraction &&
      !g.fraction &&
      last.y === g.y &&
      last.face === g.face &&
      last.size === g.size &&
      last.color === g.color &&
      last.doubt === g.doubt &&
      last.more === g.more;
    const gap = last ? g.x - (last.x + last.width) : 0;
    const space = same ? widthOf(" ", g.face, g.size) : 0;
    if (same && last && Math.abs(gap - space) < 0.02 * g.size) {
      const text = `${last.text} ${g.text}`;
      out[out.length - 1] = { ...last, text, width: widthOf(text, g.face, g.size) };
    } else out.push(g);
  }
  return out;
}

/** The runs of a picture's label from x = 0 on the base line y = 0, and how wide they are. */
export function setRuns(
  runs: readonly Run[],
  face: Face,
  size: PdfPoint,
): { readonly glyphs: readonly Glyphs[]; readonly width: PdfPoint } {
  const style: Style = { face, size, lead: size, color: "ink" };
  const glyphs: Glyphs[] = [];
  let x = 0;
  for (const run of runs) {
    if (run.kind === "text" && /^ *$/.test(run.text)) {
      x += run.text.length * widthOf(" ", face, size);
      continue;
    }
    const word = wordOf([{ run, span: { text: "" }, spaced: false }], style);
    for (const part of word.parts) glyphs.push({ ...part, x: x + part.x, y: 0 });
    x += word.width;
  }
  return { glyphs, width: x };
}

// --- words ---------------------------------------------------------------------------------------

interface Token {
  readonly run: Run;
  readonly span: Span;
  /** A space stood before it. */
  readonly spaced: boolean;
}

/** Words that were made, by what they say and how: a pattern is set again at every density it is tried at. */
const made = new Map<string, readonly Word[]>();
const MOST_MADE = 4000;

function wordsOf(rich: Rich, style: Style): readonly Word[] {
  const says = typeof rich === "string" ? rich : JSON.stringify(rich);
  const key = `${style.face} ${style.size} ${style.color} ${says}`;
  const known = made.get(key);
  if (known) return known;
  if (made.size >= MOST_MADE) made.clear();
  const words = wordsIn(rich, style);
  made.set(key, words);
  return words;
}

function wordsIn(rich: Rich, style: Style): Word[] {
  const groups: Token[][] = [];
  for (const token of tokensOf(spansOf(rich))) {
    if (token.spaced || groups.length === 0) groups.push([token]);
    else groups[groups.length - 1].push(token);
  }
  const words = groups.map((g) => wordOf(g, style));
  return glued(words, groups);
}

/** Runs cut at spaces; a fraction stays whole. */
function tokensOf(spans: readonly Span[]): Token[] {
  const out: Token[] = [];
  let spaced = false;
  for (const span of spans) {
    for (const run of runsOf(span.text)) {
      if (run.kind === "fraction") {
        out.push({ run, span, spaced });
        spaced = false;
        continue;
      }
      for (const part of run.text.split(/( +)/)) {
        if (part === "") continue;
        if (part.startsWith(" ")) {
          spaced = true;
          continue;
        }
        out.push({ run: { kind: "text", text: part }, span, spaced });
        spaced = false;
      }
    }
  }
  return out;
}

function wordOf(tokens: readonly Token[], style: Style): Word {
  const parts: Part[] = [];
  let x = 0;
  let face = style.face;
  let size = style.size;
  for (const { run, span } of tokens) {
    face = span.face ?? style.face;
    size = span.size ?? style.size;
    const look = {
      face,
      size,
      color: span.color ?? style.color,
      ...(span.doubt ? { doubt: true } : {}),
    };
    if (run.kind === "fraction") {
      if (run.whole !== "") {
        const width = widthOf(run.whole, face, size);
        parts.push({ ...look, x, text: `${run.whole} `, width });
        x += width + fractionGap(face, size);
      }
      const width = fractionWidth(run.above, run.below, face, size);
      parts.push({
        ...look,
        x,
        text: `${run.above}${FRACTION_SLASH}${run.below}`,
        width,
        fraction: true,
      });
      x += width;
      continue;
    }
    for (const stretch of byFile(printable(run.text, face), face)) {
      const width = widthOf(stretch.text, face, size);
      parts.push({
        ...look,
        x,
        text: stretch.text,
        width,
        ...(stretch.more ? { more: true } : {}),
      });
      x += width;
    }
  }
  return { parts, width: x, space: widthOf(" ", face, size) };
}

/** Text cut where the file of its characters changes. */
function byFile(text: string, face: Face): { text: string; more: boolean }[] {
  const out: { text: string; more: boolean }[] = [];
  for (const c of text) {
    const more = fileOf(face, c) === "more";
    const last = out[out.length - 1];
    if (last && last.more === more) last.text += c;
    else out.push({ text: c, more });
  }
  return out;
}

const isNumber = (tokens: readonly Token[]): boolean => {
  const last = tokens[tokens.length - 1].run;
  return last.kind === "fraction" || /^[(]?\d[\d.,]*$/.test(last.text);
};
const isBetween = (tokens: readonly Token[]): boolean => {
  const { run } = tokens[0];
  return tokens.length === 1 && run.kind === "text" && /^(×|by|to|and|of)$/.test(run.text);
};
/** A letter of a fabric, or "step", before its number: `A 4 1/2`, `step 3`. */
const isName = (tokens: readonly Token[]): boolean => {
  const { run } = tokens[tokens.length - 1];
  return run.kind === "text" && /^[(]?([A-Z]{1,2}|step)$/.test(run.text);
};
const beginsNumber = ([{ run }]: readonly Token[]): boolean =>
  run.kind === "fraction" || /^\d/.test(run.text);
const isTimes = (tokens: readonly Token[]): boolean => {
  const { run } = tokens[0];
  return tokens.length === 1 && run.kind === "text" && run.text === "×";
};

/** No break between a number and what follows it, nor in `19 × 51` and `2 by 6`. */
function glued(words: readonly Word[], groups: readonly Token[][]): Word[] {
  const out: Word[][] = [];
  words.forEach((word, i) => {
    const before = groups[i - 1];
    const afterNumber = before !== undefined && isNumber(before) && !endsClause(before);
    const between =
      before !== undefined &&
      isBetween(before) &&
      i >= 2 &&
      isNumber(groups[i - 2]) &&
      (isTimes(before) || isNumber(groups[i]));
    const named = before !== undefined && isName(before) && beginsNumber(groups[i]);
    if (afterNumber || between || named) out[out.length - 1].push(word);
    else out.push([word]);
  });
  return out.map((w) => (w.length === 1 ? w[0] : together(w)));
}

const endsClause = (tokens: readonly Token[]): boolean => {
  const { run } = tokens[tokens.length - 1];
  return run.kind === "text" && /[.,;:)]$/.test(run.text);
};

function together(words: readonly Word[]): Word {
  const parts: Part[] = [];
  let x = 0;
  words.forEach((w, i) => {
    for (const p of w.parts) parts.push({ ...p, x: x + p.x });
    x += w.width + (i < words.length - 1 ? w.space : 0);
  });
  return { parts, width: x, space: words[words.length - 1].space, pieces: words };
}

// --- lines ---------------------------------------------------------------------------------------

/**
 * As few lines as there can be, and of those the evenest: least sum of squared room over all lines
 * but the last. A last line of one short word costs extra.
 */
function breakLines(words: readonly Word[], width: PdfPoint): Word[][] {
  const n = words.length;
  if (n === 0) return [];
  const best: number[] = new Array(n + 1).fill(Number.POSITIVE_INFINITY);
  const next: number[] = new Array(n + 1).fill(n);
  best[n] = 0;
  for (let i = n - 1; i >= 0; i--) {
    let wide = 0;
    for (let j = i; j < n; j++) {
      wide += words[j].width;
      const room = width - wide;
      if (room < -0.01 && j > i) break;
      const over = room < -0.01 ? 1e6 : 0;
      const isLast = j === n - 1;
      const lonely = isLast && i > 0 && j === i && wide < width / 4 ? width * width * 0.05 : 0;
      const cost = over + width * width + (isLast ? 0 : room * room) + lonely + best[j + 1];
      if (cost < best[i]) {
        best[i] = cost;
        next[i] = j + 1;
      }
      wide += words[j].space;
    }
  }
  const lines: Word[][] = [];
  for (let i = 0; i < n; i = next[i]) lines.push(words.slice(i, next[i]));
  return lines;
}
