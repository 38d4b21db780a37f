import type { SayableKind } from "./nearest.ts";

/** A point as said; letters in capitals. The words are listed in docs/geometry/own-blocks.md. */
export type PointSaid =
  | { readonly kind: "named"; readonly name: string }
  | { readonly kind: "center" }
  | {
      readonly kind: "fraction";
      readonly of: number;
      readonly parts: number;
      readonly from: string;
      readonly to: string;
    }
  | {
      readonly kind: "distance";
      readonly length: string;
      readonly from: string;
      readonly to: string;
    }
  | { readonly kind: "crossing"; readonly lines: readonly [LineSaid, LineSaid] };

/** A straight line through two lettered points. */
export type LineSaid = readonly [string, string];

/** A seam as said, or all the seams of one circle of wedges. */
export type SeamSaid =
  | { readonly kind: "to"; readonly from: PointSaid; readonly to: PointSaid }
  | { readonly kind: "square" | "parallel"; readonly from: PointSaid; readonly line: LineSaid }
  | {
      readonly kind: "wedges";
      readonly count?: number;
      /** Degrees, repeated round the circle; all equal when left out. */
      readonly angles?: readonly number[];
      readonly round: PointSaid;
      /** Where the first of its seams points. */
      readonly toward?: PointSaid;
    };

/** What was read, or the words that were not understood and what they should have been. */
export type Read<T> =
  | { readonly ok: true; readonly said: T }
  | { readonly ok: false; readonly text: string; readonly kind: SayableKind };

const NAME = "([a-z]\\d*)";
const LINE = `(?:the )?(?:side |seam |edge |line )?${NAME}[ -]?${NAME}`;
const MIDDLE = "(?:middle|center|centre)";
const COUNT_WORDS: Readonly<Record<string, number>> = { a: 1, one: 1, two: 2, three: 3, four: 4 };
const PART_WORDS: Readonly<Record<string, number>> = {
  half: 2,
  third: 3,
  quarter: 4,
  fourth: 4,
  fifth: 5,
  sixth: 6,
  eighth: 8,
};
const FRACTION = `(?:(\\d+)\\/(\\d+)|(?:(${Object.keys(COUNT_WORDS).join("|")}) )?(${Object.keys(PART_WORDS).join("|")})s?)`;
const DIGIT = "\\d¼½¾⅓⅔⅛⅜⅝⅞";
const LENGTH = `([${DIGIT}][${DIGIT}\\s.,/-]*?\\s*(?:in|inch|inches|"|″|”|cm|mm)?)`;

const re = (body: string): RegExp => new RegExp(`^${body}$`, "i");
const upper = (s: string): string => s.toUpperCase();
const lineOf = (a: string, b: string): LineSaid => [upper(a), upper(b)];

interface Form<T> {
  readonly pattern: RegExp;
  readonly read: (m: readonly string[]) => T | undefined;
}

const POINTS: readonly Form<PointSaid>[] = [
  {
    pattern: re(`(?:the )?${MIDDLE} of ${LINE}`),
    read: ([a, b]) => ({ kind: "fraction", of: 1, parts: 2, from: upper(a), to: upper(b) }),
  },
  { pattern: re(`(?:the )?${MIDDLE}(?: of the block)?`), read: () => ({ kind: "center" }) },
  {
    pattern: re(`halfway (?:along|of|down|up) ${LINE}`),
    read: ([a, b]) => ({ kind: "fraction", of: 1, parts: 2, from: upper(a), to: upper(b) }),
  },
  {
    pattern: re(`(?:the )?${FRACTION}(?: of the way)? (?:of|along|down|up) ${LINE}`),
    read: ([n, d, count, part, a, b]) => fraction(n, d, count, part, a, b),
  },
  {
    pattern: re(`(?:the )?${FRACTION}(?: of the way)? from ${NAME} to ${NAME}`),
    read: ([n, d, count, part, a, b]) => fraction(n, d, count, part, a, b),
  },
  {
    pattern: re(`${LENGTH} (?:in )?from (?:corner |point )?${NAME} along ${LINE}`),
    read: ([length, p, a, b]) => {
      if (upper(p) !== upper(a) && upper(p) !== upper(b)) return undefined;
      return { kind: "distance", length, from: upper(p), to: upper(upper(p) === upper(a) ? b : a) };
    },
  },
  {
    pattern: re(`${LENGTH} (?:in )?from (?:corner |point )?${NAME} (?:toward|towards|to) ${NAME}`),
    read: ([length, a, b]) => ({ kind: "distance", length, from: upper(a), to: upper(b) }),
  },
  {
    pattern: re(`${LENGTH} along ${LINE}`),
    read: ([length, a, b]) => ({ kind: "distance", length, from: upper(a), to: upper(b) }),
  },
  {
    pattern: re(`(?:the )?(?:crossing|intersection) of ${LINE} (?:and|with) ${LINE}`),
    read: ([a, b, c, d]) => ({ kind: "crossing", lines: [lineOf(a, b), lineOf(c, d)] }),
  },
  {
    pattern: re(`where ${LINE} (?:meets|crosses) ${LINE}`),
    read: ([a, b, c, d]) => ({ kind: "crossing", lines: [lineOf(a, b), lineOf(c, d)] }),
  },
  {
    pattern: re(`(?:the )?(?:corner |point )?${NAME}`),
    read: ([a]) => ({ kind: "named", name: upper(a) }),
  },
];

