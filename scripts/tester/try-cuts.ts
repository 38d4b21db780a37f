import { after, before, near, numberIn, numbersIn, sidesIn } from "./numbers.ts";
import type { CutLine, Reading } from "./reading.ts";
import { bare, type Stuck, stuck } from "./stuck.ts";

export function cuts(r: Reading): Stuck[] {
  const letters = new Set(r.fabrics.map((f) => f.letter));
  const byPiece = new Map<string, CutLine[]>();
  for (const c of r.cuts)
    if (c.letters.length > 0)
      byPiece.set(c.letters.join(), [...(byPiece.get(c.letters.join()) ?? []), c]);
  const lines = r.cuts.flatMap((c) => {
    const where = `cutting ${c.letters.join(" and ")}`;
    return [
      ...stuck(where, !letters.has(c.fabric) && `fabric ${c.fabric} is not on the list`),
      ...stuck(
        where,
        c.letters.some((l) => l.replace(/\d+$/, "") !== c.fabric) &&
          `the piece's letter is not of fabric ${c.fabric}`,
      ),
      ...stuck(
        where,
        c.letters.length === 0 && !/^(set|binding|backing)/.test(c.name) && "no piece is named",
      ),
      ...stuck(where, fitsStrip(r, c)),
      ...stuck(where, agreesWithProof(r, c)),
    ];
  });
  const counts = [...byPiece].flatMap(([key, own]) => {
    const wantedLine = own.find((c) => c.pieces !== undefined);
    const wanted = wantedLine?.pieces;
    const given = own.map(piecesFrom);
    const where = `cutting ${key}`;
    if (wanted === undefined) return stuck(where, "no number of pieces is given");
    if (given.some((g) => g === undefined)) return [];
    const sum = given.reduce<number>((a, b) => a + (b ?? 0), 0);
    return stuck(where, sum < wanted && `${sum} come out, ${wanted} are wanted`);
  });
  return [...lines, ...counts, ...stripsFit(r)];
}

/** A strip is as wide as something cut from it; a wider one would be a number left over. */
function stripsFit(r: Reading): Stuck[] {
  const groups: CutLine[][] = [];
  for (const c of r.cuts) {
    if (c.strips !== undefined || groups.length === 0) groups.push([c]);
    else groups[groups.length - 1].push(c);
  }
  return groups.flatMap((group) => {
    const wide = group[0].wide ?? 0;
    const sizes = group.flatMap((c) => {
      const words = bare(c);
      const cells = after(words, "(?:squares?|rectangles?)");
      return sidesIn(words) ?? (cells === undefined ? [] : [cells]);
    });
    const onlyCells = group.every((c) => before(bare(c), "(?:squares?|rectangles?)") !== undefined);
    const odd =
      onlyCells && sizes.length > 0 && !sizes.some((x) => near(x, wide, 0.002 * wide + 0.13));
    return stuck(
      `cutting ${group[0].letters.join(" and ")}`,
      odd && `strips of ${wide} are cut, nothing of them is ${wide} wide`,
    );
  });
}

/** How many pieces a line of the list gives; undefined where its words do not say. */
function piecesFrom(c: CutLine): number | undefined {
  const words = bare(c);
  const cells = before(words, "(?:squares?|rectangles?)");
  if (cells !== undefined) {
    const each = /slice both halves/.test(words)
      ? 2
      : /each twice/.test(words)
        ? 4
        : /each once/.test(words)
          ? 2
          : 1;
    return cells * each;
  }
  const along = /along the length, (\d+) strips? [^:]*: (.*)$/.exec(words);
  if (along) return fromStrips(along[2], Number(along[1]));
  const joined = /joined to (\d+) lengths?/.exec(words);
  if (joined) return Number(joined[1]);
  return fromStrips(words.replace(/^.*: /, ""), c.strips);
}

/** "17 a strip, 14 from the last"; "17, 17 and 14"; "17 from 5, 11 from 1". */
function fromStrips(words: string, strips: number | undefined): number | undefined {
  const parts = numbersIn(words);
  if (/\d+ from \d+/.test(words)) {
    const pairs = [...words.matchAll(/(\d+) from (\d+)/g)];
    return pairs.reduce((sum, m) => sum + Number(m[1]) * Number(m[2]), 0);
  }
  if (/a strip/.test(words) && strips === undefined) return undefined;
  if (/a strip, \d+ from the last/.test(words)) return parts[0] * ((strips ?? 1) - 1) + parts[1];
  if (/a strip/.test(words)) return parts[0] * (strips ?? 1);
  return parts.reduce((a, b) => a + b, 0);
}

