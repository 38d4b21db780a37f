import {
  type Answer,
  answerBrief,
  type Consequence,
  consequences,
} from "../../core/answer/index.ts";
import type { Brief } from "../../core/brief/index.ts";

/** What the page asks of its worker: the core's own functions, nothing computed here. */
export const services = {
  answer: (brief: Brief): Answer => answerBrief(brief),

  /** What would follow from each of these, against what is now. */
  weigh: (now: Brief, then: readonly Brief[]): Weighed[] => {
    const present = answerBrief(now);
    return then.map((brief) => {
      const answer = answerBrief(brief);
      return { answer, consequences: consequences(present, answer) };
    });
  },
};

export interface Weighed {
  readonly answer: Answer;
  readonly consequences: readonly Consequence[];
}
