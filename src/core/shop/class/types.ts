import type { Answer } from "../../answer/index.ts";
import type { Brief } from "../../brief/index.ts";
import type { Finding } from "../../findings/index.ts";
import type { Length } from "../../measure/index.ts";

/** One fabric she brings. */
export interface Supply {
  readonly fabricId: string;
  readonly letter: string;
  readonly name: string;
  readonly buy: string;
  readonly uses: string;
}

/** Strips cut at home: nothing that a ruler's point could spoil. */
export interface Homework {
  readonly fabricId: string;
  readonly letter: string;
  readonly name: string;
  /** "5 strips 4 1/2 in". */
  readonly cuts: readonly string[];
}

/** What one seam test says of one maker. */
export interface SeamResult {
  readonly should: Length;
  readonly measured: Length;
  /** Each seam is wider than told by this; negative: narrower. */
  readonly wider: Length;
  readonly error: Length;
  /** For each kind of block: what its unfinished width will be off by, and its spare. */
  readonly blocks: readonly {
    readonly blockId: string;
    readonly name: string;
    readonly unfinished: Length;
    readonly expected: Length;
    readonly verdict: "within" | "small" | "large";
  }[];
}

/** One student with her own fabric, ruler and size; or the class as the design has it. */
export interface StudentPlan {
  readonly name: string;
  readonly brief: Brief;
  readonly answer: Answer;
  readonly size: string;
  /** What she has otherwise than the design, in words. */
  readonly own: readonly string[];
  readonly supplies: readonly Supply[];
  readonly tools: readonly string[];
  readonly homework: readonly Homework[];
  readonly rulerCheck: readonly string[];
  readonly seam?: SeamResult;
  readonly findings: readonly Finding[];
}

/** A sample stopped at one stage, to be shown. */
export interface StepOut {
  readonly blockId: string;
  readonly block: string;
  readonly unitId: string;
  readonly name: string;
  readonly measure: string;
  /** Pieces by letter. */
  readonly pieces: readonly {
    readonly letter: string;
    readonly name: string;
    readonly count: number;
  }[];
}

export interface StepOuts {
  readonly samples: readonly StepOut[];
  /** Length of each fabric for all samples together, cut as the design cuts. */
  readonly fabric: readonly {
    readonly fabricId: string;
    readonly letter: string;
    readonly name: string;
    readonly length: Length;
  }[];
}

/** Estimated minutes of one student at one stage. */
export interface Stage {
  readonly name: string;
  readonly seams: number;
  readonly sewing: number;
  readonly pressing: number;
  readonly laying: number;
  readonly own: number;
  /** With the whole room at the irons. */
  readonly inClass: number;
  readonly queue: boolean;
}

export interface ClassPlan {
  readonly title: string;
  readonly everyone: StudentPlan;
  readonly students: readonly StudentPlan[];
  readonly size: number;
  readonly stepOuts: StepOuts;
  readonly stages: readonly Stage[];
  /** Minutes for the blocks each means to finish. */
  readonly minutes: number;
  readonly hours: number;
  readonly blocks: number;
  /** Whole blocks of the first kind that one student finishes in the time there is. */
  readonly finished: number;
  readonly irons: number;
}