/** Squares side by side, or wedges head to tail, must not run off the usable width. */
function fitsStrip(r: Reading, c: CutLine): string | undefined {
  const usable = r.fabrics.find((f) => f.letter === c.fabric)?.usable ?? r.usable[0];
  if (usable === undefined || c.strips === undefined || c.wide === undefined) return undefined;
  const words = bare(c);
  if (words !== c.into || /along the length|joined|left whole|backing/.test(`${words} ${c.name}`))
    return undefined;
  const cells = before(words, "(?:squares?|rectangles?)");
  if (cells !== undefined) {
    const size = after(words, "(?:squares?|rectangles?)");
    const [a, b] = sidesIn(words) ?? [size, size];
    if (a === undefined || b === undefined) return "the size of the pieces is not given";
    // Laid either way, as many rows of them as the strip is wide enough for.
    const laid = (across: number, high: number): number =>
      Math.floor(usable / across + 1e-6) * Math.floor((c.wide ?? 0) / high + 1e-6);
    const most = Math.max(laid(a, b), laid(b, a)) * c.strips;
    return cells > most ? `${cells} of ${a} × ${b} do not come from ${c.strips} strips` : undefined;
  }
  const proof = r.proofs.find((p) => p.letter === c.letters[0]);
  const base = proof && after(proof.text, "Outer edge");
  const each = numberIn(words.replace(/^.*: /, ""));
  if (base === undefined || each === undefined || !proof) return undefined;
  const point = /point sharp/.test(proof.text) ? 0 : (after(proof.text, "point") ?? 0);
  const pitch = /turned end for end/.test(words) ? (base + point) / 2 : base;
  const long = base + (each - 1) * pitch;
  return long > usable + 0.01 ? `${each} wedges take ${long.toFixed(2)} of ${usable}` : undefined;
}

/** The cutting list and the proof speak of one strip or square. */
function agreesWithProof(r: Reading, c: CutLine): string | undefined {
  if (c.letters.length === 0) return undefined;
  const proof = r.proofs.find((p) => p.letter === c.letters[0]);
  if (!proof) return "no proof says how it is cut";
  const words = bare(c);
  const size = after(proof.text, "From an?");
  const square = before(words, "squares?") !== undefined;
  if (size === undefined || sidesIn(proof.text) || sidesIn(words) || /joined/.test(words))
    return undefined;
  const said = square
    ? after(words, "squares?")
    : (after(words, "trimmed to") ??
      after(words, "along the length, \\d+ strips?") ??
      (c.strips === undefined ? undefined : c.wide));
  if (said === undefined) return undefined;
  return near(size, said, 0.002 * said + 0.001)
    ? undefined
    : `${said} in the list, ${size} in the proof`;
}

/** Lefts and rights as the note counts them, against the list. */
export function hands(r: Reading): Stuck[] {
  const [left, right] = [/Lefts:(.*?)Rights:/, /Rights:(.*)$/].map(
    (m) => m.exec(r.hands)?.[1] ?? "",
  );
  const read = (text: string) =>
    [...text.matchAll(/(\d+) ([A-Z]+\d+)/g)].map((m) => ({ n: Number(m[1]), letter: m[2] }));
  const [lefts, rights] = [read(left), read(right)];
  const total = (list: readonly { n: number }[]): number => list.reduce((s, x) => s + x.n, 0);
  const both = r.cuts.filter((c) => c.letters.length > 1 && /both halves/.test(c.into));
  const pairs = both.flatMap((c) => {
    const named = [...lefts, ...rights].filter((x) => c.letters.includes(x.letter));
    return stuck(
      `cutting ${c.letters.join(" and ")}`,
      c.pieces !== undefined &&
        total(named) !== c.pieces &&
        `${total(named)} lefts and rights are named, ${c.pieces} are cut`,
    );
  });
  return [
    ...stuck("Lefts and rights", r.hands === "" && "nothing is said of lefts and rights"),
    ...stuck(
      "Lefts and rights",
      both.length > 0 &&
        total(lefts) !== total(rights) &&
        `${total(lefts)} lefts and ${total(rights)} rights from the same squares`,
    ),
    ...pairs,
    ...r.cuts.flatMap((c) => handOf(c, lefts, rights)),
  ];
}

interface Named {
  readonly n: number;
  readonly letter: string;
}

/** A piece cut by itself is named, with its number, under the hand that its name has. */
function handOf(c: CutLine, lefts: readonly Named[], rights: readonly Named[]): Stuck[] {
  const [letter, ...others] = c.letters;
  if (letter === undefined || others.length > 0) return [];
  const own = [...lefts, ...rights].find((x) => x.letter === letter);
  const hand = lefts.some((x) => x.letter === letter) ? "left" : own ? "right" : undefined;
  return [
    ...stuck(
      "Lefts and rights",
      c.hand !== undefined &&
        c.hand !== hand &&
        `${letter} is cut as a ${c.hand}, the note counts it ${hand ? `as a ${hand}` : "nowhere"}`,
    ),
    ...stuck(
      "Lefts and rights",
      own !== undefined &&
        c.pieces !== undefined &&
        own.n !== c.pieces &&
        `${own.n} ${letter} are named, ${c.pieces} are cut`,
    ),
  ];
}
