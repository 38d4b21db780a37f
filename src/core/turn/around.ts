import { type Finished, nextBorder, outerFabric } from "../answer/index.ts";
import type { Border } from "../brief/index.ts";
import type { Demand } from "../layout/index.ts";
import { knownLength, type Length } from "../measure/index.ts";
import { sashKinds, topSize } from "../quilt/index.ts";
import type { Design } from "./design.ts";
import type { Values } from "./types.ts";

/** What lies between and round the blocks: rectangles as they are cut, mitred borders by area as sewn. */
export interface Around {
  readonly demands: readonly Demand[];
  /** By fabric. */
  readonly mitred: Readonly<Record<string, number>>;
}

/**
 * Sashing, borders and cornerstones of a sentence, without laying the quilt out: each rectangle with
 * its allowances, joined wherever it is too long, so that no plan is asked for less.
 */
export function aroundOf(d: Design, v: Values, block: Finished): Around {
  const { brief, m, now } = d;
  const { arrangement, offset, borders } = brief.quilt;
  const sash = arrangement === "rows" && !offset ? (v.sash ?? 0) : 0;
  const { border = 0 } = v;
  const demands: Demand[] = [];
  const mitred: Record<string, number> = {};
  const add = (fabricId: string, width: Length, height: Length, count: number, side = false) => {
    if (count < 1) return;
    const id = `around-${demands.length + 1}`;
    const first = Math.max(width, height) + 2 * m.seam;
    const tall = Math.min(width, height) + 2 * m.seam;
    const shape = { kind: "rect", first, pitch: first, height: tall } as const;
    const turns = side ? "half" : "quarter";
    demands.push({ ...RECTANGLE, id, fabricId, shape, turns, count });
  };
  if (sash > 0) {
    const sashing = brief.quilt.sashing ?? {
      width: "",
      fabric: outerFabric(brief, brief.blocks[0]),
    };
    const { rows, columns } = v;
    for (const k of sashKinds({ rows, columns, ...block, sash, sashing })) {
      const { width, height } = sizeOf(k.polygon);
      add(k.fabricId, width, height, k.count);
    }
  }
  let { width, height } = topSize({ ...{ ...d.top, block }, sash, borders: 0 }, v.rows, v.columns);
  const kept = (now.border ?? 0) > 0 ? borders.slice(0, -1) : borders;
  const outer = border > 0 ? [borders.at(-1) ?? nextBorder(brief)] : [];
  const round = (b: Border, w: Length): void => {
    const corners = b.join === "mitred" ? undefined : b.cornerstone;
    if (b.join === "mitred")
      mitred[b.fabric] = (mitred[b.fabric] ?? 0) + 2 * w * (width + height) + 4 * w * w;
    else {
      add(b.fabric, height, w, 2, true);
      add(b.fabric, corners === undefined ? width + 2 * w : width, w, 2, true);
      if (corners !== undefined) add(corners, w, w, 4);
    }
    width += 2 * w;
    height += 2 * w;
  };
  for (const b of kept) round(b, knownLength(b.width, brief.unit));
  for (const b of outer) round(b, border);
  return { demands, mitred };
}

const RECTANGLE = {
  hand: "none",
  up: false,
  layers: 1,
  joinsAllowed: true,
  piecesEach: 1,
  pieceIds: [],
} as const;

function sizeOf(polygon: readonly { readonly x: number; readonly y: number }[]) {
  const xs = polygon.map((p) => p.x);
  const ys = polygon.map((p) => p.y);
  return {
    width: Math.max(...xs) - Math.min(...xs),
    height: Math.max(...ys) - Math.min(...ys),
  };
}
