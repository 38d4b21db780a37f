import Fraction from "fraction.js";
import type { Length, Unit } from "../measure/index.ts";
import { printYards, roundUp, stepOf } from "../measure/index.ts";
import type { FabricLayout, Yardage } from "./types.ts";

export interface Margins {
  /** Lost in straightening the end. */
  readonly straighten: Length;
  /** Room for one wrong strip: the tallest of the plan that is cut into pieces. */
  readonly wrongStrip: boolean;
  /** Demands whose strips are not counted for it: a wrong border is joined, a backing is not cut up. */
  readonly mended?: ReadonlySet<string>;
  /** Demands whose strips lie side by side along the fabric: what one loses, all make up. */
  readonly sideBySide?: ReadonlySet<string>;
  readonly extra?: Length;
  /** Most that is lost before the first repeat starts: one repeat, for registered fabric. */
  readonly toRepeat?: Length;
  readonly unit: Unit;
  /** Per cent of length lost when the fabric is washed before it is cut. */
  readonly shrinkage?: number;
}

/**
 * What to ask for in the shop: the length of the plan, each margin by name, the washing loss, up to
 * the next eighth of a yard or 5 cm.
 */
export function yardageOf(layout: FabricLayout, margins: Margins): Yardage {
  const used = layout.strips.length > 0;
  const straighten = used ? margins.straighten : 0;
  const wrongStrip = margins.wrongStrip ? wrongStripIn(layout, margins) : 0;
  const extra = used ? (margins.extra ?? 0) : 0;
  const toRepeat = used ? (margins.toRepeat ?? 0) : 0;
  const total =
    (layout.length + straighten + wrongStrip + extra + toRepeat) /
    (1 - (margins.shrinkage ?? 0) / 100);
  const buy = roundUp(total, stepOf(margins.unit === "in" ? "4.5" : "50", margins.unit));
  return {
    fabricId: layout.fabricId,
    width: layout.width,
    inPieces: layout.length,
    straighten,
    wrongStrip,
    extra,
    ...(toRepeat > 0 ? { toRepeat } : {}),
    total,
    buy,
    buyText: buyText(buy, margins.unit),
  };
}

/** The tallest run of pieces; where only mended ones are cut, the tallest narrow one of those. */
function wrongStripIn(layout: FabricLayout, { mended, sideBySide }: Margins): Length {
  const lost = layout.strips.flatMap((s) =>
    s.runs
      .filter((r) => !mended?.has(r.demandId))
      .map((r) => (sideBySide?.has(r.demandId) ? r.height / s.runs.length : r.height)),
  );
  if (lost.length > 0) return Math.max(...lost);
  const narrow = layout.strips.flatMap((s) =>
    s.runs.map((r) => Math.min(r.width / r.copies, r.height)),
  );
  return narrow.length > 0 ? Math.max(...narrow.filter((x) => x < layout.width / 2), 0) : 0;
}

function buyText(buy: Length, unit: Unit): string {
  if (unit === "in") return printYards(new Fraction(BigInt(Math.round(buy / 4.5)), 8n));
  return `${Number((buy / 1000).toFixed(2))} m`;
}
