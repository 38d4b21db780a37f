import {
  boundingBox,
  clip,
  depth,
  direction,
  dot,
  type HalfPlane,
  leftOf,
  type Point,
  type Polygon,
  scale,
} from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import { circleOrders, circlePlan, orderName, preferred, type Threaded } from "./circle.ts";
import { type OutlineKind, outlineOfKind, rectangle, sideNormals } from "./outline.ts";
import { grow, type NamePatch, type Plan, patchesOf } from "./plan.ts";
import {
  type Circle,
  circleOf,
  type Field,
  fieldOf,
  longestOutside,
  nameOuter,
  nameWhole,
  span,
  type Turned,
  withinChord,
} from "./sectors.ts";
import type { BlockGeometry, TreeChoice } from "./types.ts";

export const SECTOR_COUNTS = [6, 8, 10, 12, 16] as const;
export type SectorCount = (typeof SECTOR_COUNTS)[number];

export interface RadialSpec {
  readonly id: string;
  readonly n: SectorCount;
  readonly outline: OutlineKind;
  readonly turned: Turned;
  /** Half the finished width across flats. */
  readonly a: Length;
  /** Half the finished width, side to side, of the outline that the sectors fill. */
  readonly half: Length;
  /** Sectors left whole; every other one is trimmed at `a` from the center. */
  readonly whole: readonly number[];
  /** Half the finished width of the framed block: four bars round the square of the sectors. */
  readonly frame?: Length;
  /** Name of a seam tree; the preferred one is taken when it is left out or not known. */
  readonly tree?: string;
  readonly join: Length;
}

/**
 * The least half width at which every trimmed sector has its whole outer edge inside the outline.
 * 0 when all sectors are whole. docs/geometry/radial-blocks.md has the table of it.
 */
export function leastHalf(s: Pick<RadialSpec, "n" | "outline" | "turned" | "a" | "whole">): Length {
  const c = circleOf(s.n, s.turned);
  const radius = s.a / Math.cos(Math.PI / s.n);
  const normals = sideNormals(s.outline);
  const corners = Array.from({ length: s.n }, (_, i) => i)
    .filter((i) => !s.whole.includes(i))
    .flatMap((i) => [c.seam(i), c.seam(i + 1)]);
  return corners.reduce(
    (least, corner) => Math.max(least, ...normals.map((side) => radius * dot(corner, side))),
    0,
  );
}

type Leaf = { sector: number; part: "wedge" | "outer" | "whole" } | { bar: string };

/**
 * The finished block: n equal sectors round the center, filling the outline, each whole or trimmed
 * into a wedge and what lies outside it (docs/geometry/radial-blocks.md). Lengths in the document's
 * unit. Throws RangeError for sizes or sectors that make no block; `layOutBlock` finds those first.
 */
export function radialBlock(spec: RadialSpec): BlockGeometry {
  refuseBroken(spec);
  const { id, n, a, half, join } = spec;
  const c = circleOf(n, spec.turned);
  const field = fieldOf(outlineOfKind(spec.outline, half));
  const outline = spec.frame === undefined ? field.polygon : rectangle(spec.frame, spec.frame);
  const sectors = Array.from({ length: n }, (_, i) => sectorOf(spec, c, field, i));
  const name: NamePatch<Leaf> = (leaf, polygon) => {
    if ("bar" in leaf) return { id: `${id}/bar-${leaf.bar}`, role: "bar", hand: "none" };
    const { sector, part } = leaf;
    const common = { id: `${id}/s${sector}/${part}`, sector };
    if (part === "wedge")
      return { ...common, role: sector % 2 === 0 ? "wedge-even" : "wedge-odd", hand: "none" };
    const naming = part === "outer" ? nameOuter : nameWhole;
    return { ...common, ...naming(polygon, c.axis(sector), field, join) };
  };
  const { plan, choice } = chooseTree(spec, c, field, sectors);
  const framed = spec.frame === undefined ? plan : inFourBars(plan, half);
  const tree = grow(framed, { id, outline, join }, name);
  const box = boundingBox(outline);
  return {
    id,
    outline,
    width: box.right - box.left,
    height: box.top - box.bottom,
    patches: patchesOf(tree),
    tree,
    choice,
    radial: {
      n,
      turned: spec.turned,
      a,
      polygonSide: 2 * a * Math.tan(Math.PI / n),
      circumradius: a / Math.cos(Math.PI / n),
      half,
      whole: [...spec.whole].sort((x, y) => x - y),
    },
  };
}

function refuseBroken(s: RadialSpec): void {
  if (!SECTOR_COUNTS.includes(s.n))
    throw new RangeError(`sectors: one of ${SECTOR_COUNTS.join(", ")} expected, got ${s.n}`);
  if (s.outline === "hexagon" && s.n !== 6 && s.n !== 12)
    throw new RangeError(`a hexagon takes 6 or 12 sectors, got ${s.n}`);
  if (!(s.a > 0 && s.half > 0)) throw new RangeError("a and half must be positive");
  if (s.whole.some((i) => !Number.isInteger(i) || i < 0 || i >= s.n))
    throw new RangeError(`sectors from 0 to ${s.n - 1} expected, got ${s.whole.join(", ")}`);
  const least = leastHalf(s);
  if (s.half < least - s.join)
    throw new RangeError(`half of at least ${least} expected, got ${s.half}`);
  if (s.frame !== undefined && (s.outline !== "square" || s.frame <= s.half + s.join))
    throw new RangeError("a frame is wider than the square it goes round");
}

/** One sector before it is named: how it is cut, and its patches for choosing the order. */
interface Sector {
  readonly index: number;
  readonly kind: "wedge" | "trimmed" | "whole";
  readonly chord: HalfPlane;
  readonly patches: readonly Threaded[];
  /** The chord runs from outline to outline, so what lies outside it can be sewn on last. */
  readonly chordCrosses: boolean;
}

function sectorOf(spec: RadialSpec, c: Circle, field: Field, index: number): Sector {
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
  const outer = clip(shape, { n: scale(chord.n, -1), c: -chord.c }, join);
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

function chooseTree(
  spec: RadialSpec,
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

/** Side bars first, then top and bottom the full width. */
function inFourBars(center: Plan<Leaf>, half: Length): Plan<Leaf> {
  return ["right", "left", "top", "bottom"].reduce<Plan<Leaf>>((first, bar, i) => {
    const n = direction([0, 2, 1, 3][i], 4);
    return { line: { n, c: half }, first, second: { leaf: { bar } } };
  }, center);
}
