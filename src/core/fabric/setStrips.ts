import type { Fabric } from "../brief/index.ts";
import { knownLength, type Length, type Unit } from "../measure/index.ts";

type StripSetFabric = Extract<Fabric, { kind: "strip-set" }>;

/** Strips of one fabric and width that the sets need. */
export interface SetStripNeed {
  readonly setId: string;
  readonly fabricId: string;
  /** Cut width of the strip. */
  readonly cut: Length;
  /** Length of each strip: the usable length of the sewn set. */
  readonly length: Length;
  readonly count: number;
  /** Places in the set, from 0. */
  readonly places: readonly number[];
}

export interface SetsNeeded {
  readonly sets: number;
  /** The set is as long as its narrowest fabric is wide, and no longer than its own usable width. */
  readonly length: Length;
  /** Wedges (or other pieces) that one set gives. */
  readonly perSet: number;
  readonly strips: readonly SetStripNeed[];
}

/** Usable length of a set: its own, or the narrowest of its fabrics where that is less. */
export function setLength(set: StripSetFabric, all: readonly Fabric[], unit: Unit): Length {
  const own = knownLength(set.usable, unit);
  const strips = set.strips.flatMap((s) => {
    const fabric = all.find((f) => f.id === s.fabric);
    return fabric ? [knownLength(fabric.usable, unit)] : [];
  });
  return Math.min(own, ...strips);
}

/**
 * The strips of other fabrics that a strip set needs for `pieces` pieces, `perSet` of which come
 * from one set of its usable length. `fewest`: sets are made in multiples of this (2 when half of
 * them are pressed the other way so that matched rings nest).
 */
export function stripsForSets(
  set: StripSetFabric,
  all: readonly Fabric[],
  unit: Unit,
  pieces: number,
  perSet: number,
  fewest = 1,
): SetsNeeded {
  if (!(perSet >= 1)) throw new RangeError(`perSet must be at least 1, got ${perSet}`);
  const sets = Math.ceil(Math.ceil(pieces / perSet) / fewest) * fewest;
  const length = setLength(set, all, unit);
  const needs: SetStripNeed[] = [];
  set.strips.forEach((s, place) => {
    const cut = knownLength(s.cut, unit);
    const same = needs.findIndex((n) => n.fabricId === s.fabric && n.cut === cut);
    const count = sets;
    if (same < 0)
      needs.push({ setId: set.id, fabricId: s.fabric, cut, length, count, places: [place] });
    else {
      const old = needs[same];
      needs[same] = { ...old, count: old.count + count, places: [...old.places, place] };
    }
  });
  return { sets, length, perSet, strips: needs };
}

/**
 * How the set's own seams lie where two wedges are sewn together. Rings that do not meet have no
 * crossing to nest. Up and down wedges of one set have their allowances pressed to opposite rings,
 * so they nest by themselves; wedges all one way nest only when half the sets are pressed the other
 * way and the two kinds are sewn alternately.
 */
export function nestingOf(
  round: "matched" | "mixed" | "free",
  ringsMeet: boolean,
): "no-crossing" | "by-itself" | "press-two-ways" {
  if (!ringsMeet) return "no-crossing";
  return round === "matched" ? "press-two-ways" : "by-itself";
}
