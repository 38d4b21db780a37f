import { inHandLayouts } from "../answer/index.ts";
import type { FabricLayout } from "../layout/index.ts";
import type { Length } from "../measure/index.ts";
import type { Project } from "./fromStock.ts";

/** One drawing of a project: its bolt of a fabric, or pieces of one size that are cut alike. */
export interface CutOfHere {
  readonly fabricId: string;
  readonly from: "bolt" | "piece";
  /** Pieces cut alike; 1 for a bolt. */
  readonly times: number;
  /** Of the bolt what is left of it, straightened; of a piece its whole size. */
  readonly width: Length;
  readonly length: Length;
  /** Strips run along the piece's length. */
  readonly turned: boolean;
  readonly layout: FabricLayout;
}

/** Everything a project is cut from, in the order it is cut: pieces first, then the bolt. */
export function layoutsOfProject({ plan, taken }: Project): CutOfHere[] {
  return plan.fabrics.flatMap((f): CutOfHere[] => {
    const pieces = inHandLayouts(f, f.bolt).map(
      ({ sheet, times, turned, layout }): CutOfHere => ({
        fabricId: f.fabricId,
        from: "piece",
        times,
        width: sheet.width,
        length: sheet.length,
        turned,
        layout,
      }),
    );
    if (f.length <= 1e-9) return pieces;
    const first = f.long?.length ?? 0;
    const strips = [
      ...(f.long?.strips ?? []),
      ...f.bolt.strips.map((s) => ({ ...s, from: s.from + first })),
    ];
    const layout = { ...f.bolt, strips, length: f.length, leftovers: f.leftovers };
    const left = taken.find((t) => t.fabricId === f.fabricId)?.boltLeft ?? 0;
    const { width } = f.bolt;
    const bolt = { fabricId: f.fabricId, from: "bolt", times: 1, turned: false } as const;
    return [...pieces, { ...bolt, width, length: f.length + left, layout }];
  });
}
