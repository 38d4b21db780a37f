import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";

/** Independent draws from the standard normal distribution; equal seeds give equal draws. */
export function normals(seed: number): () => number {
  const draw = uniforms(seed);
  let kept: number | undefined;
  return () => {
    if (kept !== undefined) {
      const z = kept;
      kept = undefined;
      return z;
    }
    // Box and Muller, 1958: two uniform numbers give two normal ones.
    const r = Math.sqrt(-2 * Math.log(1 - draw()));
    const angle = 2 * Math.PI * draw();
    kept = r * Math.sin(angle);
    return r * Math.cos(angle);
  };
}

/** Draws from 0 (included) to 1 (excluded). */
export function uniforms(seed: number): () => number {
  const rng = xoroshiro128plus(seed);
  return () => uniformFloat64(rng);
}
