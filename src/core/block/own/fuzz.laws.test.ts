import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { say } from "../../findings/index.ts";
import { area, isConvex } from "../../geometry/index.ts";
import { stepOf } from "../../measure/index.ts";
import { layOutOwn } from "./lay-out-own.ts";

const SEED = 20260115;

/** Words that the grammar knows, thrown together: some lists of them are seams, most are not. */
const word = fc.constantFrom(
  ..."from to the a of along square parallel round toward wedges equal middle center third two".split(
    " ",
  ),
  ..."thirds half 1/3 5/7 0/4 3/0 8 16 45 30, 60 2 1/2 3.75 in mm crossing and meets where corner".split(
    " ",
  ),
  ..."A B C D E F G H AB BC CD DA AC BD AE EF FG A2 ½ - . ° ″".split(" "),
);
const thrown = fc.array(word, { maxLength: 12 }).map((words) => words.join(" "));
const point = fc.oneof(
  fc.constantFrom("A", "B", "C", "D", "E", "F", "G", "the center", "the crossing of AC and BD"),
  fc
    .tuple(
      fc.constantFrom("the middle", "a third", "5/7"),
      fc.constantFrom("AB", "BC", "CD", "DA", "AC", "EF"),
    )
    .map(([k, line]) => `${k} of ${line}`),
  fc
    .tuple(
      fc.constantFrom("0", "1", "2 1/2", "7", "30 mm"),
      fc.constantFrom("A along AB", "C along BC"),
    )
    .map(([x, where]) => `${x} from ${where}`),
);
const likely = fc.oneof(
  fc.tuple(point, point).map(([p, q]) => `from ${p} to ${q}`),
  fc.tuple(point, fc.constantFrom("AB", "BC", "AC")).map(([p, l]) => `from ${p} square to ${l}`),
  fc.tuple(point, fc.constantFrom("AB", "BC", "AC")).map(([p, l]) => `from ${p} parallel to ${l}`),
  fc.tuple(fc.integer({ min: 0, max: 70 }), point).map(([n, p]) => `${n} wedges round ${p}`),
);

const speech = { step: stepOf("1/8", "in") };

describe(`whatever is said (seed ${SEED})`, () => {
  test("a block comes back, filled with convex patches, and every fault in a sentence", () => {
    const codes = new Set<string>();
    let most = 0;
    fc.assert(
      fc.property(
        fc.array(
          fc.oneof({ weight: 6, arbitrary: likely }, thrown, fc.string({ maxLength: 120 })),
          {
            maxLength: 6,
          },
        ),
        (seams) => {
          const block = { kind: "own", id: "own", fabric: {}, seams } as const;
          const outline = { width: "7 1/2", height: "6" };
          const { geometry, findings } = layOutOwn(
            { ...block, seams: [...seams], outline },
            "in",
            0.25,
          );
          const sum = geometry.patches.reduce((s, p) => s + area(p.polygon), 0);
          expect(Math.abs(sum / 45 - 1)).toBeLessThan(1e-12);
          expect(geometry.patches.every((p) => isConvex(p.polygon, 1e-9))).toBe(true);
          for (const f of findings) {
            codes.add(f.code);
            expect(say(f, speech).length).toBeGreaterThan(30);
          }
          most = Math.max(most, geometry.patches.length);
        },
      ),
      { seed: SEED, numRuns: 2000 },
    );
    expect([...codes].sort()).toEqual([
      "circle-not-closed",
      "seam-misses-outline",
      "seam-not-understood",
      "seam-twice",
      "sliver",
    ]);
    expect(most).toBeGreaterThan(10);
  });
});
