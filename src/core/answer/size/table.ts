import type { Brief } from "../../brief/index.ts";
import { knownLength, type Length, printLength, printWithUnit } from "../../measure/index.ts";
import type { Wanted } from "../../quilt/index.ts";
import { amount } from "../say/buying.ts";
import type { Answer } from "../types/answer.ts";
import { readSize } from "../words/sizes.ts";
import { stepOfBrief, type WordProblem } from "../words/word.ts";
import { overWords, planWords } from "./sizes.ts";

/** One size of the design as a row: what was asked for, how it comes to that, what it takes. */
export interface OfferedSize {
  readonly name: string;
  readonly wanted: string;
  readonly how: string;
  readonly finished: string;
  readonly over: string;
  readonly blocks: number;
  /** All fabrics together, and one by one. */
  readonly buy: string;
  readonly fabrics: string;
}

export function offeredSizes(b: Brief, a: Answer): OfferedSize[] {
  const step = stepOfBrief(b);
  const sides = (w: Length, h: Length): string =>
    `${printLength(w, step)} x ${printWithUnit(h, step)}`;
  const named = new Map(b.fabrics.map((f) => [f.id, f.name]));
  return (a.sizes ?? []).map((s) => {
    const first = s.yardages.filter(
      (y, i) => s.yardages.findIndex((x) => x.fabricId === y.fabricId) === i,
    );
    return {
      name: s.name,
      wanted: sides(s.wanted.width, s.wanted.length),
      how: planWords(s.plan, step),
      finished: s.width === undefined || s.height === undefined ? "" : sides(s.width, s.height),
      over: overWords(s.plan.over, step),
      blocks: s.blocks,
      buy: amount(
        first.reduce((sum, y) => sum + y.buy, 0),
        a.unit,
      ),
      fabrics: first.map((y) => `${named.get(y.fabricId) ?? y.fabricId} ${y.buyText}`).join(", "),
    };
  });
}

/** "60 x 72": the sides of a finished top, typed. */
export function readTop(b: Brief, text: string): Wanted | WordProblem {
  const size = readSize(b, text);
  if ("problem" in size) return { problem: "Type the width and the length, such as 60 x 72." };
  return { width: knownLength(size.width, b.unit), length: knownLength(size.length, b.unit) };
}
