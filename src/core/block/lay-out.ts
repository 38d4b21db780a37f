import type { Block } from "../brief/schema.ts";
import type { Finding } from "../findings/finding.ts";
import type { Length, Unit } from "../measure/index.ts";
import { layOutWedges } from "./lay-out-wedges.ts";
import type { BlockGeometry } from "./types.ts";

export interface LaidOut {
  readonly geometry?: BlockGeometry;
  readonly findings: readonly Finding[];
}

/**
 * A block of the brief as exact finished geometry. `seam` and `a` (half across flats, from the ruler
 * and the strip; undefined when the ruler gave none) are in the document's unit, like the result.
 * What is wrong comes back as findings; geometry is there whenever a block can be drawn.
 */
export function layOutBlock(
  block: Block,
  unit: Unit,
  seam: Length,
  a: Length | undefined,
): LaidOut {
  if (block.kind === "wedges")
    return a === undefined ? { findings: [] } : layOutWedges(block, unit, a);
  void seam;
  return { findings: [] };
}
