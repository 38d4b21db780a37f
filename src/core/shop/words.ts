import Fraction from "fraction.js";
import type { Brief } from "../brief/index.ts";
import { printYards, roundDown, stepOf } from "../measure/index.ts";
import { sayMoney } from "../measure/money.ts";
import type { KitCosts } from "./costs.ts";
import { printed } from "./needs.ts";
import type { KitRules } from "./rules.ts";
import { lengthOfTicks, type Ticks } from "./ticks.ts";
import type { KitCut, KitPlan, Limit, Shelf, Way } from "./types.ts";
import type { BagVerdict, BagWeight } from "./weight.ts";

type Ruler = Pick<Brief, "step" | "unit">;

/** "Basalt (lot 12, upper shelf)": bolts of one name are told apart by their notes. */
export const sayBolt = (bolt: { readonly name: string; readonly note?: string }): string =>
  bolt.note ? `${bolt.name} (${bolt.note})` : bolt.name;

const kitsSaid = (n: number): string => `${n} ${n === 1 ? "kit" : "kits"}`;
const listed = (items: readonly string[]): string =>
  items.length < 2
    ? (items[0] ?? "")
    : `${items.slice(0, -1).join(", ")} and ${items[items.length - 1]}`;

/** A length of the shop as its ruler has it: `40 1/2 in`. */
export const sayTicks = (t: Ticks, brief: Ruler): string =>
  printed(brief, lengthOfTicks(t, brief.unit));

/** "1 1/8 yd" where it is so many eighths; else the length alone. */
export function sayYards(t: Ticks, unit: Brief["unit"]): string | undefined {
  const x = +lengthOfTicks(t, unit);
  if (unit === "mm") return undefined;
  const eighths = Math.round(x / 4.5);
  return Math.abs(x - eighths * 4.5) < 1e-9 && eighths > 0
    ? printYards(new Fraction(eighths, 8))
    : undefined;
}

/** "1 yd (36 in)", "3 repeats (18 in)", "40 1/2 in". */
export function sayCut(cut: KitCut, brief: Ruler): string {
  const size = sayTicks(cut.length, brief);
  if (cut.repeats)
    return `${cut.repeats.count} ${cut.repeats.count === 1 ? "repeat" : "repeats"} (${size})`;
  const yards = sayYards(cut.length, brief.unit);
  return yards ? `${yards} (${size})` : size;
}

const nameIn = (plan: KitPlan, fabricId: string): string =>
  plan.fabrics.find((f) => f.fabricId === fabricId)?.name ?? fabricId;
const boltIn = (shelf: Shelf, boltId: string | undefined): string => {
  const bolt = shelf.bolts.find((b) => b.id === boltId);
  return bolt ? sayBolt(bolt) : "";
};

/** "9 kits can be cut. Basalt limits them: 1 in more of it gives one kit more." */
export function sayPlan(plan: KitPlan, brief: Ruler): string[] {
  if (plan.fabrics.length === 0) return ["This design has no fabric to cut kits from."];
  const head =
    plan.wanted === undefined
      ? `${kitsSaid(plan.kits)} can be cut`
      : plan.wanted <= plan.most
        ? `${kitsSaid(plan.kits)} can be cut; the bolts give ${plan.most}`
        : `${kitsSaid(plan.wanted)} are wanted, ${plan.most} can be cut`;
  const sure = plan.proven ? "" : `, and no more than ${plan.atMost}`;
  const target = plan.wanted !== undefined && plan.wanted > plan.most ? plan.wanted : plan.most + 1;
  return [`${head}${sure}.`, ...plan.limits.map((l) => sayLimit(l, plan, target, brief))];
}

function sayLimit(l: Limit, plan: KitPlan, target: number, brief: Ruler): string {
  const names = listed(l.fabricIds.map((id) => nameIn(plan, id)));
  if (l.boltId === undefined) return `${names}: no bolt gives any.`;
  const alone = l.kits > plan.most ? ` (${l.kits} by itself)` : "";
  return `${names}${alone}: ${sayTicks(l.short, brief)} more on one bolt gives ${kitsSaid(target)}.`;
}

/** What would give more kits, one line each. */
export function sayWay(way: Way, plan: KitPlan, shelf: Shelf): string {
  switch (way.kind) {
    case "trimmed":
      return `Cut to the length its pieces take and the margin, not to what the pattern says to buy: ${kitsSaid(way.kits)}`;
    case "no-wrong-strip":
      return `Leave out the room for one wrong strip: ${kitsSaid(way.kits)}`;
    case "instead":
      return `${boltIn(shelf, way.boltId)} in place of ${nameIn(plan, way.fabricId)}: ${kitsSaid(way.kits)}`;
    case "as-well":
      return `${boltIn(shelf, way.boltId)} for the kits that ${nameIn(plan, way.fabricId)} does not reach: ${kitsSaid(way.kits)}`;
  }
}

export function sayCosts(costs: KitCosts, rules: KitRules, brief: Ruler): string[] {
  const money = (c: number): string => sayMoney(c, rules.sign);
  const minutes = Math.ceil(costs.seconds / 60);
  const lines = costs.lines.map((l) => {
    const taken =
      l.taken === undefined ? "" : `, ${sayTicks(upTo(l.taken, brief), brief)} from the bolt`;
    const work = l.what === "work" ? `, about ${minutes} minutes` : "";
    return `${l.name}${taken}${work}: ${money(l.cents)}`;
  });
  return [
    ...lines,
    `A kit costs ${money(costs.cost)}; its fabric without the losses would be ${money(costs.withoutLoss)}`,
    `At a margin of ${rules.margin / 100} % of the price it sells for ${money(costs.price)}`,
    ...(costs.unpriced.length > 0
      ? [`Without a price on the shelf, and counted as nothing: ${listed(costs.unpriced)}`]
      : []),
  ];
}

/** Up to an eighth of an inch or a millimeter, for money's sake no finer. */
const upTo = (t: Ticks, brief: Ruler): Ticks => {
  const grain = brief.unit === "in" ? 200 : 1000;
  return Math.ceil(t / grain) * grain;
};

export function sayWeight(w: BagWeight, rules: KitRules): string {
  const grams = (x: number): string => `${Math.round(x)} g`;
  const each = w.pieces.map((p) => `${p.name} ${grams(p.grams)}`).join(", ");
  const tell = w.tells
    ? `Weigh the first bag, laid out and counted, then every other: one that differs by more than ${grams(w.alarm)} has a piece too few or too many`
    : `The lightest piece weighs less than your scale can tell: count the pieces instead`;
  return `About ${grams(w.total)} of fabric in a bag (${each}), estimated at ${rules.weight} g to the square meter. ${tell}.`;
}

export function sayBag(v: BagVerdict): string {
  if (v.kind === "alike") return "as the first bag";
  const by = `${Math.round(v.by)} g ${v.kind === "light" ? "lighter" : "heavier"} than the first bag`;
  if (!v.piece) return `${by}: no one piece weighs that; lay it out`;
  return `${by}: ${v.piece} may be ${v.kind === "light" ? "missing" : "in it twice"}`;
}

/** Down to the ruler, for what is left on a bolt. */
export const sayLeft = (t: Ticks, brief: Ruler): string =>
  printed(brief, roundDown(lengthOfTicks(t, brief.unit), stepOf(brief.step, brief.unit)));
