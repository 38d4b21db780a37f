import type { Brief } from "../brief/index.ts";
import { missedBy, type SizePlan, type Wanted } from "../quilt/index.ts";
import { answerBrief } from "./compose.ts";
import { blocksOf, finishedBlock, measuresOf, namesOf, quiltOf } from "./cut/stages.ts";
import { byNearness, plansFor, withPlan } from "./size/plans.ts";
import type { Answer } from "./types/answer.ts";
import { MOST_CHOICES } from "./words/word.ts";

/** One way to make a quilt the size that is asked for, with the brief that does it. */
export interface Made {
  readonly plan: SizePlan;
  readonly brief: Brief;
  /** The brief answered in full: what is over or under is read from it. */
  readonly answer: Answer;
  readonly over: Wanted;
}

/**
 * "Make it 60 x 72": at most four ways, nearest first, each by blocks alone or with one length
 * changed (the side of the block, the strip, the sashing, the outer border). Every one is answered in
 * full; one that cannot be cut is left out. Lengths in the brief's unit,
 * finished top without binding. Empty when the quilt has no size itself.
 */
export function makeIt(brief: Brief, width: Wanted["width"], length: Wanted["length"]): Made[] {
  if (!(width > 0 && length > 0 && Number.isFinite(width + length)))
    throw new RangeError(`a width and a length above 0 expected, got ${width} and ${length}`);
  if (namesOf(brief).length > 0) return [];
  const m = measuresOf(brief);
  const blocks = blocksOf(brief, m);
  const { geometry } = quiltOf(brief, blocks);
  const block = finishedBlock(brief, blocks);
  if (!geometry || !block) return [];
  const wanted = { width, length };
  const plans = plansFor(brief, m, block, wanted);
  const [alone] = plans;
  const worth = plans.filter((p) => p === alone || missedBy(p) < missedBy(alone) - 1e-9);
  const made: Made[] = [];
  for (const plan of byNearness(worth, m.step)) {
    const changed = withPlan(brief, plan, m.step);
    const answer = answerBrief(changed);
    const blocked = answer.findings.some((f) => f.severity === "blocks");
    if (!answer.quilt || blocked) continue;
    const over = { width: answer.quilt.width - width, length: answer.quilt.height - length };
    made.push({ plan, brief: changed, answer, over });
    if (made.length === MOST_CHOICES) break;
  }
  return made;
}
