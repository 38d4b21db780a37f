import { letterOf } from "../answer/cut/fabrics.ts";
import type { Brief } from "../brief/index.ts";
import { seamOf } from "../brief/lengths.ts";
import { type Look, lookOf } from "../fabric/index.ts";

/** How a fabric is told from the others without color: what is drawn on it in a grey print. */
export type Hatch =
  | "rising"
  | "blank"
  | "upright"
  | "crossed"
  | "level"
  | "dots"
  | "steep"
  | "shallow";

/** Given out by letter. The falling broken hatch belongs to lost fabric and is in no list. */
const HATCHES: readonly Hatch[] = [
  "rising",
  "blank",
  "upright",
  "crossed",
  "level",
  "dots",
  "steep",
  "shallow",
];

/** All a renderer needs to know of one fabric. */
export interface Swatch {
  readonly fabricId: string;
  readonly letter: string;
  readonly name: string;
  readonly color: string;
  readonly hatch: Hatch;
  readonly look: Look;
  /** The picture of a photographed print, as a data address. */
  readonly photo?: string;
}

export type Swatches = Readonly<Record<string, Swatch>>;

/**
 * One swatch a fabric, lettered in the order of the brief unless `letters` says otherwise. The
 * brief's lengths have been checked by its reader.
 */
export function swatches(
  brief: Pick<Brief, "fabrics" | "unit" | "seam">,
  letters: Readonly<Record<string, string>> = {},
): Swatches {
  const seam = seamOf(brief);
  const out: Record<string, Swatch> = {};
  brief.fabrics.forEach((fabric, i) => {
    const { look } = lookOf(fabric, brief.fabrics, brief.unit, seam);
    out[fabric.id] = {
      fabricId: fabric.id,
      letter: letters[fabric.id] ?? letterOf(i),
      name: fabric.name,
      color: fabric.color,
      hatch: HATCHES[i] ?? "blank",
      look,
      ...(fabric.kind === "print" && fabric.photo ? { photo: fabric.photo.data } : {}),
    };
  });
  return out;
}
