import { type Answer, answerBrief, type Made, makeIt } from "../../core/answer/index.ts";
import type { Brief } from "../../core/brief/index.ts";

/** What the page asks of its worker: the core's own functions, nothing computed here. */
export const services = {
  answer: (brief: Brief): Answer => answerBrief(brief),
  makeIt: (brief: Brief, width: number, length: number): Made[] => makeIt(brief, width, length),
};
