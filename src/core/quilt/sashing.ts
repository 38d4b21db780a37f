import type { Quilt } from "../brief/index.ts";
import type { Length } from "../measure/index.ts";
import { rectangleAt } from "./shapes.ts";
import type { CountedPatch, QuiltPatch } from "./types.ts";

export interface SashedRows {
  readonly rows: number;
  readonly columns: number;
  /** Finished block. */
  readonly width: Length;
  readonly height: Length;
  /** Finished sash; 0 when there is none. */
  readonly sash: Length;
  readonly sashing: Quilt["sashing"];
}

export const centerSize = (g: SashedRows): { width: Length; height: Length } => ({
  width: g.columns * g.width + (g.columns - 1) * g.sash,
  height: g.rows * g.height + (g.rows - 1) * g.sash,
});

/**
 * Sashing lies between blocks; the outside is a border's business. With cornerstones every sash is
 * as long as a block; without, the level ones run the whole width between the rows.
 */
export function sashKinds(g: SashedRows): CountedPatch[] {
  if (!g.sashing || g.sash === 0) return [];
  const { fabric, cornerstone } = g.sashing;
  const level = cornerstone
    ? { length: g.width, count: (g.rows - 1) * g.columns }
    : { length: centerSize(g).width, count: g.rows - 1 };
  const kinds: CountedPatch[] = [
    kind("sash/upright", "sash", fabric, g.sash, g.height, g.rows * (g.columns - 1)),
    kind("sash/level", "sash", fabric, level.length, g.sash, level.count),
    ...(cornerstone
      ? [
          kind(
            "sash/cornerstone",
            "cornerstone",
            cornerstone,
            g.sash,
            g.sash,
            (g.rows - 1) * (g.columns - 1),
          ),
        ]
      : []),
  ];
  return kinds.filter((k) => k.count > 0);
}

const kind = (
  id: string,
  role: "sash" | "cornerstone",
  fabricId: string,
  width: Length,
  height: Length,
  count: number,
): CountedPatch => ({ id, role, fabricId, polygon: rectangleAt(0, 0, width, height), count });

/** Every sash and cornerstone where it lies, for drawing. */
export function* placedSashes(g: SashedRows): Generator<QuiltPatch> {
  if (!g.sashing || g.sash === 0) return;
  const { fabric, cornerstone } = g.sashing;
  const x = (c: number): Length => (c - (g.columns - 1) / 2) * (g.width + g.sash);
  const y = (r: number): Length => ((g.rows - 1) / 2 - r) * (g.height + g.sash);
  for (let r = 0; r < g.rows; r++) {
    for (let c = 0; c + 1 < g.columns; c++)
      yield {
        id: `sash/upright/r${r + 1}c${c + 1}`,
        role: "sash",
        fabricId: fabric,
        polygon: rectangleAt(x(c + 0.5), y(r), g.sash, g.height),
      };
    if (r + 1 === g.rows) continue;
    if (!cornerstone) {
      const polygon = rectangleAt(0, y(r + 0.5), centerSize(g).width, g.sash);
      yield { id: `sash/level/r${r + 1}`, role: "sash", fabricId: fabric, polygon };
      continue;
    }
    for (let c = 0; c < g.columns; c++) {
      yield {
        id: `sash/level/r${r + 1}c${c + 1}`,
        role: "sash",
        fabricId: fabric,
        polygon: rectangleAt(x(c), y(r + 0.5), g.width, g.sash),
      };
      if (c + 1 < g.columns)
        yield {
          id: `sash/cornerstone/r${r + 1}c${c + 1}`,
          role: "cornerstone",
          fabricId: cornerstone,
          polygon: rectangleAt(x(c + 0.5), y(r + 0.5), g.sash, g.sash),
        };
    }
  }
}
