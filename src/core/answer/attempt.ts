import type { Finding } from "../findings/index.ts";

/** What a stage is called where it is said that it failed. */
const STAGES = {
  blocks: "The shape of the blocks",
  quilt: "The layout of the quilt",
  pieces: "The list of pieces",
  recipes: "The cut sizes",
  finishing: "The finishing",
  demands: "What is asked of the fabric",
  layouts: "The cutting plan",
  cutting: "The order of cutting",
  sewing: "The sewing order",
  sizes: "The other sizes",
  look: "The look of the fabric",
  meetings: "What appears where blocks meet",
  wedges: "The reading of the ruler",
  sentence: "The sentence",
  questions: "An answer",
} as const;

export type Stage = keyof typeof STAGES;

/**
 * Stages tried one by one: a failure of one (a fault of this program, never of a design) leaves the
 * others standing. It is remembered with what it said, and becomes a finding that blocks cutting.
 */
export class Attempts {
  readonly failed = new Map<Stage, string>();

  of<T>(stage: Stage, make: () => T, otherwise: T): T {
    try {
      return make();
    } catch (error) {
      this.failed.set(stage, (error as Error).message);
      return otherwise;
    }
  }

  get findings(): Finding[] {
    return [...this.failed].map(
      ([stage, said]): Finding => ({
        code: "not-worked-out",
        severity: "blocks",
        place: STAGES[stage],
        words: { said },
      }),
    );
  }
}
