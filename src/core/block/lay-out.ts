import type { Block } from "../brief/schema.ts";
import type { Finding } from "../findings/finding.ts";
import type { Length, Unit } from "../measure/index.ts";
import { layOutWedges } from "./lay-out-wedges.ts";
import { layOutOwn } from "./own/lay-out-own.ts";
import type { LetteredPoint } from "./own/letters.ts";
import { layOutUnit } from "./own/units.ts";
import type { BlockGeometry } from "./types.ts";

export interface LaidOut {
  readonly geometry?: BlockGeometry;
  readonly findings: readonly Finding[];
  /** Lettered points of a block of one's own, for its picture. */
  readonly points?: readonly LetteredPoint[];
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
  if (block.kind === "own") return layOutOwn(block, unit, seam);
  if (block.kind === "unit") return layOutUnit(block, unit, seam);
  return a === undefined ? { findings: [] } : layOutWedges(block, unit, a);
}
