import { BaseSequencer, type TestSpecification } from "vitest/node";

/** Files of tests that take six seconds of a processor and more, the longest first. */
const LONG = [
  "scripts/fuzz/fuzz.test.ts",
  "scripts/docs.test.ts",
  "scripts/docs-commands.test.ts",
  "scripts/tester/tester.test.ts",
  "src/core/layout/plan.published.test.ts",
  "scripts/guide.test.ts",
  "examples/examples.test.ts",
  "src/core/turn/turn.laws.test.ts",
  "src/cli/hostile.test.ts",
  "src/core/sheet/sheets.test.ts",
  "src/core/recipe/recipe.laws.test.ts",
  "src/core/fabric/photo/stripe.test.ts",
  "src/cli/dxf.test.ts",
  "src/cli/cli.test.ts",
  "src/core/block/radial.clipping.test.ts",
  "src/living/living.test.ts",
  "src/core/layout/plan.laws.test.ts",
  "src/core/block/radial.patterns.test.ts",
  "src/core/block/radial.laws.test.ts",
  "src/core/shop/class/class.test.ts",
  "src/core/shop/ripple/ripple.test.ts",
  "src/cli/class.test.ts",
  "e2e/page.test.ts",
  "e2e/look.test.ts",
  "e2e/print.test.ts",
  "e2e/shop.test.ts",
  "e2e/photo.test.ts",
  "e2e/keep.test.ts",
  "e2e/tour.test.ts",
];

/** Starts long files first: begun last, one would keep a worker busy while the others stand idle. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification): number => {
      const at = LONG.findIndex((name) => moduleId.endsWith(`/${name}`));
      return at < 0 ? LONG.length : at;
    };
    return (await super.sort(files)).sort((a, b) => rank(a) - rank(b));
  }
}
