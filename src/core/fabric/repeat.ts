import type { Length } from "../measure/index.ts";
import type { Band, BandLook } from "./types.ts";

/** `x` brought into [0, period). */
export function phase(x: Length, period: Length): Length {
  const r = x % period;
  return r < 0 ? r + period : r;
}

/**
 * How far on a picture of a print may begin again: as many repeats as it shows; all of it where it
 * shows none whole, or none is known.
 */
export function wholeRepeats(size: Length, repeat: Length | undefined): Length {
  const shown = repeat ? Math.floor(size / repeat + 1e-6) : 0;
  return repeat && shown > 0 ? shown * repeat : size;
}

/**
 * The bands between two heights of the pattern frame, clipped to them, the repeat unrolled. A strip
 * set shows nothing beyond its raw edges.
 */
export function unrolled(look: BandLook, from: Length, to: Length): Band[] {
  const out: Band[] = [];
  const { period, bands } = look;
  const first = period ? Math.floor(from / period) : 0;
  const last = period ? Math.ceil(to / period) : 1;
  for (let k = first; k < last; k++) {
    const shift = period ? k * period : 0;
    for (const b of bands) {
      const low = Math.max(from, b.from + shift);
      const high = Math.min(to, b.to + shift);
      if (high > low) out.push({ ...b, from: low, to: high });
    }
  }
  return merged(out);
}

/** Neighbors that look alike are one band: no edge is seen between them. */
export function merged(bands: readonly Band[]): Band[] {
  const out: Band[] = [];
  for (const b of bands) {
    const last = out[out.length - 1];
    const alike =
      last && !last.photo && !b.photo && last.color === b.color && last.fabricId === b.fabricId;
    if (alike) out[out.length - 1] = { ...last, to: b.to };
    else out.push(b);
  }
  return out;
}
