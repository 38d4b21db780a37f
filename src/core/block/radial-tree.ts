import {
  clip,
  complement,
  depth,
  direction,
  type HalfPlane,
  leftOf,
  type Point,
  type Polygon,
} from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import { circleOrders, circlePlan, orderName, preferred, type Threaded } from "./circle.ts";
import type { Plan } from "./plan.ts";
import { type Circle, type Field, longestOutside, span, withinChord } from "./sectors.ts";
import type { TreeChoice } from "./types.ts";

/** What a radial block's tree follows from; lengths as in `RadialSpec`. */
interface TreeSpec {
  readonly a: Length;
  readonly whole: readonly number[];
  readonly tree?: string;
  readonly join: Length;
}

/** An end of a radial block's plan. */
export type Leaf = { sector: number; part: "wedge" | "outer" | "whole" } | { bar: string };

/** One sector before it is named: how it is cut, and its patches for choosing the order. */
export interface Sector {
  readonly index: number;
  readonly kind: "wedge" | "trimmed" | "whole";
  readonly chord: HalfPlane;
  readonly patches: readonly Threaded[];
  /** The chord runs from outline to outline, so what lies outside it can be sewn on last. */
  readonly chordCrosses: boolean;
}

export function sectorOf(spec: TreeSpec, c: Circle, field: Field, index: number): Sector {
  const { a, join } = spec;
  const shape = span(field.polygon, c, index, 1, join);
  const chord = withinChord(c, index, a);
  const axis = c.axis(index);
  const reachesOut = shape.some((v) => depth(chord, v) < -join);
  // A whole sector that ends short of its chord, beside a narrow outline, is no wedge.
  const endsOnChord = shape.filter((v) => Math.abs(depth(chord, v)) <= join).length === 2;
  if (!reachesOut && endsOnChord) {
    const patches = [{ polygon: shape, thread: axis }];
    return { index, kind: "wedge", chord, patches, chordCrosses: false };
  }
  if (spec.whole.includes(index)) {
    const patches = [{ polygon: shape, thread: outsideThread(shape, field, join) }];
    return { index, kind: "whole", chord, patches, chordCrosses: false };
  }
  const wedge = clip(shape, chord, join);
  const outer = clip(shape, complement(chord), join);
  return {
    index,
    kind: "trimmed",
    chord,
    patches: [
      { polygon: wedge, thread: axis },
      { polygon: outer, thread: outsideThread(outer, field, join) },
    ],
    chordCrosses: wedge
      .filter((v) => Math.abs(depth(chord, v)) <= join)
      .every((v) => field.sides.some((side) => depth(side, v) <= join)),
  };
}

/** Backgrounds and kites are presumed cut with the thread along their longest outside edge. */
function outsideThread(p: Polygon, field: Field, join: Length): Point {
  const side = longestOutside(p, field, join)?.side;
  return side ? leftOf(side.n) : direction(0, 1);
}

const leaf = (sector: number, part: "wedge" | "outer" | "whole"): Plan<Leaf> => ({
  leaf: { sector, part },
});

const joined = (s: Sector): Plan<Leaf> =>
  s.kind === "trimmed"
    ? { line: s.chord, first: leaf(s.index, "wedge"), second: leaf(s.index, "outer") }
    : leaf(s.index, s.kind);

/** The circle of wedges first, then each corner onto it. */
function cornersLast(circle: Plan<Leaf>, sectors: readonly Sector[]): Plan<Leaf> {
  return sectors
    .filter((s) => s.kind === "trimmed")
    .reduce<Plan<Leaf>>(
      (first, s) => ({ line: s.chord, first, second: leaf(s.index, "outer") }),
      circle,
    );
}

interface Family {
  readonly name: string;
  /** What the circle fills. */
  readonly within: Polygon;
  readonly patches: (i: number) => readonly Threaded[];
  readonly plan: (order: Parameters<typeof circlePlan>[1]) => Plan<Leaf>;
}

/** Plain corners go on last or first; every other block has one family. */
function familiesOf(c: Circle, field: Field, sectors: readonly Sector[], join: Length): Family[] {
  const bySector = (name: string): Family => ({
    name,
    within: field.polygon,
    patches: (i) => sectors[i].patches,
    plan: (order) => circlePlan(c, order, (i) => joined(sectors[i])),
  });
  const trimmed = sectors.filter((s) => s.kind === "trimmed");
  const plain =
    trimmed.length > 0 &&
    trimmed.every((s) => s.chordCrosses) &&
    sectors.every((s) => s.kind !== "whole");
  if (!plain) return [bySector("circle")];
  const last: Family = {
    name: "corners-last",
    within: trimmed.reduce((p, s) => clip(p, s.chord, join), field.polygon),
    patches: (i) => sectors[i].patches.slice(0, 1),
    plan: (order) =>
      cornersLast(
        circlePlan(c, order, (i) => leaf(i, "wedge")),
        sectors,
      ),
  };
  return [last, bySector("corners-first")];
}

export function chooseTree(
  spec: TreeSpec,
  c: Circle,
  field: Field,
  sectors: readonly Sector[],
): { plan: Plan<Leaf>; choice: TreeChoice } {
  const families = familiesOf(c, field, sectors, spec.join).map((family) => {
    const orders = circleOrders(c, family.within, family.patches, spec.join);
    return { family, orders, ...preferred(orders, spec.join) };
  });
  const names = families.flatMap(({ family, others }) => [
    family.name,
    ...others.map((o) => orderName(family.name, c.n, o)),
  ]);
  for (const { family, orders, best } of families) {
    const asked =
      spec.tree === family.name
        ? best
        : orders.find((o) => orderName(family.name, c.n, o) === spec.tree);
    if (!asked || spec.tree === undefined) continue;
    const others = names.filter((n) => n !== spec.tree);
    return {
      plan: family.plan(asked),
      choice: { name: spec.tree, others, why: "asked" },
    };
  }
  const { family, best, why } = families[0];
  return {
    plan: family.plan(best),
    choice: {
      name: family.name,
      others: names.slice(1),
      why: families.length > 1 ? "trued-before-corners" : why,
    },
  };
}
