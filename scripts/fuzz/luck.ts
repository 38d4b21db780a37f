import { uniformInt } from "pure-rand/distribution/uniformInt";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";

/** Draws that follow from a seed and the number of a case, so that any one case can be drawn alone. */
export interface Luck {
  /** A whole number, both ends included. */
  int(least: number, most: number): number;
  /** True once in so many. */
  once(inSoMany: number): boolean;
  pick<T>(from: readonly T[]): T;
  /** Up to `most` of something. */
  some<T>(most: number, one: () => T, least?: number): T[];
}

export function luckOf(seed: number, number: number): Luck {
  const random = xoroshiro128plus(Math.imul(seed, 0x9e3779b1) ^ Math.imul(number + 1, 0x85ebca6b));
  const int = (least: number, most: number): number => uniformInt(random, least, most);
  return {
    int,
    once: (inSoMany) => int(1, inSoMany) === 1,
    pick: (from) => from[int(0, from.length - 1)],
    some: (most, one, least = 0) => Array.from({ length: int(least, most) }, one),
  };
}
