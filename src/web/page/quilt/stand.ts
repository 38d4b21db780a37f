import type { Length } from "../../../core/measure/unit.ts";

/** Where the picture stands under its window: the point at the middle, and CSS pixels to the unit. */
export interface Stand {
  readonly x: Length;
  readonly y: Length;
  readonly scale: number;
}

/** The window onto the quilt, in CSS pixels of the canvas. */
export interface Window {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}
