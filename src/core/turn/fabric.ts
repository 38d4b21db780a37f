import { boughtOf, changed, nextBorder, outerFabric, shapeNow, stagesOf } from "../answer/index.ts";
import { type Brief, blockIn } from "../brief/index.ts";
import { knownLength, type Length, roundUp, stepOf } from "../measure/index.ts";
import { countIn, topSize } from "../quilt/index.ts";
import type { Design } from "./design.ts";
import type { Pin, Values, YardagePin } from "./types.ts";

/** Blocks a bound is measured on: many, so that what is cut in twos or fours is shared truly. */
const SAMPLE = 10;

/**
 * What fabric sentences need, weighed before they are answered: first a bound from the area of their
 * blocks that no cutting beats, then the planner on the pinned fabrics alone.
 */
export class FabricScale {
  private readonly d: Design;
  private readonly tally: { planned: number };
  private readonly pins: readonly YardagePin[];
  private readonly areas = new Map<string, Map<string, Map<string, OneBlock>>>();
  private readonly counts = new Map<string, Readonly<Record<string, number>>>();
  private readonly soundness = new Map<string, boolean>();
  private readonly bought = new Map<string, readonly (Length | undefined)[]>();

  constructor(d: Design, pins: readonly Pin[], tally: { planned: number }) {
    this.d = d;
    this.tally = tally;
    this.pins = pins.filter((p) => p.kind === "yardage");
  }

  /**
   * The least that must be bought of a fabric: the area of its whole blocks and of the outer border,
   * the margins that are sure, up to what a shop cuts. 0 where nothing is known.
   */
  least(v: Values, fabricId: string): Length {
    const { brief, m } = this.d;
    const fabric = brief.fabrics.find((f) => f.id === fabricId);
    if (!fabric || fabric.kind === "strip-set") return 0;
    const counts = this.countsOf(v);
    let area = this.borderArea(v, fabricId);
    let narrowest = 0;
    for (const [kind, byFabric] of this.areasOf(v)) {
      const one = byFabric.get(fabricId);
      if (!one || !counts[kind]) continue;
      area += counts[kind] * one.area;
      narrowest = Math.max(narrowest, one.narrow);
    }
    for (const p of fabric.inHand ?? [])
      area -= p.count * knownLength(p.width, brief.unit) * knownLength(p.length, brief.unit);
    if (area <= 0) return 0;
    const wrong = m.wrongStrip && !fabric.inHand?.length ? narrowest : 0;
    const total = area / knownLength(fabric.usable, brief.unit) + m.straighten + m.extra + wrong;
    return roundUp(total, SHOP[brief.unit]);
  }

  /** The outer border as it shows; what is cut is more. */
  private borderArea(v: Values, fabricId: string): number {
    const width = v.border ?? 0;
    const { brief } = this.d;
    if (width === 0) return 0;
    const border = brief.quilt.borders.at(-1) ?? nextBorder(brief);
    const block = border.fabric === fabricId ? this.d.blockFor(v) : undefined;
    if (!block) return 0;
    const top = topSize(
      { ...shapeNow(brief, block), sash: v.sash ?? 0, borders: 0 },
      v.rows,
      v.columns,
    );
    return 2 * width * (top.width + top.height) + 4 * width * width;
  }

  /** Can its blocks be cut at all? What blocks them without borders blocks them with borders too. */
  sound(v: Values): boolean {
    const kinds = Object.entries(this.countsOf(v)).flatMap(([id, n]) => (n > 0 ? [id] : []));
    const key = `${shapeKey(v)} ${kinds.sort().join(" ")}`;
    const there = this.soundness.get(key);
    if (there !== undefined) return there;
    const { blocks, cut, recipes } = stagesOf(blocksAlone(this.d.write(v)));
    const all = [...blocks.findings, ...cut.findings, ...recipes.findings];
    const made = all.every((f) => f.severity !== "blocks");
    this.soundness.set(key, made);
    return made;
  }

  /** Can the pinned fabrics still be enough? */
  mayFit(v: Values): boolean {
    return this.pins.every((p) => this.least(v, p.fabricId) <= p.most + 1e-6);
  }

  /** What is bought of each pinned fabric; undefined where it cannot give a piece. 0: not used. */
  buy(v: Values): readonly (Length | undefined)[] {
    if (this.pins.length === 0) return [];
    const key = this.keyOf(v);
    const there = this.bought.get(key);
    if (there) return there;
    this.tally.planned++;
    const brief = this.d.write(v);
    const ids = this.pins.map((p) => p.fabricId);
    const yardages = boughtOf(brief, ids);
    const used = usedIn(brief);
    const made = ids.map(
      (id) => yardages.find((y) => y.fabricId === id)?.buy ?? (used.has(id) ? undefined : 0),
    );
    this.bought.set(key, made);
    return made;
  }

