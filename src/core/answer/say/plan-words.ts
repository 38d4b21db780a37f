import type { CutStep, FabricLayout, LedgerRow } from "../../layout/index.ts";
import { printAtMark, printWithUnit, type Step } from "../../measure/index.ts";
import { isOffcut } from "../cut/offcuts.ts";
import type { Answer } from "../types/answer.ts";
import type { FabricCutting, OrderFrom } from "../types/cutting.ts";

type Bounded = Pick<FabricLayout, "length" | "lowerBound" | "handbook" | "proven">;

const share = (part: number, whole: number): string => `${((100 * part) / whole).toFixed(1)} %`;

/** "proved least", or how much over the least the strips may still be. */
export function sayGap(l: Bounded, step: Step): string {
  if (l.proven || l.length <= 0) return "proved least";
  const over = l.length - l.lowerBound;
  return `at most ${printWithUnit(over, step)} (${share(over, l.length)}) over the least`;
}

/** What the plan saves over giving each piece its own strips; empty when it saves nothing. */
export function saySaving(l: Bounded, step: Step): string {
  const saved = l.handbook - l.length;
  if (saved <= 1e-9) return "";
  return `saves ${printWithUnit(saved, step)} (${share(saved, l.handbook)}) over one size a strip`;
}

/** What is cut in this order: "from the bolt", "from a piece in hand, 18 in by 21 in". */
export function sayFrom(order: OrderFrom, cutting: FabricCutting, step: Step): string {
  if (order.from === "bolt") return cutting.sets ? "from the sewn sets" : "from the bolt";
  if (isOffcut(order.from)) return "from what the long cuts leave";
  const sheet = cutting.sheets?.find((s) => s.id === order.from);
  const times = cutting.pieces?.sheets.find((s) => s.sheetId === order.from)?.times ?? 1;
  const size = sheet
    ? `, ${printWithUnit(sheet.width, step)} by ${printWithUnit(sheet.length, step)}`
    : "";
  return `from ${times === 1 ? "a piece" : `${times} pieces`} in hand${size}`;
}

/** One numbered step at the cutting table. */
export function sayStep(s: CutStep, a: Answer, step: Step): string {
  const size = printWithUnit(s.size, step);
  const demand = a.demands.find((d) => d.id === s.demandId);
  const what = demand ? lettersOf(demand.pieceIds, a) : "";
  switch (s.op) {
    case "straighten":
      return "straighten the end";
    case "strip":
      return `${s.cuts === 1 ? "a strip" : `${s.cuts} strips`} ${size}`;
    case "subcut":
      return demand?.shape.kind === "nested"
        ? `subcut ${s.copies ?? ""} ${what}, wide edge ${printAtMark(s.size, step)}`
        : `subcut ${s.copies ?? ""} ${what}, every ${size}`;
    case "divide":
      return `divide ${what} at ${size}`;
    case "trim":
      return `trim ${what} to ${size}`;
  }
}

/** "A1 and A2": pieces by their letters; binding and the like by their names. */
const lettersOf = (pieceIds: readonly string[], a: Answer): string =>
  pieceIds.map((id) => a.pieces.find((p) => p.id === id)?.letter ?? id).join(" and ");

const LAYING: Readonly<Record<LedgerRow["laying"], string>> = {
  single: "one layer, the ruler turned over for the other hand",
  stacked: "layers all right side up",
  facing: "layers face to face",
  "either-face": "layers either face up",
};

/** "A1 and A2, 12 left and 12 right: 4 layers face to face, 6 cuts". The way with fewest cuts. */
export function sayHands(cutting: FabricCutting, a: Answer): string[] {
  return cutting.hands.map(({ pieceIds, needed, rows: [best] }) => {
    const cuts = best.cuts.left + best.cuts.right;
    const spare = best.spareLeft + best.spareRight;
    const how = best.laying === "single" ? LAYING.single : `${best.layers} ${LAYING[best.laying]}`;
    return `${lettersOf(pieceIds, a)}, ${needed.left} left and ${needed.right} right: ${how}, ${cuts} cuts${spare > 0 ? `, ${spare} to spare` : ""}`;
  });
}

/** Wedges that fall off, largest first, and what they would serve as. */
export function sayWaste(cutting: FabricCutting, a: Answer, step: Step): string[] {
  return [...cutting.waste]
    .sort((x, y) => y.height - x.height)
    .map((w) => {
      const serves = cutting.offers
        .filter((o) => o.wasteId === w.id)
        .map((o) => {
          const demand = a.demands.find((d) => d.id === o.demandId);
          return `${o.count} would serve as ${lettersOf(demand?.pieceIds ?? [], a)}`;
        });
      const size = `${printWithUnit(w.height, step)} high, ${printWithUnit(w.base, step)} wide`;
      return [`${w.count} wedges fall off, ${size}`, ...serves].join("; ");
    });
}

/** "At 38 in: 1 3/4 in more; A1 9 a strip, not 10". What the next narrower width changes. */
export function sayNarrower(cutting: FabricCutting, a: Answer, step: Step): string {
  const n = cutting.narrower;
  if (!n) return "";
  const more =
    Math.abs(n.more) < 1e-9
      ? "as much in strips"
      : `${printWithUnit(Math.abs(n.more), step)} ${n.more > 0 ? "more" : "less"} in strips`;
  const fewer = n.demands.map((d) => {
    const ids = a.demands.find((x) => x.id === d.demandId)?.pieceIds ?? [];
    return `${lettersOf(ids, a) || d.demandId} ${d.atNarrow} a strip, not ${d.atWide}`;
  });
  return [`At ${printWithUnit(n.width, step)} usable: ${more}`, ...fewer].join("; ");
}
