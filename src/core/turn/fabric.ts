import { boughtOf, changed, nextBorder, outerFabric, stagesOf } from "../answer/index.ts";
import type { Brief } from "../brief/index.ts";
import type { Length } from "../measure/index.ts";
import { type Design, shapeKey } from "./design.ts";
import { isSound, LeastFabric } from "./least.ts";
import type { Pin, Values, YardagePin } from "./types.ts";

/**
 * What fabric sentences need, weighed before they are answered: first a bound that no
 * cutting beats, then the planner on the pinned fabrics alone.
 */
export class FabricScale {
  private readonly d: Design;
  private readonly tally: { planned: number };
  private readonly pins: readonly YardagePin[];
  private readonly bound: LeastFabric;
  private readonly soundness = new Map<string, boolean>();
  private readonly bought = new Map<string, readonly (Length | undefined)[]>();

  constructor(d: Design, pins: readonly Pin[], tally: { planned: number }) {
    this.d = d;
    this.tally = tally;
    this.bound = new LeastFabric(d);
    this.pins = pins.filter((p) => p.kind === "yardage");
  }

  /** Can its blocks be cut at all? What blocks them without borders blocks them with borders too. */
  sound(v: Values): boolean {
    const kinds = Object.entries(this.bound.countsOf(v)).flatMap(([id, n]) => (n > 0 ? [id] : []));
    const key = `${shapeKey(v)} ${kinds.sort().join(" ")}`;
    const there = this.soundness.get(key);
    if (there !== undefined) return there;
    const { arrangement, offset } = this.d.brief.quilt;
    const made =
      arrangement === "rows" && !offset
        ? kinds.every((kind) => this.bound.sound(v, kind))
        : isSound(stagesOf(blocksAlone(this.d.write(v))));
    this.soundness.set(key, made);
    return made;
  }

  /** The least that must be bought of a fabric, without planning. */
  least(v: Values, fabricId: string, enough?: Length): Length {
    return this.bound.least(v, fabricId, enough);
  }

  /** Can the pinned fabrics still be enough? */
  mayFit(v: Values): boolean {
    return this.pins.every((p) => this.least(v, p.fabricId, p.most + 1e-6) <= p.most + 1e-6);
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
      : `${shape} ${JSON.stringify(this.bound.countsOf(v))}`;
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
}

/** The blocks as they lie, with nothing between or round them. */
const blocksAlone = (brief: Brief): Brief =>
  changed(brief, (d) => {
    delete d.quilt.sashing;
    d.quilt.borders = [];
    delete d.finishing;
  });

/** A fabric is used when anything of the quilt names it. */
function usedIn(brief: Brief): Set<string> {
  const { asked } = stagesOf(brief);
  const used = new Set(asked().map((x) => x.fabricId));
  for (const f of brief.fabrics)
    if (f.kind === "strip-set" && used.has(f.id)) for (const s of f.strips) used.add(s.fabric);
  return used;
}
