import type { Question } from "../../../core/answer/types/answer.ts";
import type { Answered } from "../answers.ts";

/** What stands under an opened question is given. */
export interface BodyProps {
  readonly shown: Answered;
  readonly question: Question;
}
