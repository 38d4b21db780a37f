/** A picture as canvases give it: rows from the top, 4 bytes a pixel (R, G, B, A), sRGB. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray | Uint8Array;
}

/** Most pixels worked on: 24 megapixels, as the larger cameras take them, and a little over. */
export const MOST_PIXELS = 25_000_000;

/** Share of the work done, 0 to 1: what the generators yield between strokes of work. */
export interface Progress {
  readonly done: number;
}

/** Throws RangeError when the sizes and the bytes do not belong together. */
export function checkPixels(p: Pixels): void {
  const whole = Number.isInteger(p.width) && Number.isInteger(p.height);
  if (!whole || p.width < 1 || p.height < 1)
    throw new RangeError(`pixels: whole positive sizes expected, got ${p.width} x ${p.height}`);
  if (p.width * p.height > MOST_PIXELS)
    throw new RangeError(`pixels: at most ${MOST_PIXELS} expected, got ${p.width * p.height}`);
  if (p.data.length !== p.width * p.height * 4)
    throw new RangeError(`pixels: ${p.width * p.height * 4} bytes expected, got ${p.data.length}`);
}

export const blank = (width: number, height: number): Pixels & { data: Uint8ClampedArray } => ({
  width,
  height,
  data: new Uint8ClampedArray(width * height * 4),
});

/** Runs a generator to its end for callers who need no progress. */
export function finish<T>(work: Generator<Progress, T>): T {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}
