import { useEffect, useRef, useState } from "react";
import type { Brief } from "../../../core/brief/index.ts";
import { type PinProblem, readPin } from "../../../core/turn/read.ts";
import type { FreeWord, Pin, Turned } from "../../../core/turn/types.ts";
import { beginTurn } from "../../worker/turner.ts";
import { sayAloud } from "../view.ts";
import { turning } from "./turning.ts";

export interface Search {
  readonly state: "idle" | "looking" | "stopped" | "done" | "failed";
  readonly turned: Turned | null;
  readonly message?: string;
}

/** Edits of a pin come letter by letter: the search begins when they have been still this long. */
const STILL = 400;

/** The pins as read, and the search they ask for: it begins anew at every change, and can be stopped. */
export function useTurn(brief: Brief, texts: readonly string[], free: readonly FreeWord[]) {
  const [search, setSearch] = useState<Search>({ state: "idle", turned: null });
  const end = useRef<() => void>(() => {});
  const read: readonly (Pin | PinProblem)[] = texts.map((t) => readPin(t, brief));
  const sound = read.length > 0 && free.length > 0 && read.every((p) => !("problem" in p));
  const key = JSON.stringify([read, free]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for what is asked
  useEffect(() => {
    if (!sound) {
      setSearch({ state: "idle", turned: null });
      return;
    }
    const timer = setTimeout(() => {
      setSearch({ state: "looking", turned: null });
      end.current = beginTurn(
        { brief, pins: read as readonly Pin[], free },
        {
          told: ({ turned, last }) => {
            turning.setState({ may: turned.may });
            setSearch((s) => ({
              state: last ? "done" : "looking",
              turned: { ...turned, found: turned.found ?? s.turned?.found ?? [] },
            }));
            if (last)
              sayAloud(
                turned.found && turned.found.length > 0
                  ? `${turned.found.length} sentences found.`
                  : "Nothing fits.",
              );
          },
          failed: (message) => setSearch((s) => ({ ...s, state: "failed", message })),
        },
      );
    }, STILL);
    return () => {
      clearTimeout(timer);
      end.current();
    };
  }, [brief, key, sound]);
  const stop = (): void => {
    end.current();
    setSearch((s) => ({ ...s, state: "stopped" }));
  };
  return { read, search, stop };
}
