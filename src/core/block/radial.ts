import { boundingBox, direction, dot } from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import { type OutlineKind, outlineOfKind, rectangle, sideNormals } from "./outline.ts";
import { grow, type NamePatch, type Plan, patchesOf } from "./plan.ts";
import { chooseTree, type Leaf, sectorOf } from "./radial-tree.ts";
import { circleOf, fieldOf, nameOuter, nameWhole, type Turned } from "./sectors.ts";
import type { BlockGeometry } from "./types.ts";

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

/** Side bars first, then top and bottom the full width. */
function inFourBars(center: Plan<Leaf>, half: Length): Plan<Leaf> {
  return ["right", "left", "top", "bottom"].reduce<Plan<Leaf>>((first, bar, i) => {
    const n = direction([0, 2, 1, 3][i], 4);
    return { line: { n, c: half }, first, second: { leaf: { bar } } };
  }, center);
}
