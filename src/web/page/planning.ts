import { useEffect, useState } from "react";
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { Answer } from "../../core/answer/types/answer.ts";
import type { Brief } from "../../core/brief/index.ts";
import { sameButRecord } from "../../core/brief/record.ts";
import { Planner } from "../worker/planner.ts";
import { answers, asking } from "./answers.ts";
import { sayAloud, useView } from "./view.ts";

/** The search for the least fabric for one brief. */
export interface Planning {
  readonly brief: Brief | null;
  readonly state: "idle" | "looking" | "stopped" | "done" | "failed";
}

const planning = createStore<Planning>(() => ({ brief: null, state: "idle" }));
const planner = new Planner();

/** Edits come in bursts: the search begins when they have been still this long, in milliseconds. */
const STILL = 700;

export const allProved = (answer: Answer): boolean => answer.layouts.every((l) => l.proven);

/** Looks for shorter plans than those of this brief's answer; a search for another brief ends. */
export function lookFurther(brief: Brief): void {
  planning.setState({ brief, state: "looking" });
  planner.begin(brief, {
    told: ({ answer, last }) => {
      show(brief, answer);
      if (!last) return;
      planning.setState({ brief, state: "done" });
      if (allProved(answer)) sayAloud("Every cutting plan is proved least.");
    },
    failed: () => planning.setState({ brief, state: "failed" }),
  });
}

/** Ends the search; the best plan it told of stays on the page. */
export function stopLooking(): void {
  planner.end();
  planning.setState(({ brief, state }) => ({
    brief,
    state: state === "looking" ? "stopped" : state,
  }));
}

/** The better answer takes the place of the first one, wherever that is on the page. */
function show(brief: Brief, answer: Answer): void {
  asking.remember(brief, answer);
  const { now, shown } = answers.getState();
  answers.setState({
    ...(now && sameButRecord(now.brief, brief) && { now: { brief: now.brief, answer } }),
    ...(shown && sameButRecord(shown.brief, brief) && { shown: { brief: shown.brief, answer } }),
  });
}

/**
 * While what needs it is on the page: looks for the least fabric for what is decided, once the maker
 * is still; ends when she edits again or the page no longer needs it.
 */
export function usePlanning(shown: Brief): Planning["state"] {
  const brief = useDecisions(shown);
  const decided = useStore(answers, (a) => a.now !== null && sameButRecord(a.now.brief, brief));
  const printing = useView((v) => v.printing);
  const state = useStore(planning, (p) => (isFor(p, brief) ? p.state : "idle"));
  useEffect(() => {
    const { now } = answers.getState();
    const known = planning.getState();
    const over = isFor(known, brief) && known.state !== "looking";
    if (!decided || printing || over || !now || allProved(now.answer)) return;
    const timer = setTimeout(() => lookFurther(brief), STILL);
    return () => {
      clearTimeout(timer);
      stopLooking();
    };
  }, [brief, decided, printing]);
  return state;
}

const isFor = (p: Planning, brief: Brief): boolean =>
  p.brief !== null && sameButRecord(p.brief, brief);

/** The first brief that decided the same: ticking a step off begins no search. */
function useDecisions(brief: Brief): Brief {
  const [first, setFirst] = useState(brief);
  if (first === brief || sameButRecord(first, brief)) return first;
  setFirst(brief);
  return brief;
}
