import type { Answer } from "../answer/index.ts";
import { type Brief, blockIn } from "../brief/index.ts";
import { knownLength, type Length, type Step } from "../measure/index.ts";
import type { OverUnder, Pin, Relation, SizePin } from "./types.ts";

/** Lengths that differ by less are one: far below any ruler. */
const SAME = 1e-6;

const stands = (by: Length, relation: Relation, within: Length): boolean =>
  relation === "=" ? Math.abs(by) <= within + SAME : relation === "<=" ? by <= SAME : by >= -SAME;

/** How a size stands to its pin: what each side that is pinned is over. */
export function sizeOver(pin: SizePin, size: { width: Length; height: Length }): OverUnder[] {
  return [
    ...(pin.width === undefined
      ? []
      : [{ pin, what: "width" as const, by: size.width - pin.width }]),
    ...(pin.length === undefined
      ? []
      : [{ pin, what: "length" as const, by: size.height - pin.length }]),
  ];
}

/** What the answer's numbers are over or under each pin. */
export function overUnder(pins: readonly Pin[], answer: Answer): OverUnder[] {
  return pins.flatMap((pin): OverUnder[] => {
    switch (pin.kind) {
      case "size":
        return answer.quilt ? sizeOver(pin, answer.quilt) : [];
      case "block":
        return wholeBlocks(answer)
          .slice(0, 1)
          .map((k) => ({ pin, what: "block", by: k.width - pin.side }));
      case "blocks":
        return [{ pin, what: "blocks", by: blockCount(answer) - pin.count }];
      case "yardage": {
        const bought = stated(answer, pin.fabricId);
        return [{ pin, what: "yardage", by: (bought ?? 0) - pin.most }];
      }
      default:
        return [];
    }
  });
}

const wholeBlocks = (answer: Answer) => answer.blocks.filter((k) => !k.id.includes("~"));
const blockCount = (answer: Answer): number => wholeBlocks(answer).reduce((n, k) => n + k.count, 0);

/** Bought at the stated width: the first of a fabric's yardages; none when it is not used. */
const stated = (answer: Answer, fabricId: string): Length | undefined =>
  answer.yardages.find((y) => y.fabricId === fabricId)?.buy;

/** Does one number stand by its pin? */
export function standsBy({ pin, by }: OverUnder): boolean {
  switch (pin.kind) {
    case "size":
    case "block":
      return stands(by, pin.relation, pin.within);
    case "blocks":
      return stands(by, pin.relation, 0);
    default:
      return by <= SAME;
  }
}

/** Can it be cut, and is every pin true of it? */
export function holds(pins: readonly Pin[], brief: Brief, answer: Answer): boolean {
  if (!answer.quilt || answer.findings.some((f) => f.severity === "blocks")) return false;
  if (!overUnder(pins, answer).every(standsBy)) return false;
  return pins.every((pin) => {
    if (pin.kind === "ruler") return rulerMiss(pin, brief) <= SAME;
    if (pin.kind === "yardage") return isBought(answer, pin.fabricId);
    return true;
  });
}

/** A fabric that cannot give a piece has a layout and no yardage. */
const isBought = (answer: Answer, fabricId: string): boolean =>
  stated(answer, fabricId) !== undefined || !answer.layouts.some((l) => l.fabricId === fabricId);

/** How far the strips of the plan lie beyond the ruler's lines; 0 when none does. */
export function rulerMiss(pin: Pin & { kind: "ruler" }, brief: Brief): Length {
  const named = new Set(brief.quilt.plan.flat().map(blockIn));
  const strips = brief.blocks.flatMap((k) =>
    k.kind === "wedges" && named.has(k.id) ? [knownLength(k.strip, brief.unit)] : [],
  );
  return Math.max(
    0,
    ...strips.map((s) => s - (pin.longest ?? Number.POSITIVE_INFINITY)),
    ...strips.map((s) => (pin.shortest ?? 0) - s),
  );
}

/** Whole steps of the ruler that sizes miss their pins by. */
export function stepsMissed(over: readonly OverUnder[], step: Step): number {
  const sizes = over.filter(({ what }) => what !== "blocks" && what !== "yardage");
  const most = Math.max(0, ...sizes.map(({ by }) => Math.abs(by)));
  return Math.ceil(most / step.size.valueOf() - SAME);
}
