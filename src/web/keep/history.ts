import { applyPatches, enablePatches, freeze, produceWithPatches } from "immer";
import type { Brief } from "../../core/brief/index.ts";
import type { Recipe, Step } from "./types.ts";

enablePatches();

/**
 * A design with the way it came here: `at` of its `steps` are in force, the rest wait for redo.
 * Values only: every change gives a new line, and the steps that did not change are the same
 * objects, which is how the keep knows what it need not write again.
 */
export interface Line {
  readonly brief: Brief;
  readonly at: number;
  readonly steps: readonly Step[];
}

export const freshLine = (brief: Brief): Line => ({ brief: freeze(brief, true), at: 0, steps: [] });

/** Makes one step. Steps that waited for redo are let go. A change that changes nothing is none. */
export function edited(line: Line, words: string, at: string, change: Recipe): Line {
  const [brief, patches, inverse] = produceWithPatches(line.brief, (draft) => {
    change(draft as Brief);
  });
  if (patches.length === 0) return line;
  const step: Step = { words, at, patches, inverse };
  return { brief, at: line.at + 1, steps: [...line.steps.slice(0, line.at), step] };
}

/** Makes the whole design another one, as one step. */
export function replaced(line: Line, words: string, at: string, brief: Brief): Line {
  const step: Step = {
    words,
    at,
    patches: [{ op: "replace", path: [], value: brief }],
    inverse: [{ op: "replace", path: [], value: line.brief }],
  };
  return {
    brief: freeze(brief, true),
    at: line.at + 1,
    steps: [...line.steps.slice(0, line.at), step],
  };
}

export function undone(line: Line): Line {
  const step = line.steps[line.at - 1];
  if (!step) return line;
  return { ...line, brief: patched(line.brief, step.inverse), at: line.at - 1 };
}

export function redone(line: Line): Line {
  const step = line.steps[line.at];
  if (!step) return line;
  return { ...line, brief: patched(line.brief, step.patches), at: line.at + 1 };
}

const patched = (brief: Brief, patches: Step["patches"]): Brief =>
  applyPatches(brief, patches as Step["patches"][number][]);

/** How many steps from the start two lines share, by identity. */
export function sharedSteps(a: readonly Step[], b: readonly Step[]): number {
  let n = 0;
  while (n < a.length && n < b.length && a[n] === b[n]) n++;
  return n;
}
