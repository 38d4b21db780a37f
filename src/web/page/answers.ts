import { startTransition, useEffect, useState } from "react";
import { createStore } from "zustand/vanilla";
import type { Answer } from "../../core/answer/types/answer.ts";
import type { Brief } from "../../core/brief/index.ts";
import type { KeepStore } from "../keep/index.ts";
import { Asking, Superseded } from "./asking.ts";
import { sayAloud } from "./view.ts";

/** A brief with what follows from it: always of one piece, never half new. */
export interface Answered {
  readonly brief: Brief;
  readonly answer: Answer;
}

export interface Answers {
  /** What is decided. */
  readonly now: Answered | null;
  /** What the page shows: the same, or what the choice under the finger would give. */
  readonly shown: Answered | null;
  /** The page is behind: its answer is being worked out. */
  readonly busy: boolean;
  readonly failed: string | null;
}

export const answers = createStore<Answers>(() => ({
  now: null,
  shown: null,
  busy: true,
  failed: null,
}));

/**
 * Follows the answers without haste: what they change is rendered in slices, so that the page takes
 * touches in between.
 */
export function useAnswers(): Answers {
  const [state, setState] = useState(answers.getState);
  useEffect(() => {
    const follow = (): void => startTransition(() => setState(answers.getState()));
    follow();
    return answers.subscribe(follow);
  }, []);
  return state;
}

export const asking = new Asking();

/** Keeps the answers beside the open design: every change is answered again, the newest wins. */
export function followDesign(keep: KeepStore): () => void {
  let brief: Brief | null = null;
  let shown: Brief | null = null;
  let id: string | null = null;
  const look = (): void => {
    const { open } = keep.state.getState();
    if (!open) {
      answers.setState({ now: null, shown: null, busy: true });
      brief = shown = null;
      return;
    }
    if (open.brief === brief && open.shown === shown && open.id === id) return;
    const another = open.id !== id;
    id = open.id;
    brief = open.brief;
    shown = open.shown;
    void answer(open.brief, open.shown, another);
  };
  const answer = async (decided: Brief, wanted: Brief, another: boolean): Promise<void> => {
    answers.setState({ busy: true });
    try {
      const given: Answered = { brief: wanted, answer: await asking.forPage(wanted) };
      if (shown !== wanted) return;
      const before = answers.getState().now;
      if (wanted !== decided) {
        answers.setState({ shown: given, busy: false, failed: null });
        return;
      }
      answers.setState({ now: given, shown: given, busy: false, failed: null });
      if (!another && before && before.answer !== given.answer) void tell(before, given);
    } catch (error) {
      if (error instanceof Superseded || shown !== wanted) return;
      answers.setState({ busy: false, failed: (error as Error).message });
    }
  };
  look();
  return keep.state.subscribe(look);
}

/** Says what a change changed, and nothing else; its words come with the first change. */
export async function tell(before: Answered, after: Answered): Promise<void> {
  const { spokenChange } = await import("../../core/answer/say/consequences.ts");
  const nameOf = (fabric: string): string =>
    after.brief.fabrics.find((f) => f.id === fabric)?.name ?? fabric;
  sayAloud(spokenChange(before.answer, after.answer, nameOf));
}
