import { type Answer, type AnswerBlock, measuresOf } from "../../answer/index.ts";
import type { Brief, StudentText } from "../../brief/index.ts";
import { inchToLength, knownLength, type Length } from "../../measure/index.ts";
import {
  type Maker,
  makeSize,
  type SewableBlock,
  seamFrom,
  shouldMeasure,
  spareFrom,
} from "../../sewing/index.ts";
import type { SeamResult } from "./types.ts";

type Test = NonNullable<StudentText["test"]>;

/** A width is right within this: what a block is eased by without a thought (no source). */
const EASED = 1 / 16;
/** A ruler is read to this at best. */
const READ = 1 / 32;

/**
 * What a seam test means for her block: each seam's error from the width of the strips, and every
 * kind of block sewn with seams of just that error. A side with spare is trimmed to size, so only
 * what is short of it counts as small.
 */
export function seamResult(brief: Brief, answer: Answer, test: Test): SeamResult | undefined {
  const { unit } = brief;
  const { seam } = measuresOf(brief);
  const cut = knownLength(test.width, unit);
  const measured = knownLength(test.size, unit);
  const should = shouldMeasure({ strips: test.strips, cut }, seam);
  const { wider, error } = seamFrom(
    [{ strips: test.strips, cut, measured }],
    seam,
    inchToLength(READ, unit),
  );
  // More than half the allowance is no seam but a slip of the ruler, or of the pen.
  if (Math.abs(wider) > seam / 2) return { should, measured, wider, error, blocks: [] };
  const eased = inchToLength(EASED, unit);
  const blocks = answer.blocks
    .filter((b) => b.count > 0 && b.radial)
    .map((block) => {
      const unfinished = block.width + 2 * seam;
      const expected = unfinished + changeOf(answer, block, seam, wider);
      const verdict =
        expected < unfinished - eased
          ? "small"
          : expected > unfinished + eased
            ? "large"
            : "within";
      return { blockId: block.id, name: block.name, unfinished, expected, verdict } as const;
    });
  return { should, measured, wider, error, blocks };
}

/** By how much the narrowest width of the block is off when every seam is `wider`; spare counted. */
export function changeOf(
  answer: Pick<Answer, "recipes">,
  block: SewableBlock & Pick<AnswerBlock, "pieceOf">,
  seam: Length,
  wider: Length,
): Length {
  const maker: Maker = {
    cutBias: 0,
    cutScatter: 0,
    seamBias: wider,
    seamScatter: 0,
    turn: 0,
    driftBias: 0,
    driftScatter: 0,
    driftPivot: 0,
  };
  const near = 1e-7 * Math.max(1, block.width);
  const { widths } = makeSize({
    block,
    seam,
    maker,
    spareOf: spareFrom(answer.recipes, block.pieceOf, near),
    follow: "outer",
    within: 0,
    samples: 1,
    seed: 1,
  });
  return Math.min(...widths.map((w) => w.mean - w.trim));
}
