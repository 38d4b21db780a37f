import type { Length } from "../measure/index.ts";

/** Strips (or squares) of one width sewn side by side, pressed, and measured across all of them. */
export interface SeamTest {
  readonly strips: number;
  readonly cut: Length;
  readonly measured: Length;
}

export interface SeamFound {
  /** How much wider each seam is than told, turn of the fabric counted; negative: too narrow. */
  readonly wider: Length;
  /** Standard error of it, from what a ruler can be read to. */
  readonly error: Length;
  /** Between tests, when there are two or more. */
  readonly scatter?: Length;
}

/** What the strips should measure with every seam the allowance told. */
export const shouldMeasure = (t: Pick<SeamTest, "strips" | "cut">, seam: Length): Length =>
  t.strips * t.cut - 2 * (t.strips - 1) * seam;

/**
 * The true seam of a maker from her test strips. Each of k - 1 seams takes its error from both sides,
 * so the width is off by 2 (k - 1) times it; tests with more seams weigh more.
 */
export function seamFrom(tests: readonly SeamTest[], seam: Length, reading: Length): SeamFound {
  if (tests.length === 0) throw new RangeError("seamFrom: expected at least one test, got none");
  const found = tests.map((t) => {
    const taken = 2 * (t.strips - 1);
    if (taken <= 0) throw new RangeError(`seamFrom: expected 2 strips or more, got ${t.strips}`);
    return { wider: (shouldMeasure(t, seam) - t.measured) / taken, weight: taken * taken };
  });
  const weights = found.reduce((sum, f) => sum + f.weight, 0);
  const wider = found.reduce((sum, f) => sum + f.weight * f.wider, 0) / weights;
  const error = reading / Math.sqrt(weights);
  if (found.length < 2) return { wider, error };
  const spread = found.reduce((sum, f) => sum + (f.wider - wider) ** 2, 0) / (found.length - 1);
  return { wider, error, scatter: Math.sqrt(spread) };
}
