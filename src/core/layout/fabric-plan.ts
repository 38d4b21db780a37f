import type { Finding } from "../findings/index.ts";
import type { Length } from "../measure/index.ts";
import { planBolt } from "./bolt.ts";
import type { InHandOptions } from "./in-hand.ts";
import { planInHandFirst } from "./in-hand.ts";
import type { Demand, FabricLayout, Leftover, Sheet, SheetPlan, Stock } from "./types.ts";

/** A fabric sewn from strips of others: one strip of each, full width, gives one set. */
export interface StripSetStock {
  readonly strips: readonly { readonly fabricId: string; readonly cut: Length }[];
  /** Height of the set once sewn: what the layout of its demands cuts from. */
  readonly height: Length;
}

export interface FabricToPlan {
  readonly stock: Stock;
  readonly inHand?: readonly Sheet[];
  readonly stripSet?: StripSetStock;
}

export interface FabricPlan {
  readonly fabricId: string;
  /** What is cut first from the bolt: along its length, or registered to its repeat. */
  readonly long?: FabricLayout;
  /** Cut from pieces in hand and from what the long cuts left. */
  readonly pieces?: SheetPlan;
  /** The rest, from the bolt. */
  readonly bolt: FabricLayout;
  /** Length the bolt must give, long cuts and rest. */
  readonly length: Length;
  /** All demands planned, the strips other fabrics' strip sets need among them. */
  readonly demands: readonly Demand[];
  /** Pieces that may serve again. */
  readonly sheets: readonly Sheet[];
  readonly leftovers: readonly Leftover[];
}

export type FabricPlanOptions = Omit<InHandOptions, "elsewhere">;

/**
 * One fabric: pieces in hand are used up first; long cuts (along the length, registered) are made
 * next, and what they leave beside them is cut like pieces in hand; the rest comes from the bolt.
 * The plan without the offcuts is kept when it is as short.
 */
export function planFabric(
  demands: readonly Demand[],
  fabric: FabricToPlan,
  options: FabricPlanOptions = {},
): FabricPlan {
  const { stock, inHand = [] } = fabric;
  const own = demands.filter((d) => d.fabricId === stock.fabricId && d.count > 0);
  const isLong = (d: Demand) => d.shape.kind === "along" || d.register !== undefined;
  const rest = own.filter((d) => !isLong(d));
  const plain = assemble(own, stock, undefined, own, inHand, options);
  if (rest.length === 0 || rest.length === own.length) return plain;
  const long = planBolt(own.filter(isLong), stock, options);
  const offcuts = long.leftovers.map(
    (left, i): Sheet => ({
      id: `offcut-${i + 1}`,
      fabricId: stock.fabricId,
      width: left.width,
      length: left.height,
      count: left.count,
    }),
  );
  const apart = assemble(own, stock, long, rest, [...inHand, ...offcuts], options);
  return apart.length < plain.length - 1e-9 ? apart : plain;
}

function assemble(
  own: readonly Demand[],
  stock: Stock,
  long: FabricLayout | undefined,
  rest: readonly Demand[],
  sheets: readonly Sheet[],
  options: FabricPlanOptions,
): FabricPlan {
  const base = { fabricId: stock.fabricId, demands: own, sheets, ...(long ? { long } : {}) };
  if (sheets.length === 0) {
    const bolt = planBolt(rest, stock, options);
    const leftovers = [...(long?.leftovers ?? []), ...bolt.leftovers];
    return { ...base, bolt, length: bolt.length + (long?.length ?? 0), leftovers };
  }
  const { pieces, bolt } = planInHandFirst(rest, stock, sheets, options);
  return {
    ...base,
    pieces,
    bolt,
    length: bolt.length + (long?.length ?? 0),
    leftovers: [...pieces.sheets.flatMap((s) => s.leftovers), ...bolt.leftovers],
  };
}

export interface QuiltPlan {
  /** In the order to cut them: strip sets first, then the fabrics their strips come from. */
  readonly fabrics: readonly FabricPlan[];
  readonly findings: readonly Finding[];
}

/**
 * All fabrics of a quilt. A strip set is planned before the fabrics it is sewn from, because its
 * layout says how many sets there must be; their strips join those fabrics' own demands.
 */
export function planQuilt(
  demands: readonly Demand[],
  fabrics: readonly FabricToPlan[],
  options: FabricPlanOptions = {},
): QuiltPlan {
  const all = [...demands];
  const plans = setsFirst(fabrics).map((fabric) => {
    // A strip of a set's layout is one sewn set: nothing stands on anything in it.
    const how = fabric.stripSet ? { ...options, stacks: false } : options;
    const plan = planFabric(all, fabric, how);
    all.push(...stripsFor(fabric, plan));
    return plan;
  });
  const findings = plans.flatMap((p) => [...(p.long?.findings ?? []), ...p.bolt.findings]);
  return { fabrics: plans, findings };
}

/** Sets that feed on other sets come before them. Throws when sets feed on each other in a ring. */
function setsFirst(fabrics: readonly FabricToPlan[]): FabricToPlan[] {
  const left = [...fabrics];
  const order: FabricToPlan[] = [];
  while (left.length > 0) {
    const feeds = (f: FabricToPlan) =>
      left.some((g) => g.stripSet?.strips.some((s) => s.fabricId === f.stock.fabricId));
    const next = left.findIndex((f) => !feeds(f));
    if (next < 0)
      throw new RangeError(
        `strip sets must not feed on each other, got a ring of ${left.map((f) => f.stock.fabricId).join(", ")}`,
      );
    order.push(...left.splice(next, 1));
  }
  return order;
}

/** One full-width strip of each member for every set: a strip of the layout is cut from one set. */
function stripsFor({ stripSet, stock }: FabricToPlan, plan: FabricPlan): Demand[] {
  if (!stripSet) return [];
  const sets = [...plan.bolt.strips, ...(plan.long?.strips ?? [])].reduce((t, s) => t + s.times, 0);
  return stripSet.strips.map(
    (strip, i): Demand => ({
      id: `${stock.fabricId}-strip-${i + 1}`,
      fabricId: strip.fabricId,
      shape: { kind: "rect", first: stock.width, pitch: stock.width, height: strip.cut },
      count: sets,
      turns: "half",
      hand: "none",
      up: false,
      layers: 1,
      joinsAllowed: false,
      piecesEach: 1,
      pieceIds: [],
    }),
  );
}
