import { useEffect, useState } from "react";
import { type Outcome, Worked } from "../../worker/index.ts";
import type { services } from "./services.ts";

/** The worker that works out kits, classes and corrections, and writes their sheets. */
export const shopWorker = new Worked<typeof services>(
  () => new Worker(new URL("./shop.worker.ts", import.meta.url), { type: "module" }),
  { limit: 120_000 },
);

export interface Asked<T> {
  readonly value: T | null;
  readonly busy: boolean;
  readonly failed: string | null;
}

/** Asks again whenever the question is another; what was found before stays until the new is there. */
export function useAsked<T>(ask: () => Promise<Outcome<T>>): Asked<T> {
  const [state, setState] = useState<Asked<T>>({ value: null, busy: true, failed: null });
  useEffect(() => {
    let live = true;
    setState((s) => ({ ...s, busy: true }));
    void ask().then((outcome) => {
      if (!live || outcome.kind === "superseded") return;
      if (outcome.kind === "done") setState({ value: outcome.value, busy: false, failed: null });
      else setState((s) => ({ ...s, busy: false, failed: outcome.failure.message }));
    });
    return () => {
      live = false;
    };
  }, [ask]);
  return state;
}
