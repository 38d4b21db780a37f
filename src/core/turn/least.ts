import { changed, finishingDemands, nextBorder, stagesOf, stockOf } from "../answer/index.ts";
import { type Brief, blockIn, type Fabric, leftAfterWash } from "../brief/index.ts";
import { type Demand, type FabricToPlan, leastLength } from "../layout/index.ts";
import { type Length, roundUp, stepOf } from "../measure/index.ts";
import { countIn, finishingOf, topSize } from "../quilt/index.ts";
import { type Around, aroundOf } from "./around.ts";
import { type Design, shapeKey } from "./design.ts";
import type { Values } from "./types.ts";

/** Blocks a bound is measured on: many, so that what is cut in twos or fours is shared truly. */
const SAMPLE = 10;

/** What a shop cuts by. */
const SHOP = { in: stepOf("4.5", "in"), mm: stepOf("50", "mm") } as const;

/** What one kind of block asks for, and whether it can be cut at all. */
interface OfOne {
  readonly shares: readonly Share[];
  readonly sound: boolean;
}

/** Does nothing of its blocks and pieces forbid to cut it? */
export const isSound = ({
  blocks,
  cut,
  recipes,
}: Pick<ReturnType<typeof stagesOf>, "blocks" | "cut" | "recipes">): boolean =>
  [...blocks.findings, ...cut.findings, ...recipes.findings].every((f) => f.severity !== "blocks");

/** What one block of a kind asks for, as the planner is asked: `each` is a part of a whole count. */
interface Share {
  readonly demand: Demand;
  readonly each: number;
}

/**
 * The least that must be bought of a fabric, without planning: what no cutting of its blocks, binding
 * and backing is shorter than, nor of all that is cut from it by area; the margins that are sure; up to
 * what a shop cuts.
 */
export class LeastFabric {
  private readonly d: Design;
  private readonly stock: readonly FabricToPlan[];
  private readonly kinds = new Map<string, Map<string, OfOne>>();
  private readonly counts = new Map<string, Readonly<Record<string, number>>>();
  private readonly finishings = new Map<string, readonly Demand[]>();

  constructor(d: Design) {
    this.d = d;
    this.stock = stockOf(d.brief, d.m.seam);
  }

  /** 0 where nothing is known: strip sets are sewn, not bought. Above `enough` it need not be all. */
  least(v: Values, fabricId: string, enough = Number.POSITIVE_INFINITY): Length {
    const { brief, m } = this.d;
    const fabric = brief.fabrics.find((f) => f.id === fabricId);
    const stock = this.stock.find((s) => s.stock.fabricId === fabricId);
    if (!fabric || !stock || fabric.kind === "strip-set") return 0;
    const inBlocks = this.demandsOf(v, fabricId);
    const narrowest = Math.max(0, ...inBlocks.filter((x) => !x.joinsAllowed).map(lowest));
    const wrong = m.wrongStrip && !fabric.inHand?.length ? narrowest : 0;
    const bought = (length: Length): Length =>
      length <= 0 ? 0 : roundUp(length + m.straighten + m.extra + wrong, SHOP[brief.unit]);
    const by = this.lengthsOn(fabric, stock);
    const alone = bought(by(inBlocks, NOTHING_AROUND));
    if (alone > enough) return alone;
    const of = (all: readonly Demand[]): Demand[] => all.filter((x) => x.fabricId === fabricId);
    const { demands, mitred } = this.aroundOf(v);
    const around = { demands: of(demands), area: mitred[fabricId] ?? 0 };
    return bought(by([...inBlocks, ...of(this.finishingOf(v))], around));
  }

  /** Can this kind of block be cut at all? */
  sound(v: Values, kind: string): boolean {
    return this.kindsOf(v).get(kind)?.sound ?? true;
  }

  /** Blocks of each kind that so many rows and columns have. */
  countsOf(v: Values): Readonly<Record<string, number>> {
    const key = `${v.rows} ${v.columns}`;
    const there = this.counts.get(key);
    if (there) return there;
    const quilt = { ...this.d.brief.quilt, rows: v.rows, columns: v.columns };
    const { counts } = countIn({ ...this.d.brief, quilt });
    this.counts.set(key, counts);
    return counts;
  }