function fraction(n: string, d: string, count: string, part: string, a: string, b: string) {
  const of = n === undefined ? COUNT_WORDS[(count ?? "one").toLowerCase()] : Number(n);
  const parts = d === undefined ? PART_WORDS[part.toLowerCase()] : Number(d);
  if (parts === 0 || of > parts) return undefined;
  return { kind: "fraction", of, parts, from: upper(a), to: upper(b) } as const;
}

const SQUARE = /^(?:from )?(.+) (?:square|perpendicular|at right angles) to (.+)$/i;
const PARALLEL = /^(?:from |through )?(.+) parallel to (.+)$/i;
const WEDGES =
  /^(?:(\d+) )?(?:equal )?wedges(?: of ([\d.,\s]+?)(?:°| degrees)?)? (?:round|around|about) (.+?)(?: (?:starting|from|toward|towards) (?:at |toward |towards |from )?(.+))?$/i;
const JUST_LINE = re(LINE);

/** One space between words, no full stop. */
const plain = (text: string): string =>
  text
    .trim()
    .replace(/\s+/g, " ")
    .replace(/\s*\.$/, "");

export function readPoint(text: string): Read<PointSaid> {
  for (const { pattern, read } of POINTS) {
    const m = pattern.exec(text);
    const said = m ? read(m.slice(1)) : undefined;
    if (said) return { ok: true, said };
  }
  return { ok: false, text, kind: "point" };
}

function readLine(text: string): Read<LineSaid> {
  const m = JUST_LINE.exec(text);
  if (m) return { ok: true, said: lineOf(m[1], m[2]) };
  return { ok: false, text, kind: "line" };
}

/** Reads one seam. `nearestForm` has words for what is not understood. */
export function readSeam(typed: string): Read<SeamSaid> {
  const text = plain(typed);
  const wedges = WEDGES.exec(text);
  if (wedges) return readWedges(wedges);
  for (const [kind, pattern] of [
    ["square", SQUARE],
    ["parallel", PARALLEL],
  ] as const) {
    const m = pattern.exec(text);
    if (!m) continue;
    const from = readPoint(m[1]);
    if (!from.ok) return from;
    const line = readLine(m[2]);
    return line.ok ? { ok: true, said: { kind, from: from.said, line: line.said } } : line;
  }
  return readFromTo(text);
}

/** `to` also stands inside points ("a third of the way from B to C"): every place is tried. */
function readFromTo(text: string): Read<SeamSaid> {
  const body = text.replace(/^(?:a )?(?:seam )?from /i, "");
  const halves = [...body.matchAll(/ to /gi)].map((m) => [
    body.slice(0, m.index),
    body.slice(m.index + 4),
  ]);
  let unread: Read<SeamSaid> = { ok: false, text, kind: "seam" };
  for (const [left, right] of halves) {
    const from = readPoint(left);
    const to = readPoint(right);
    if (from.ok && to.ok) return { ok: true, said: { kind: "to", from: from.said, to: to.said } };
    if (from.ok && !to.ok) unread = to;
    if (to.ok && !from.ok) unread = from;
  }
  return unread;
}

function readWedges([, count, angles, round, toward]: RegExpExecArray): Read<SeamSaid> {
  const center = readPoint(round);
  if (!center.ok) return center;
  const start = toward === undefined ? undefined : readPoint(toward);
  if (start && !start.ok) return start;
  const degrees = angles
    ?.split(/[\s,]+/)
    .filter(Boolean)
    .map(Number);
  if (degrees?.some((x) => !(x > 0 && x < 180)))
    return { ok: false, text: "wedges of", kind: "seam" };
  return {
    ok: true,
    said: {
      kind: "wedges",
      ...(count === undefined ? {} : { count: Number(count) }),
      ...(degrees === undefined ? {} : { angles: degrees }),
      round: center.said,
      ...(start === undefined ? {} : { toward: start.said }),
    },
  };
}
