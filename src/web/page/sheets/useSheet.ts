import { useCallback, useEffect, useState } from "react";
import type { Sheet, SheetName } from "../../../core/sheet/index.ts";
import { newSetter } from "./asking.ts";
import type { Overview, Printing } from "./services.ts";

export interface Setting {
  readonly overview: Overview | null;
  readonly sheet: Sheet | null;
  readonly busy: boolean;
  readonly stopped: boolean;
  readonly failed: string | null;
}

const NOTHING: Setting = { overview: null, sheet: null, busy: true, stopped: false, failed: null };

/** How long the maker must be still before her pages are set again, in milliseconds. */
const STILL = 250;

/**
 * The pages of one sheet, set in a worker and set again whenever what they are made from changes; the
 * last ones stay to be seen meanwhile.
 */
export function useSheet(printing: Printing, wanted: string) {
  const [setter] = useState(newSetter);
  const [state, setState] = useState(NOTHING);
  useEffect(() => () => setter.stop(), [setter]);
  const set = useCallback(async () => {
    setState((s) => ({ ...s, busy: true, stopped: false, failed: null }));
    const outcome = await setter.ask("overview", "overview", printing);
    if (outcome.kind === "superseded") return;
    if (outcome.kind === "failed") {
      setState((s) => ({ ...s, busy: false, failed: outcome.failure.message }));
      return;
    }
    const overview = outcome.value;
    setState((s) => ({ ...s, overview }));
    const name = nameIn(overview, wanted);
    if (!name) {
      setState((s) => ({ ...s, sheet: null, busy: false }));
      return;
    }
    const made = await setter.ask("sheet", "sheet", printing, name);
    if (made.kind === "done") setState((s) => ({ ...s, sheet: made.value, busy: false }));
    if (made.kind === "failed")
      setState((s) => ({ ...s, busy: false, failed: made.failure.message }));
  }, [setter, printing, wanted]);
  useEffect(() => {
    const timer = setTimeout(() => void set(), STILL);
    return () => clearTimeout(timer);
  }, [set]);
  const stop = useCallback(() => {
    setter.stop();
    setState((s) => ({ ...s, busy: false, stopped: true }));
  }, [setter]);
  return { state, stop, again: set };
}

/** The sheet asked for, or the first there is. */
export const nameIn = (overview: Overview, wanted: string): SheetName | undefined =>
  (overview.sheets.find((s) => s.name === wanted) ?? overview.sheets[0])?.name;
