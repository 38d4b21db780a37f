import { fabricLetters } from "../../../core/answer/fabrics.ts";
import type { Question } from "../../../core/answer/types.ts";
import { printLength, stepOf } from "../../../core/measure/index.ts";
import type { Answered } from "../answers.ts";

/** An answer that can be pinned, as the pin says it and as it is read aloud. */
export interface Pinnable {
  readonly question?: Question["id"];
  readonly text: string;
  readonly label: string;
}

/** Every answer of this design that can be pinned, at what it is now. */
export function pinsFor({ brief, answer }: Answered): Pinnable[] {
  const { quilt, blocks, yardages } = answer;
  if (!quilt) return [];
  const step = stepOf(brief.step, brief.unit);
  const say = (x: number): string => printLength(x, step, 2);
  const letters = fabricLetters(brief);
  const size = `${say(quilt.width)} x ${say(quilt.height)}`;
  const block = blocks.find((b) => !b.id.includes("~"));
  const count = blocks.reduce((n, b) => n + (b.id.includes("~") ? 0 : b.count), 0);
  const bought = yardages
    .filter((y, i) => yardages.findIndex((z) => z.fabricId === y.fabricId) === i)
    .sort((a, b) => b.buy - a.buy);
  const nameOf = (id: string): string => brief.fabrics.find((f) => f.id === id)?.name ?? id;
  return [
    { question: "size", text: `size = ${size}`, label: `the size, ${size} ${brief.unit}` },
    ...(block
      ? [
          {
            text: `block = ${say(block.width)}`,
            label: `the block, ${say(block.width)} ${brief.unit}`,
          },
        ]
      : []),
    { text: `blocks = ${count}`, label: `the number of blocks, ${count}` },
    ...bought.map((y, i) => ({
      ...(i === 0 && { question: "enough" as const }),
      text: `yardage ${letters[y.fabricId]} <= ${y.buyText}`,
      label: `${y.buyText} of ${nameOf(y.fabricId)}`,
    })),
    ...brief.fabrics
      .filter((f) => f.kind !== "strip-set")
      .slice(0, 1)
      .map((f) => ({ text: `width = ${f.usable}`, label: `the usable width, ${f.usable}` })),
    {
      text: `ruler <= ${brief.ruler.longest ?? (brief.unit === "in" ? "8" : "200")}`,
      label: "the longest line of the ruler",
    },
  ];
}
