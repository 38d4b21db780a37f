import type { BlockGeometry, Hand } from "../block/types.ts";
import {
  cross,
  depth,
  dot,
  edgeLength,
  edges,
  halfPlanes,
  norm,
  ORIGIN,
  type Point,
  subtract,
} from "../geometry/index.ts";
import { type Length, toDegrees } from "../measure/index.ts";
import type { Recipe } from "../recipe/types.ts";
import { type Kind, kindsOf } from "./kinds.ts";
import { measuresOf } from "./measures.ts";
import { press as pressAll } from "./pressing.ts";
import { layOn, type PatchKey } from "./same.ts";
import { noSpare, spareAlong, spareFrom } from "./spare.ts";
import { idOf, middleOf, patchesIn, type SeamNode, seamNodes } from "./tree.ts";
import type { Lay, Press, SewnUnit, SquareUp, StraightEdge } from "./types.ts";

/** The block to be sewn; what an answer adds to its geometry is used when it is there. */
export interface SewableBlock extends BlockGeometry {
  readonly count?: number;
  readonly pieceOf?: Readonly<Record<string, string>>;
}

export interface SewingOptions {
  readonly seam: Length;
  readonly recipes?: readonly Recipe[];
  /** Decided for the whole quilt by `press`; a block on its own is pressed here when left out. */
  readonly pressed?: Readonly<Record<string, Press>>;
  /** Number of the first letter: units of several blocks are lettered through. */
  readonly from?: number;
}

/** Far below what can be cut, far above the rounding of float64 at any size of quilt. */
const NEAR = 1e-7;

/** Patches cut as the same piece may stand for one another; without pieces, those of one role and hand. */
export function keyOf(block: SewableBlock): PatchKey {
  const kind = new Map(block.patches.map((p) => [p.id, `${p.role}/${p.hand}`]));
  return (id) => block.pieceOf?.[id] ?? kind.get(id) ?? id;
}

/**
 * The units of one block in sewing order, each with its stop: what it is made of, how often, which
 * way it is pressed and what it should measure (docs/geometry/pressing.md, docs/conventions.md).
 * Congruent units made of the same pieces are one entry; lefts and rights stay apart.
 */
export function unitsOf(block: SewableBlock, options: SewingOptions): SewnUnit[] {
  const near = NEAR * Math.max(1, block.width);
  const key = keyOf(block);
  const pressed = options.pressed ?? pressAll([block], { style: "side", key, near }).bySeam;
  const kinds = kindsOf(block.tree, key, near, pressed);
  const spareOf = options.recipes ? spareFrom(options.recipes, block.pieceOf ?? {}, near) : noSpare;
  const unitOf = new Map(
    kinds.flatMap((k) => k.members.map((m) => [m.node.id, k.node.id] as const)),
  );
  const from = options.from ?? 1;
  const mirrors = mirrorsOf(kinds, key, near);
  return kinds.map((kind, i): SewnUnit => {
    const { node } = kind;
    const spare = spareAlong(node, spareOf, near);
    const measures = measuresOf(node.outline, options.seam, spare, near);
    const mirrorId = mirrors.get(node.id);
    return {
      id: node.id,
      blockId: block.id,
      letter: `U${from + i}`,
      stage: kind.stage,
      of: [partId(node, 0, unitOf), partId(node, 1, unitOf)],
      seam: node.seam,
      outline: node.outline,
      copies: kind.members.length,
      inAll: kind.members.length * (block.count ?? 1),
      seamIds: kind.members.map((m) => m.node.id),
      hand: handOf(node),
      ...(mirrorId && { mirrorId }),
      lay: layOf(node, key, near),
      measures,
      unfinished: Object.fromEntries(measures.map((m) => [m.name, m.unfinished])),
      finished: Object.fromEntries(measures.map((m) => [m.name, m.finished])),
      spareBySide: spare.map((s, index) => ({ index, spare: s })),
      ...straightEdgeOf(node, options.seam, near),
      ...squareUpOf(node, options.seam, near),
      press: pressed[node.id],
    };
  });
}

const partId = (node: SeamNode, k: 0 | 1, unitOf: ReadonlyMap<string, string>): string => {
  const id = idOf(node.parts[k]);
  return unitOf.get(id) ?? id;
};