  /** Whole strips of the bolt; by area alone where pieces in hand or offcuts of long cuts serve too. */
  private lengthsOn(fabric: Fabric, { stock, inHand = [] }: FabricToPlan) {
    const held = inHand.reduce((t, s) => t + s.count * s.width * s.length, 0);
    const grown = (x: Length): Length => x / leftAfterWash(fabric).along;
    const pieces = inHand.length > 0 || this.longBorders(fabric.id);
    // Through a fold equal pieces share their cuts, and lefts and rights do: only what is whole counts.
    const folded = stock.folds === 1;
    return (own: readonly Demand[], around: AroundOne): Length => {
      const long = own.some((x) => x.shape.kind === "along" || x.register !== undefined);
      const handed = folded && own.some((x) => x.hand !== "none");
      const areaAround = areaOf(around.demands) + around.area;
      if (pieces || long || handed)
        return grown(Math.max(0, areaOf(own) + areaAround - held) / stock.width);
      if (folded) return grown(leastLength(own, stock, areaAround));
      return grown(leastLength([...own, ...around.demands], stock, around.area));
    };
  }

  private aroundOf(v: Values): Around {
    const block = this.d.blockFor(v);
    return block ? aroundOf(this.d, v, block) : { demands: [], mitred: {} };
  }

  private longBorders(fabricId: string): boolean {
    const { brief } = this.d;
    return [...brief.quilt.borders, nextBorder(brief)].some(
      (b) => b.cut !== "across" && b.fabric === fabricId,
    );
  }

  private demandsOf(v: Values, fabricId: string): Demand[] {
    const counts = this.countsOf(v);
    const byId = new Map<string, Share>();
    for (const [kind, { shares }] of this.kindsOf(v))
      for (const { demand, each } of shares) {
        const n = each * (counts[kind] ?? 0);
        if (demand.fabricId !== fabricId || n <= 0) continue;
        byId.set(demand.id, { demand, each: n + (byId.get(demand.id)?.each ?? 0) });
      }
    return [...byId.values()].map(({ demand, each }) => ({
      ...demand,
      count: Math.ceil(each - 1e-6),
    }));
  }

  private finishingOf(v: Values): readonly Demand[] {
    const { brief, m } = this.d;
    const block = this.d.blockFor(v);
    if (!block || !brief.finishing) return [];
    const key = `${shapeKey(v)} ${v.sash} ${v.border} ${v.rows} ${v.columns}`;
    const there = this.finishings.get(key);
    if (there) return there;
    const before = { ...this.d.top, block };
    const borders = before.borders - (this.d.now.border ?? 0) + (v.border ?? 0);
    const top = topSize({ ...before, sash: v.sash ?? before.sash, borders }, v.rows, v.columns);
    const raw = { width: top.width + 2 * m.seam, height: top.height + 2 * m.seam };
    const backing = this.stock.find((s) => s.stock.fabricId === brief.finishing?.backing?.fabric);
    const made = finishingDemands(finishingOf(brief, raw, m.step, backing?.stock.width), m.step);
    this.finishings.set(key, made);
    return made;
  }

  /** Each kind by itself: sentences of one shape share it. */
  private kindsOf(v: Values): Map<string, OfOne> {
    const key = shapeKey(v);
    const there = this.kinds.get(key);
    if (there) return there;
    const made = new Map<string, OfOne>();
    const brief = this.d.write(v);
    for (const kind of new Set(brief.quilt.plan.flat().map(blockIn)))
      made.set(kind, ofOne(brief, kind));
    this.kinds.set(key, made);
    return made;
  }
}

/** What lies round the blocks in one fabric. */
interface AroundOne {
  readonly demands: readonly Demand[];
  readonly area: number;
}

const NOTHING_AROUND: AroundOne = { demands: [], area: 0 };

const areaOf = (demands: readonly Demand[]): number =>
  demands.reduce((t, x) => t + x.count * x.shape.pitch * x.shape.height, 0);

/** The least height of a strip that holds it. */
function lowest({ shape, turns, up, register }: Demand): Length {
  if (register) return 0;
  if (shape.kind === "along") return shape.first;
  const mayTurn = shape.kind === "rect" && turns === "quarter" && !up;
  return mayTurn ? Math.min(shape.first, shape.height) : shape.height;
}

/**
 * Many blocks of one kind in rows, nothing round them: what they ask, less one copy of everything
 * (a last cut may be shared), over their number. No quilt asks less for a block.
 */
function ofOne(brief: Brief, kind: string): OfOne {
  const alone = changed(brief, (d) => {
    d.quilt = {
      arrangement: d.quilt.arrangement === "hexagon-rows" ? "hexagon-rows" : "rows",
      rows: SAMPLE,
      columns: SAMPLE,
      plan: [[kind]],
      borders: [],
    };
    delete d.finishing;
  });
  const stages = stagesOf(alone);
  const { asked, quilt } = stages;
  // Rows of hexagons have halves at their ends, which whole blocks do not ask for.
  const whole = quilt.geometry !== undefined && quilt.geometry.halves.length === 0;
  const shares = (whole ? asked() : []).map((demand) => ({
    demand,
    each: Math.max(0, demand.count - 1) / SAMPLE ** 2,
  }));
  return { shares, sound: isSound(stages) };
}
