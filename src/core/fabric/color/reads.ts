import type { BlockGeometry, Patch } from "../../block/index.ts";
import type { Finding } from "../../findings/index.ts";
import {
  area,
  type Box,
  boundingBox,
  cross,
  distance,
  dot,
  edges,
  subtract,
} from "../../geometry/index.ts";
import type { Length } from "../../measure/index.ts";
import type { PatchLook } from "../blockLook.ts";
import { type Lab, labOf, meanLab } from "./lab.ts";
import { type Sight, seenAs } from "./simulate.ts";
import { PARTS_FROM_LIGHTNESS, type ValueGap, valueGap } from "./value.ts";

/** Two patches along a common seam. */
export interface Neighbors {
  readonly a: string;
  readonly b: string;
  /** Length of seam they share. */
  readonly seam: Length;
}

/** Every pair of patches of a block that touch along a seam. */
export function neighborsOf(patches: readonly Patch[], slack: Length): Neighbors[] {
  const out: Neighbors[] = [];
  const boxes = patches.map((p) => boundingBox(p.polygon));
  patches.forEach((p, i) => {
    for (let j = i + 1; j < patches.length; j++) {
      if (apart(boxes[i], boxes[j], slack)) continue;
      const q = patches[j];
      const seam = sharedLength(p, q, slack);
      if (seam > 10 * slack) out.push({ a: p.id, b: q.id, seam });
    }
  });
  return out;
}

/** Boxes that do not touch: what is in them does not either. */
const apart = (a: Box, b: Box, slack: Length): boolean =>
  a.left > b.right + slack ||
  b.left > a.right + slack ||
  a.bottom > b.top + slack ||
  b.bottom > a.top + slack;

function sharedLength(p: Patch, q: Patch, slack: Length): Length {
  let sum = 0;
  for (const e of edges(p.polygon))
    for (const f of edges(q.polygon)) {
      const length = distance(e.from, e.to);
      const along = subtract(e.to, e.from);
      const off = (v: { x: number; y: number }) =>
        Math.abs(cross(along, subtract(v, e.from))) / length;
      if (off(f.from) > slack || off(f.to) > slack) continue;
      const at = (v: { x: number; y: number }) => dot(along, subtract(v, e.from)) / length;
      const [low, high] = [at(f.from), at(f.to)].sort((x, y) => x - y);
      sum += Math.max(0, Math.min(length, high) - Math.max(0, low));
    }
  return sum;
}

/** Mean color of what shows in a patch, as `sight` sees it. */
export const patchLab = (look: PatchLook, sight: Sight = "full"): Lab =>
  meanLab(look.shown.map((s) => ({ lab: labOf(seenAs(s.color, sight)), area: area(s.polygon) })));

export interface NeighborGap extends Neighbors, ValueGap {
  readonly fabrics: readonly [string, string];
}

/** Value and color between each pair of neighbors. */
export function neighborGaps(
  geometry: BlockGeometry,
  looks: readonly PatchLook[],
  slack: Length,
  sight: Sight = "full",
): NeighborGap[] {
  const byId = new Map(looks.map((l) => [l.patchId, l]));
  const labs = new Map(looks.map((l) => [l.patchId, patchLab(l, sight)]));
  return neighborsOf(geometry.patches, slack).map((n) => ({
    ...n,
    ...valueGap(labs.get(n.a) as Lab, labs.get(n.b) as Lab),
    fabrics: [byId.get(n.a)?.fabricId ?? "", byId.get(n.b)?.fabricId ?? ""],
  }));
}

/**
 * Pairs of fabrics side by side that the eye will not part, once a pair. Neighbors of one fabric are
 * meant to run together and are not named.
 */
export function eyeFindings(blockId: string, gaps: readonly NeighborGap[]): Finding[] {
  const seen = new Map<string, Finding>();
  for (const g of gaps) {
    const [a, b] = [...g.fabrics].sort();
    if (a === b || g.eye === "parts" || g.eye === "by-color-only") continue;
    seen.set(`${a} ${b}`, {
      code: "eye-will-not-part",
      severity: "advice",
      place: blockId,
      words: { a, b },
    });
  }
  return [...seen.keys()].sort().map((k) => seen.get(k) as Finding);
}

export type Figure = "star" | "octagon" | "pinwheel" | "rings";

export interface FigureContrast {
  readonly figure: Figure;
  /** Mean difference of L* along its outline; for rings, between bands side by side. */
  readonly lightness: number;
}

export interface Reading {
  /** Strongest first; only those the block has. */
  readonly figures: readonly FigureContrast[];
  /** The one that is seen first; undefined when none parts from its surroundings. */
  readonly reads?: Figure;
  /** Others nearly as strong (within 5 of L*: an assumption), which compete with it. */
  readonly beside: readonly Figure[];
}

const COMPETES_WITHIN = 5;

/**
 * Which figure the eye finds, from lightness alone: the star of kites (wedge against kite), the
 * octagon (wedge against what lies outside it), the pinwheel (even wedge against odd, left background
 * against right), rings (band against band within the wedges).
 */
export function readingOf(
  geometry: BlockGeometry,
  looks: readonly PatchLook[],
  gaps: readonly NeighborGap[],
): Reading {
  const roleOf = new Map(geometry.patches.map((p) => [p.id, p.role]));
  const sums = new Map<Figure, { weighted: number; length: number }>();
  for (const g of gaps) {
    const figure = figureOf(roleOf.get(g.a) ?? "patch", roleOf.get(g.b) ?? "patch");
    if (!figure) continue;
    const sum = sums.get(figure) ?? { weighted: 0, length: 0 };
    sums.set(figure, {
      weighted: sum.weighted + g.lightness * g.seam,
      length: sum.length + g.seam,
    });
  }
  const figures = [...sums].map(
    ([figure, s]): FigureContrast => ({ figure, lightness: s.weighted / s.length }),
  );
  const rings = ringContrast(geometry, looks);
  if (rings !== undefined) figures.push({ figure: "rings", lightness: rings });
  figures.sort((p, q) => q.lightness - p.lightness || (p.figure < q.figure ? -1 : 1));
  const first = figures[0];
  if (!first || first.lightness < PARTS_FROM_LIGHTNESS) return { figures, beside: [] };
  const beside = figures
    .slice(1)
    .filter((f) => first.lightness - f.lightness < COMPETES_WITHIN)
    .map((f) => f.figure);
  return { figures, reads: first.figure, beside };
}

function figureOf(a: string, b: string): Figure | undefined {
  const isWedge = (r: string) => r.startsWith("wedge");
  const both = [a, b].sort().join(" ");
  if (both === "wedge-even wedge-odd" || both === "background-left background-right")
    return "pinwheel";
  if (isWedge(a) === isWedge(b)) return undefined;
  return both.includes("kite") ? "star" : "octagon";
}

/** Largest contrast between bands side by side in a wedge, where its bands run round. */
function ringContrast(geometry: BlockGeometry, looks: readonly PatchLook[]): number | undefined {
  const wedges = new Set(
    geometry.patches.filter((p) => p.role.startsWith("wedge")).map((p) => p.id),
  );
  const steps = looks
    .filter((l) => wedges.has(l.patchId) && l.shown.length > 1)
    .flatMap((l) =>
      l.shown.slice(1).map((s, i) => Math.abs(labOf(s.color).l - labOf(l.shown[i].color).l)),
    );
  return steps.length > 0 ? Math.max(...steps) : undefined;
}
