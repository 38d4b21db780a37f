import type { BlockGeometry, Patch } from "../block/types.ts";
import { angleOf, depth, edges, type HalfPlane, halfPlanes } from "../geometry/index.ts";
import type { Length, Radian } from "../measure/index.ts";
import type { Follow } from "./shift.ts";
import type { SpareOf } from "./spare.ts";

/** One piece on one side of the block: how far from the center its raw edge should come. */
export interface Reach {
  readonly patchId: string;
  readonly edge: number;
  /** Outline edge of the block. */
  readonly side: number;
  readonly sector: number;
  /** From the center line of its sector to square to the side. */
  readonly delta: Radian;
  /** Ends at the center itself (a wedge, a kite), or lies outside a cross seam. */
  readonly piece: "to-center" | "outer";
  /** Whose raw edges its long seams follow; a plain corner has no edge in them. */
  readonly follow: Follow;
  /** Without spare: finished distance and one allowance. */
  readonly far: Length;
  readonly spare: Length;
  /** A bar sewn on outside: one more seam, and its finished width is in `far`. */
  readonly bar: boolean;
}

const NEAR = 1e-7;

/** All pieces on all sides of a block. Without wedges round a center, sector and delta are 0. */
export function reachesOf(
  block: BlockGeometry,
  seam: Length,
  spareOf: SpareOf,
  follow: Follow = "outer",
): Reach[] {
  const facts = block.radial;
  if (!facts) return straightReaches(block, seam, spareOf, follow);
  const axis = (sector: number): Radian =>
    ((sector + (facts.turned === "flat" ? 0 : 1 / 2)) * 2 * Math.PI) / facts.n;
  return halfPlanes(block.outline).flatMap((outside, side) => {
    const bar = outside.c > facts.half + NEAR;
    const inner: HalfPlane = { n: outside.n, c: Math.min(outside.c, facts.half) };
    return block.patches.flatMap((patch) => {
      const { sector } = patch;
      if (sector === undefined) return [];
      return edgesOn(patch, inner).map((edge): Reach => {
        const outer = patch.id.endsWith("/outer");
        const plainCorner = outer && block.choice.name.startsWith("corners");
        return {
          patchId: patch.id,
          edge,
          side,
          sector,
          delta: turnTo(angleOf(outside.n) - axis(sector)),
          piece: outer ? "outer" : "to-center",
          follow: plainCorner ? "inner" : follow,
          far: outside.c + seam,
          spare: spareOf(patch, edge),
          bar,
        };
      });
    });
  });
}

function straightReaches(
  block: BlockGeometry,
  seam: Length,
  spareOf: SpareOf,
  follow: Follow,
): Reach[] {
  return halfPlanes(block.outline).flatMap((outside, side) =>
    block.patches.flatMap((patch) =>
      edgesOn(patch, outside).map(
        (edge): Reach => ({
          patchId: patch.id,
          edge,
          side,
          sector: 0,
          delta: 0,
          piece: "outer",
          follow,
          far: outside.c + seam,
          spare: spareOf(patch, edge),
          bar: false,
        }),
      ),
    ),
  );
}

const turnTo = (a: Radian): Radian => Math.atan2(Math.sin(a), Math.cos(a));

const edgesOn = (patch: Patch, line: HalfPlane): number[] =>
  edges(patch.polygon).flatMap((e, i) =>
    Math.max(Math.abs(depth(line, e.from)), Math.abs(depth(line, e.to))) <= NEAR ? [i] : [],
  );