function mirrorsOf(kinds: readonly Kind[], key: PatchKey, near: Length): Map<string, string> {
  const found = new Map<string, string>();
  for (const [i, a] of kinds.entries())
    for (const b of kinds.slice(i + 1))
      if (a.stage === b.stage && isMirror(a.node, b.node, key, near)) {
        found.set(a.node.id, b.node.id);
        found.set(b.node.id, a.node.id);
      }
  return found;
}

/** Shape for shape turned over: pieces with a hand by role and hand, all others by their key. */
function isMirror(a: SeamNode, b: SeamNode, key: PatchKey, near: Length): boolean {
  const hands = new Map([...patchesIn(a), ...patchesIn(b)].map((p) => [p.id, p]));
  const named = (id: string, over: boolean): string => {
    const p = hands.get(id);
    if (!p || p.hand === "none") return key(id);
    return `${p.role.replace(/-(left|right)$/, "")} ${over === (p.hand === "left") ? "right" : "left"}`;
  };
  return (
    layOn(
      a,
      b,
      (id) => named(id, true),
      (id) => named(id, false),
      near,
      true,
    ) !== undefined
  );
}

/** The hand of its handed pieces, when they agree: what tells the two stacks apart. */
function handOf(node: SeamNode): Hand {
  const hands = new Set(patchesIn(node).map((p) => p.hand));
  hands.delete("none");
  const [only] = hands;
  return hands.size === 1 && only ? only : "none";
}

function layOf(node: SeamNode, key: PatchKey, near: Length): Lay {
  const { from, to } = node.seam;
  const [inner, outer] = norm(from) <= norm(to) + near ? [from, to] : [to, from];
  const first = subtract(middleOf(node.parts[0]), inner);
  return {
    left: cross(subtract(outer, inner), first) > 0 ? 0 : 1,
    alike: layOn(node, node, key, key, near, true) === undefined,
  };
}

/** A unit whose edge runs through the block's center is a half: its long raw edge must be straight. */
function straightEdgeOf(
  node: SeamNode,
  seam: Length,
  near: Length,
): { straightEdge?: StraightEdge } {
  const at = edges(node.outline).findIndex((e) => {
    const along = subtract(e.to, e.from);
    const r = subtract(ORIGIN, e.from);
    const length = edgeLength(e);
    const forward = dot(r, along) / length;
    return Math.abs(cross(along, r)) / length <= near && forward > near && forward < length - near;
  });
  if (at === -1) return {};
  const e = edges(node.outline)[at];
  return {
    straightEdge: {
      edge: at,
      length: edgeLength(e) + 2 * seam,
      arm: Math.min(norm(e.from), norm(e.to)),
    },
  };
}

/** Lines that a square ruler has; the first that lies on a seam is the one to lay there. */
const RULER_LINES = [45, 90, 0, 60, 30];

/** Units that hold the center and are parallel-sided all round are squared up from the center. */
function squareUpOf(node: SeamNode, seam: Length, near: Length): { squareUp?: SquareUp } {
  const sides = halfPlanes(node.outline);
  const toCenter = sides.map((s) => depth(s, ORIGIN));
  const even = toCenter.every((d) => d > near) && node.outline.length % 2 === 0;
  const opposite = (i: number) => toCenter[(i + sides.length / 2) % sides.length];
  if (!even || toCenter.some((d, i) => Math.abs(d - opposite(i)) > near)) return {};
  const line = RULER_LINES.flatMap((degrees) => {
    const on = seamNodes(node).find((s) => isAt(s, sides[0].n, degrees));
    return on ? [{ seamId: on.id, degrees }] : [];
  })[0];
  return {
    squareUp: { toEachSide: toCenter.map((d) => d + seam), ...(line && { line }) },
  };
}

/** Does the seam lie at this angle to the side with outward normal n? */
function isAt(s: SeamNode, n: Point, degrees: number): boolean {
  const d = subtract(s.seam.to, s.seam.from);
  const toSide = toDegrees(Math.atan2(Math.abs(dot(d, n)), Math.abs(cross(d, n))));
  return Math.abs(toSide - degrees) < 1e-6;
}
