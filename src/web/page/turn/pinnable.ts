import { fabricLetters } from "../../../core/answer/cut/fabrics.ts";
import type { Question } from "../../../core/answer/types/answer.ts";
import type { Brief } from "../../../core/brief/index.ts";
import { printLength, stepOf } from "../../../core/measure/index.ts";
import type { Answered } from "../answers.ts";

/** An answer that can be pinned, as the pin says it and as it is read aloud. */
export interface Pinnable {
  /** The question whose answer it is. */
  readonly question: Question["id"];
  readonly text: string;
  /** The number as it stands beside the answer. */
  readonly shows: string;
  /** What it is, for those who hear it. */
  readonly label: string;
}

/** Every answer of this design that can be pinned, at what it is now. */
export function pinsFor({ brief, answer }: Answered): Pinnable[] {
  const { quilt, blocks, yardages } = answer;
  if (!quilt) return [];
  const step = stepOf(brief.step, brief.unit);
  const say = (x: number): string => printLength(x, step, 2);
  const letters = fabricLetters(brief);
  const { unit } = brief;
  const size = `${say(quilt.width)} x ${say(quilt.height)}`;
  const block = blocks.find((b) => !b.id.includes("~"));
  const count = blocks.reduce((n, b) => n + (b.id.includes("~") ? 0 : b.count), 0);
  const bought = yardages
    .filter((y, i) => yardages.findIndex((z) => z.fabricId === y.fabricId) === i)
    .sort((a, b) => letters[a.fabricId].localeCompare(letters[b.fabricId]));
  const nameOf = (id: string): string => brief.fabrics.find((f) => f.id === id)?.name ?? id;
  const longest = brief.ruler.longest;
  return [
    pin("size", `size = ${size}`, `${size} ${unit}`, `the size, ${size} ${unit}`),
    ...(block
      ? [pin("size", `block = ${say(block.width)}`, `block ${say(block.width)} ${unit}`)]
      : []),
    pin("size", `blocks = ${count}`, `${count} ${count === 1 ? "block" : "blocks"}`),
    ...bought.map((y) => {
      const letter = letters[y.fabricId];
      return pin(
        "enough",
        `yardage ${letter} <= ${y.buyText}`,
        `${letter} ${y.buyText}`,
        `${y.buyText} of ${nameOf(y.fabricId)}`,
      );
    }),
    ...widthPins(brief),
    pin(
      "cover",
      `ruler <= ${longest ?? (unit === "in" ? "8" : "200")}`,
      longest ? `ruler to ${longest}` : "ruler's end",
      "the longest line of the ruler",
    ),
  ];
}

const pin = (question: Question["id"], text: string, shows: string, label = shows): Pinnable => ({
  question,
  text,
  shows,
  label,
});

/** One usable width, or each fabric's own. */
function widthPins(brief: Brief): Pinnable[] {
  const letters = fabricLetters(brief);
  const bought = brief.fabrics.filter((f) => f.kind !== "strip-set");
  const wide = (x: string): string => (/[a-z]/i.test(x) ? `${x} wide` : `${x} ${brief.unit} wide`);
  const [first] = bought;
  if (bought.every((f) => f.usable === first?.usable) && first)
    return [
      pin(
        "enough",
        `width = ${first.usable}`,
        wide(first.usable),
        `the usable width, ${first.usable}`,
      ),
    ];
  return bought.map((f) =>
    pin(
      "enough",
      `width ${letters[f.id]} = ${f.usable}`,
      `${letters[f.id]} ${wide(f.usable)}`,
      `the usable width of ${f.name}, ${f.usable}`,
    ),
  );
}
