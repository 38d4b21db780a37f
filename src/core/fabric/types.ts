import type { Polygon, Rigid } from "../geometry/index.ts";
import type { Degree, Length } from "../measure/index.ts";

/**
 * One band of a fabric seen from the right side, in the *pattern frame*: y square to the bands,
 * from the start of the repeat (stripe) or the lower raw edge (strip set), x along the bands.
 */
export interface Band {
  readonly from: Length;
  readonly to: Length;
  readonly color: string;
  /** The fabric the band is made of: itself for a printed stripe, the strip's for a strip set. */
  readonly fabricId: string;
  /** Pattern frame -> photo frame, when the band is a strip of a photographed print. */
  readonly photo?: Rigid;
}

export interface PlainLook {
  readonly kind: "plain";
  readonly fabricId: string;
  readonly color: string;
}

export interface BandLook {
  readonly kind: "bands";
  readonly fabricId: string;
  /** In order, without gaps, from 0. */
  readonly bands: readonly Band[];
  /** The repeat; absent for a strip set, which ends where its last strip ends. */
  readonly period?: Length;
  /** Degrees the bands are turned anticlockwise against the strip. */
  readonly tilt: Degree;
}

export interface PhotoLook {
  readonly kind: "photo";
  readonly fabricId: string;
  readonly color: string;
  /** Real size of the pictured fabric; photo frame: lower left corner, x right, y up. */
  readonly width: Length;
  readonly height: Length;
  readonly repeat?: { readonly along: Length; readonly across?: Length };
}

/** What a fabric looks like, ready to be cut from. Docs: docs/geometry/stripes.md. */
export type Look = PlainLook | BandLook | PhotoLook;

/**
 * Which way up a piece lies on its strip. Up: the piece's own frame as it stands (a wedge's outer
 * edge on the strip's lower edge). Down: half a turn within the strip.
 */
export type Way = "up" | "down";

/** How one piece lies on its fabric. */
export interface Lay {
  readonly way: Way;
  /** Height in the repeat of the strip's lower edge, square to the bands. */
  readonly start: Length;
  /** Place along the bands of the piece's own origin: matters only for prints and crosswise bands. */
  readonly along?: Length;
  /** Instead of the fabric's own tilt. */
  readonly tilt?: Degree;
  /** The strip was cut square to the bands: rings become spokes. */
  readonly crosswise?: boolean;
  /** Height of the strip the piece is cut from, raw. */
  readonly strip: Length;
}

/** A polygon of one color (or one part of a photo) that shows in a sewn patch. */
export interface Shown {
  readonly polygon: Polygon;
  /** Place of the band in the look, counted through the repeats; 0 for plain and photo. */
  readonly band: number;
  readonly color: string;
  readonly fabricId: string;
  /** Frame of `polygon` -> photo frame. */
  readonly photo?: Rigid;
}

/** A ring of a sewn wedge: from the center outward along the wedge's axis. */
export interface Ring {
  readonly inner: Length;
  readonly outer: Length;
  readonly color: string;
  readonly fabricId: string;
}

/** The numbers of a wedge that its rings follow from. */
export interface WedgeCut {
  /** Half the finished width across flats: from the center to the outer seam. */
  readonly a: Length;
  /** Seam allowance. */
  readonly seam: Length;
  /** How far past the finished center the point is cut: SA / sin(A/2) - D. */
  readonly past: Length;
}

/** Raw height of the strip the wedge is cut from: a + SA + p. */
export const stripOf = (w: WedgeCut): Length => w.a + w.seam + w.past;

/** Where eight identical wedges are cut from a print: the wedge's middle on the photo, its turn. */
export interface AlikePlace {
  readonly x: Length;
  readonly y: Length;
  readonly turn: Degree;
}