  fits(v: Values): boolean {
    return this.buy(v).every((buy, i) => buy !== undefined && buy <= this.pins[i].most + 1e-6);
  }

  /** Sentences that ask the same of the pinned fabrics share a key: only counts matter in the blocks. */
  private keyOf(v: Values): string {
    const { brief } = this.d;
    const whole = brief.quilt.arrangement === "rows" && !brief.quilt.offset;
    const edges = !whole || this.roundIt(v).some((id) => this.pins.some((p) => p.fabricId === id));
    const shape = edges ? `${shapeKey(v)} ${v.sash} ${v.border}` : shapeKey(v);
    return edges
      ? `${shape} ${v.rows} ${v.columns}`
      : `${shape} ${JSON.stringify(this.countsOf(v))}`;
  }

  /** Fabrics of what lies between and round the blocks; all of them where sets feed on them. */
  private roundIt(v: Values): string[] {
    const { quilt, finishing, fabrics } = this.d.brief;
    if (fabrics.some((f) => f.kind === "strip-set")) return fabrics.map((f) => f.id);
    const sashed = (v.sash ?? 0) > 0;
    const outer = (v.border ?? 0) > 0 && quilt.borders.length === 0;
    return [
      ...quilt.borders.flatMap((b) => [b.fabric, b.cornerstone]),
      ...(outer ? [nextBorder(this.d.brief).fabric] : []),
      ...(sashed
        ? [quilt.sashing?.fabric ?? outerFabric(this.d.brief, this.d.brief.blocks[0])]
        : []),
      ...(sashed ? [quilt.sashing?.cornerstone] : []),
      finishing?.binding?.fabric,
      finishing?.backing?.fabric,
    ].filter((id) => id !== undefined);
  }

  private countsOf(v: Values): Readonly<Record<string, number>> {
    const key = `${v.rows} ${v.columns}`;
    const there = this.counts.get(key);
    if (there) return there;
    const quilt = { ...this.d.brief.quilt, rows: v.rows, columns: v.columns };
    const { counts } = countIn({ ...this.d.brief, quilt });
    this.counts.set(key, counts);
    return counts;
  }

  /** Area of each fabric in one block of every kind, as the planner is asked for it. */
  private areasOf(v: Values): Map<string, Map<string, OneBlock>> {
    const key = shapeKey(v);
    const there = this.areas.get(key);
    if (there) return there;
    const made = new Map<string, Map<string, OneBlock>>();
    const brief = this.d.write(v);
    for (const kind of new Set(brief.quilt.plan.flat().map(blockIn)))
      made.set(kind, areaOfOne(brief, kind));
    this.areas.set(key, made);
    return made;
  }
}

const shapeKey = (v: Values): string => `${v.strip} ${v.setting} ${v.side} ${v.finer}`;

/** The blocks as they lie, with nothing between or round them. */
const blocksAlone = (brief: Brief): Brief =>
  changed(brief, (d) => {
    delete d.quilt.sashing;
    d.quilt.borders = [];
    delete d.finishing;
  });

/** What one block asks of a fabric: area, and the least height of its tallest run. */
interface OneBlock {
  readonly area: number;
  readonly narrow: Length;
}

/** What a shop cuts by. */
const SHOP = { in: stepOf("4.5", "in"), mm: stepOf("50", "mm") } as const;

/** A fabric is used when anything of the quilt names it. */
function usedIn(brief: Brief): Set<string> {
  const { asked } = stagesOf(brief);
  const used = new Set(asked().map((x) => x.fabricId));
  for (const f of brief.fabrics)
    if (f.kind === "strip-set" && used.has(f.id)) for (const s of f.strips) used.add(s.fabric);
  return used;
}

/**
 * Many blocks of one kind in rows, nothing round them: what they ask, less one copy of everything
 * (a last cut may be shared), over their number. No quilt asks less for a block.
 */
function areaOfOne(brief: Brief, kind: string): Map<string, OneBlock> {
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
  const areas = new Map<string, OneBlock>();
  const { asked, quilt } = stagesOf(alone);
  // Rows of hexagons have halves at their ends, which whole blocks do not ask for.
  if (!quilt.geometry || quilt.geometry.halves.length > 0) return areas;
  for (const { fabricId, shape, count, register } of asked()) {
    const { area, narrow } = areas.get(fabricId) ?? { area: 0, narrow: 0 };
    const own = (Math.max(0, count - 1) / SAMPLE ** 2) * shape.pitch * shape.height;
    const least = register ? 0 : Math.min(shape.first, shape.height);
    areas.set(fabricId, { area: area + own, narrow: Math.max(narrow, least) });
  }
  return areas;
}
