import { answerBrief, sentenceText } from "../answer/index.ts";
import { type Brief, brief as schema } from "../brief/index.ts";
import type { FreeWord } from "./types.ts";

/** A sentence tried without any of the search: written by hand, answered in full, judged by its answer. */
export interface Tried {
  readonly text: string;
  readonly words: readonly string[];
  readonly width: number;
  readonly height: number;
  readonly blocks: number;
  readonly buy: Readonly<Record<string, number>>;
  readonly change: number;
}

interface Domain {
  readonly strips: readonly string[];
  readonly rows: readonly number[];
  readonly columns: readonly number[];
  /** "0": none. */
  readonly borders: readonly string[];
  /** Finished sides of blocks that float; as they are unless said. */
  readonly sides?: readonly string[];
}

const number = (text: string): number =>
  text.split(" ").reduce((t, part) => {
    const [a, b] = part.split("/");
    return t + Number(a) / Number(b ?? 1);
  }, 0);

/** Every sentence of a small domain that can be cut, each in at most `most` words other than now. */
export function tryAll(b: Brief, d: Domain, most: number): Tried[] {
  const { strip, side = "0" } = b.blocks[0] as { strip: string; side?: string };
  const floats = (d.sides ?? [side]).flatMap((f) => d.borders.map((w) => [f, w] as const));
  const border = b.quilt.borders[0]?.width ?? "0";
  const out: Tried[] = [];
  const far = (x: number, y: number): number =>
    x === y ? 0 : x === 0 || y === 0 ? 1 : Math.abs(Math.log(x / y));
  for (const s of d.strips)
    for (const r of d.rows)
      for (const c of d.columns)
        for (const [f, w] of floats) {
          const words = [
            ...(s === strip ? [] : ["strip"]),
            ...(r === b.quilt.rows ? [] : ["rows"]),
            ...(c === b.quilt.columns ? [] : ["columns"]),
            ...(f === side ? [] : ["float"]),
            ...(w === border ? [] : ["borders"]),
          ];
          if (words.length > most) continue;
          const brief = schema.parse({
            ...b,
            blocks: b.blocks.map((k) => ({ ...k, strip: s, ...(f !== "0" && { side: f }) })),
            quilt: {
              ...b.quilt,
              rows: r,
              columns: c,
              borders: w === "0" ? [] : [{ ...b.quilt.borders[0], width: w }],
            },
          });
          const a = answerBrief(brief);
          if (!a.quilt || a.findings.some((f) => f.severity === "blocks")) continue;
          const buy: Record<string, number> = {};
          for (const y of a.yardages) buy[y.fabricId] ??= y.buy;
          out.push({
            text: sentenceText(brief),
            words,
            width: a.quilt.width,
            height: a.quilt.height,
            blocks: r * c,
            buy,
            change:
              far(number(s), number(strip)) +
              far(r, b.quilt.rows) +
              far(c, b.quilt.columns) +
              far(number(f), number(side)) +
              far(number(w), number(border)),
          });
        }
  return out;
}

interface Judged extends Tried {
  readonly miss: number;
  readonly area: number;
}

/**
 * The list the documentation promises (docs/turning-round.md): the best of each choice of words, none
 * that changes more words to come no nearer, then the second of each ..., best first.
 */
export function nearestOf(
  tried: readonly Tried[],
  missOf: (t: Tried) => number | undefined,
  largest: boolean,
  most: number,
): string[] {
  const judged: Judged[] = tried.flatMap((t) => {
    const miss = missOf(t);
    const area = Math.round(t.width * t.height * 1e6) / 1e6;
    return miss === undefined ? [] : [{ ...t, miss, area }];
  });
  const before = (a: Judged, b: Judged): number => {
    if (a.miss !== b.miss) return a.miss - b.miss;
    if (largest && a.area !== b.area) return b.area - a.area;
    if (a.words.length !== b.words.length) return a.words.length - b.words.length;
    if (Math.abs(a.change - b.change) >= 1e-9) return a.change - b.change;
    return a.area - b.area;
  };
  const kept = judged.filter(
    (a) =>
      !judged.some(
        (b) =>
          b.words.length < a.words.length &&
          b.words.every((w) => a.words.includes(w)) &&
          b.miss <= a.miss &&
          (!largest || b.area >= a.area),
      ),
  );
  const groups = new Map<string, Judged[]>();
  for (const k of kept.sort(before)) {
    const key = [...k.words].sort().join();
    groups.set(key, [...(groups.get(key) ?? []), k]);
  }
  const out: Judged[] = [];
  for (let i = 0; i < most; i++) {
    const layer = [...groups.values()].flatMap((g) => g.slice(i, i + 1)).sort(before);
    out.push(...layer.slice(0, most - out.length));
  }
  return out.sort(before).map((t) => t.text);
}

export const SMALL_FREE: readonly FreeWord[] = ["strip", "rows", "columns", "borders"];
