import type { Brief } from "../../brief/index.ts";
import type { TopItem, TopRow } from "../../quilt/index.ts";
import type { Answer } from "../types/answer.ts";

/** Turn that the arrangement gives every block, in eighths of a full turn. */
const LAID = { rows: 0, "on-point": 1, "hexagon-rows": 2 } as const;

/** What a row holds from left to right: "B1, 3 star, B1". */
export function holdsOf(row: TopRow, brief: Brief, answer: Answer): string {
  return shortened(row.items.map((item) => itemName(item, brief, answer)));
}

/** A block by its name and turn, anything else by the letter of its piece. */
export function itemName(item: TopItem, brief: Brief, answer: Answer): string {
  if (item.what !== "block")
    return answer.pieces.find((p) => p.patchIds.includes(item.of))?.letter ?? item.what;
  // A half is named after its block: "star (upper half)".
  const name = (answer.blocks.find((b) => b.id === item.of)?.name ?? item.of).replace(
    /, (.*)$/,
    " ($1)",
  );
  return `${name}${turnWords(item, brief)}`;
}

const TURNED = ["", " turned a quarter", " turned by half", " turned three quarters"];

function turnWords({ at }: TopItem, brief: Brief): string {
  if (!at) return "";
  const eighths = Math.round((at.turn * 4) / Math.PI) - LAID[brief.quilt.arrangement];
  const quarters = (((eighths / 2) % 4) + 4) % 4;
  return `${at.mirrored ? " mirrored" : ""}${TURNED[quarters] ?? ""}`;
}

const LONGEST = 6;

/** Runs said once: "3 star"; "2 times C1 and star". The repeat that takes in most is taken. */
export function shortened(names: readonly string[]): string {
  const said: string[] = [];
  for (let i = 0; i < names.length; ) {
    const { period, times } = repeatAt(names, i);
    const group = names.slice(i, i + period);
    if (times === 1) said.push(names[i]);
    else if (period === 1) said.push(`${times} ${names[i]}`);
    else said.push(`${times} times ${group.slice(0, -1).join(", ")} and ${group.at(-1)}`);
    i += times === 1 ? 1 : period * times;
  }
  return said.join(", ");
}

function repeatAt(names: readonly string[], i: number): { period: number; times: number } {
  let best = { period: 1, times: 1 };
  for (let period = 1; period <= LONGEST; period++) {
    let times = 1;
    while (sameAs(names, i, i + times * period, period)) times++;
    if (times > 1 && times * period > best.times * best.period) best = { period, times };
  }
  return best;
}

const sameAs = (names: readonly string[], i: number, j: number, period: number): boolean =>
  j + period <= names.length &&
  names.slice(i, i + period).every((name, k) => name === names[j + k]);
