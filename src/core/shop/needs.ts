import { type Answer, answerBrief, fabricLetters, usesOf } from "../answer/index.ts";
import { type Brief, type Fabric, leftAfterWash } from "../brief/index.ts";
import type { Yardage } from "../layout/index.ts";
import { knownLength, type Length, printLength, roundUp, stepOf } from "../measure/index.ts";
import type { KitRules } from "./rules.ts";
import { type Ticks, ticksUp } from "./ticks.ts";
import type { KitCut } from "./types.ts";

/** One fabric that goes into the kit, and what a kit takes of it at any width of bolt. */
export interface Need {
  readonly fabricId: string;
  readonly name: string;
  readonly letter: string;
  readonly uses: string;
  /** Usable width the design is worked out for. */
  readonly width: Length;
  /** Undefined where a piece is wider than that fabric. */
  readonly at: (usable: Length) => KitCut | undefined;
}

/**
 * What a kit takes of each fabric it holds. A bolt at least as wide as the design says takes the
 * design's yardage; a narrower one is planned at its own width. Pieces the maker has in hand are the
 * teacher's own and serve no kit.
 */
export function needsOf(brief: Brief, answer: Answer, rules: KitRules): Need[] {
  const { brief: shopBrief, answer: shopAnswer } = withoutInHand(brief, answer);
  const letters = fabricLetters(brief);
  const narrow = new Map<string, Answer>();
  const answerAt = (fabric: Fabric, usable: Length): Answer => {
    const key = `${fabric.id} ${usable}`;
    const known = narrow.get(key);
    if (known) return known;
    const text = String(Number((+usable).toFixed(6)));
    const fresh = answerBrief({
      ...shopBrief,
      sizes: [],
      fabrics: shopBrief.fabrics.map((f) => (f.id === fabric.id ? { ...f, usable: text } : f)),
    });
    narrow.set(key, fresh);
    return fresh;
  };
  const bought = shopBrief.fabrics.filter(
    (f) =>
      !rules.leaveOut.includes(f.id) &&
      shopAnswer.layouts.some((l) => l.fabricId === f.id) &&
      f.kind !== "strip-set",
  );
  return bought.map((fabric): Need => {
    const washed = (usable: Length): Length => usable * leftAfterWash(fabric).across;
    const stated = knownLength(fabric.usable, brief.unit);
    return {
      fabricId: fabric.id,
      name: fabric.name,
      letter: letters[fabric.id] ?? "",
      uses: usesOf(brief, answer, fabric.id) || setsOf(brief, fabric.id),
      width: stated,
      at: (usable) => {
        const within = washed(usable);
        const own = widest(shopAnswer, fabric.id, within);
        const y = own ?? widest(answerAt(fabric, usable), fabric.id, within);
        return y && cutOf(brief, fabric, y, rules);
      },
    };
  });
}

/** What a fabric is for that is only sewn into strip sets. */
export const setsOf = (brief: Brief, fabricId: string): string =>
  brief.fabrics
    .filter((f) => f.kind === "strip-set" && f.strips.some((t) => t.fabric === fabricId))
    .map((f) => `strips of ${f.name}`)
    .join(", ");

function withoutInHand(brief: Brief, answer: Answer): { brief: Brief; answer: Answer } {
  if (!brief.fabrics.some((f) => f.inHand && f.inHand.length > 0)) return { brief, answer };
  const bare: Brief = {
    ...brief,
    sizes: [],
    fabrics: brief.fabrics.map((f) => ({ ...f, inHand: undefined })),
  };
  return { brief: bare, answer: answerBrief(bare) };
}

/** The yardage at the widest width that the fabric still has. */
const widest = (a: Answer, fabricId: string, within: Length): Yardage | undefined =>
  a.yardages
    .filter((y) => y.fabricId === fabricId && y.width <= +within + 1e-6)
    .reduce<Yardage | undefined>(
      (best, y) => (best && best.width >= y.width ? best : y),
      undefined,
    );

/**
 * The cut of one kit. Registered fabric takes whole repeats, so that every kit begins at the same
 * place; then the room to reach that place is the bolt's, once, and not each kit's.
 */
function cutOf(brief: Brief, fabric: Fabric, y: Yardage, rules: KitRules): KitCut {
  const { unit } = brief;
  const left = leftAfterWash(fabric).along;
  const period = y.toRepeat !== undefined && rules.repeats ? repeatOf(brief, fabric) : undefined;
  const spared = rules.wrongStrip ? 0 : y.wrongStrip;
  const total = y.total - (spared + (period ? (y.toRepeat ?? 0) : 0)) / left;
  const step = stepOf(brief.step, unit);
  const bought = stepOf(unit === "in" ? "4.5" : "50", unit);
  const length = roundUp(total, rules.basis === "yards" ? bought : step);
  const base = { fabricId: fabric.id, width: ticksUp(y.width, unit) };
  if (!period) return { ...base, length: ticksUp(length, unit) };
  const count = Math.max(1, Math.ceil(ticksUp(total, unit) / period));
  return { ...base, length: count * period, repeats: { count, period } };
}

/** One repeat along the unwashed bolt. */
function repeatOf(brief: Brief, fabric: Fabric): Ticks | undefined {
  const sum =
    fabric.kind === "stripe"
      ? fabric.bands.reduce((t, b) => t + knownLength(b.width, brief.unit), 0)
      : fabric.kind === "print" && fabric.repeat
        ? knownLength(fabric.repeat.along, brief.unit)
        : 0;
  return sum > 0 ? ticksUp(sum, brief.unit) : undefined;
}

/** "40 1/2 in": a length as the shop's ruler has it. */
export const printed = (brief: Pick<Brief, "step" | "unit">, x: Length): string =>
  `${printLength(x, stepOf(brief.step, brief.unit))} ${brief.unit}`;
