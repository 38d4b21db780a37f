import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { area, distance, isConvex } from "../geometry/index.ts";
import type { OutlineKind } from "./outline.ts";
import { leastHalf, radialBlock, SECTOR_COUNTS, type SectorCount } from "./radial.ts";
import type { Turned } from "./sectors.ts";

const SEED = 20260109;
const JOIN = 1e-9;

interface Kind {
  readonly n: SectorCount;
  readonly outline: OutlineKind;
  readonly turned: Turned;
}

const KINDS: readonly Kind[] = SECTOR_COUNTS.flatMap((n) =>
  (["square", "hexagon"] as const)
    .filter((outline) => outline === "square" || n === 6 || n === 12)
    .flatMap((outline) => (["flat", "corner"] as const).map((turned) => ({ n, outline, turned }))),
);

/** Sectors by which the outline turned into itself moves the circle into itself. */
function turnStep({ n, outline }: Kind): number {
  const turns = outline === "square" ? 4 : 6;
  return n % turns === 0 ? n / turns : n / 2;
}

const image = ({ n, turned }: Kind, i: number) => (turned === "flat" ? (n - i) % n : n - 1 - i);

/** Patterns as bits: bit i set where sector i is whole. */
const wholeOf = (n: number, bits: number) =>
  Array.from({ length: n }, (_, i) => i).filter((i) => (bits >> i) & 1);
const turnedBy = (n: number, bits: number, by: number) =>
  ((bits << by) | (bits >> (n - by))) & (2 ** n - 1);
const turnedOver = (kind: Kind, bits: number) =>
  wholeOf(kind.n, bits).reduce((all, i) => all | (1 << image(kind, i)), 0);

/** The patterns that turning the block, or turning it over, makes of this one. */
function orbit(kind: Kind, bits: number): number[] {
  const over = turnedOver(kind, bits);
  const all: number[] = [];
  for (let by = 0; by < kind.n; by += turnStep(kind))
    all.push(turnedBy(kind.n, bits, by), turnedBy(kind.n, over, by));
  return all;
}

const build = (kind: Kind, whole: readonly number[], a: number, float: number) => {
  const least = leastHalf({ ...kind, a, whole });
  return radialBlock({
    ...kind,
    id: "p",
    a,
    whole,
    half: (least > 0 ? least : 1.3 * a) * float,
    join: JOIN,
  });
};

/** Of 16 sectors there are thousands of orbits. */
const EVERY = ({ n }: Kind): number => (n === 16 ? 4 : 1);
const TITLED = KINDS.map((kind) => ({
  ...kind,
  patterns: EVERY(kind) === 1 ? "all patterns" : "all patterns are met, one in four of them",
}));

describe("patterns of whole and trimmed sectors", () => {
  // Only one pattern of each orbit is built below; this law is why that is enough.
  test(`a turned or mirrored pattern gives the turned or mirrored block (seed ${SEED})`, () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...KINDS),
        fc.nat({ max: 0xffff }),
        fc.nat({ max: 5 }),
        fc.boolean(),
        fc.constantFrom(1, 1.137),
        (kind, seed, turns, mirror, float) => {
          const { n } = kind;
          const by = (turns * turnStep(kind)) % n;
          const whole = wholeOf(n, seed % 2 ** n);
          const moved = (i: number) => ((mirror ? image(kind, i) : i) + by) % n;
          const before = build(kind, whole, 3.7, float);
          const after = build(kind, whole.map(moved), 3.7, float);
          const angle = (2 * Math.PI * by) / n;
          expect(after.patches.length).toBe(before.patches.length);
          for (const p of before.patches) {
            const part = p.id.split("/")[2];
            const q = after.patches.find((x) => x.id === `p/s${moved(p.sector!)}/${part}`)!;
            const hands = mirror ? { left: "right", right: "left", none: "none" } : undefined;
            expect(q.hand).toBe(hands ? hands[p.hand] : p.hand);
            for (const v of p.polygon) {
              const y = mirror ? -v.y : v.y;
              const at = {
                x: v.x * Math.cos(angle) - y * Math.sin(angle),
                y: v.x * Math.sin(angle) + y * Math.cos(angle),
              };
              if (q.polygon.every((w) => distance(w, at) > 1e-9))
                throw new Error(`${q.id} differs`);
            }
          }
        },
      ),
      { seed: SEED, numRuns: 400 },
    );
  });

  test.each(TITLED)("$n in a $outline, $turned: $patterns build, sum and are convex", (kind) => {
    let covered = 0;
    let built = 0;
    const faults: string[] = [];
    for (let bits = 0; bits < 2 ** kind.n; bits++) {
      const same = orbit(kind, bits);
      if (Math.min(...same) !== bits) continue;
      covered += new Set(same).size;
      built++;
      if (built % EVERY(kind) !== SEED % EVERY(kind)) continue;
      const b = build(kind, wholeOf(kind.n, bits), 4, built % 3 === 0 ? 1 : 1 + (built % 7) / 10);
      const sum = b.patches.reduce((s, p) => s + area(p.polygon), 0);
      if (Math.abs(sum / area(b.outline) - 1) > 1e-12) faults.push(`${bits}: areas`);
      if (!b.patches.every((p) => isConvex(p.polygon, JOIN))) faults.push(`${bits}: convex`);
      if (new Set(b.patches.map((p) => p.sector)).size !== kind.n) faults.push(`${bits}: sectors`);
    }
    expect(faults).toEqual([]);
    expect(covered).toBe(2 ** kind.n);
  });
});
