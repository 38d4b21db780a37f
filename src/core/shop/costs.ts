import { type Cents, ceilDiv, readMoney } from "../measure/money.ts";
import type { KitRules } from "./rules.ts";
import { type Ticks, ticksOfPrice } from "./ticks.ts";
import type { BoltRun, KitPlan, Shelf } from "./types.ts";

/** One line of what a kit costs. */
export interface CostLine {
  readonly what: "fabric" | "work" | "extra";
  readonly name: string;
  readonly fabricId?: string;
  /** Taken from the bolts for one kit, its share of the losses counted; rounded up to a tick. */
  readonly taken?: Ticks;
  readonly cents: Cents;
}

export interface KitCosts {
  readonly lines: readonly CostLine[];
  /** Fabric at its length in the kit alone, losses forgotten: what habit would charge. */
  readonly withoutLoss: Cents;
  readonly fabric: Cents;
  readonly seconds: number;
  readonly cost: Cents;
  readonly price: Cents;
  readonly earned: Cents;
  /** Bolts without a price: their fabric counts as nothing. */
  readonly unpriced: readonly string[];
}

/**
 * What one kit costs and should be sold for. Lengths are whole ticks, money whole cents; every line
 * is rounded up to a cent, so that all kits together never cost more than is said. The margin is a
 * share of the price: price = cost / (1 - margin), up to the next multiple of `roundTo`. Undefined
 * where there is no kit.
 */
export function costsOf(plan: KitPlan, shelf: Shelf, rules: KitRules): KitCosts | undefined {
  if (plan.kits === 0) return undefined;
  const priceOf = (boltId: string): Cents | undefined => {
    const text = shelf.bolts.find((b) => b.id === boltId)?.price;
    return text === undefined ? undefined : readMoney(text);
  };
  const [above, below] = ticksOfPrice(shelf.unit, plan.unit);
  const fabrics = plan.fabrics.map((f): CostLine & { readonly bare: Cents } => {
    const parts = plan.runs.flatMap((run) => sharesOf(run, f.fabricId, priceOf(run.boltId) ?? 0));
    const taken = parts.reduce((t, p) => t + p.taken, 0);
    const money = parts.reduce((t, p) => t + p.taken * p.price, 0);
    const bare = parts.reduce((t, p) => t + p.length * p.price, 0);
    return {
      what: "fabric",
      name: f.name,
      fabricId: f.fabricId,
      taken: ceilDiv(taken, plan.kits),
      cents: ceilDiv(money * below, above * plan.kits),
      bare: ceilDiv(bare * below, above * plan.kits),
    };
  });
  const seconds = secondsOf(plan, rules);
  const work: CostLine[] =
    rules.hour > 0
      ? [{ what: "work", name: "work", cents: ceilDiv(seconds * rules.hour, 3600 * plan.kits) }]
      : [];
  const extras = rules.extras.map(
    (e): CostLine => ({ what: "extra", name: e.name, cents: e.cost }),
  );
  const lines = [...fabrics.map(({ bare: _, ...line }) => line), ...work, ...extras];
  const cost = lines.reduce((t, l) => t + l.cents, 0);
  const exact = ceilDiv(cost * 10_000, 10_000 - rules.margin);
  const price = ceilDiv(exact, rules.roundTo) * rules.roundTo;
  return {
    lines,
    withoutLoss: fabrics.reduce((t, f) => t + f.bare, 0),
    fabric: fabrics.reduce((t, f) => t + f.cents, 0),
    seconds: ceilDiv(seconds, plan.kits),
    cost,
    price,
    earned: price - cost,
    unpriced: plan.runs.filter((r) => priceOf(r.boltId) === undefined).map((r) => r.name),
  };
}

interface Share {
  readonly taken: Ticks;
  readonly length: Ticks;
  readonly price: Cents;
}

/** What one fabric's cuts took of a bolt; straightening goes with the fabric that is cut first. */
function sharesOf(run: BoltRun, fabricId: string, price: Cents): Share[] {
  const cuts = run.cuts.filter((c) => c.fabricId === fabricId);
  if (cuts.length === 0) return [];
  const straighten = run.cuts[0].fabricId === fabricId ? run.straighten : 0;
  const length = cuts.reduce((t, c) => t + c.length, 0);
  const losses = cuts.reduce((t, c) => t + c.loss, 0);
  return [{ taken: straighten + length + losses, length, price }];
}

/** Work of the whole run: getting out bolts, cuts, bags. */
export const secondsOf = (plan: KitPlan, rules: KitRules): number =>
  plan.runs.length * rules.seconds.bolt +
  plan.runs.reduce((n, r) => n + r.cuts.length, 0) * rules.seconds.cut +
  plan.kits * rules.seconds.kit;
