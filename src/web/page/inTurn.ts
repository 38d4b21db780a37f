import { startTransition, useEffect, useMemo, useState } from "react";

const waiting: (() => void)[] = [];
const next = new MessageChannel();
next.port1.onmessage = () => {
  const job = waiting.shift();
  if (waiting.length > 0) next.port2.postMessage(null);
  job?.();
};

/** Runs a job in a task of its own, after those that came before it; returns what calls it off. */
function inTurn(job: () => void): () => void {
  waiting.push(job);
  if (waiting.length === 1) next.port2.postMessage(null);
  return () => {
    const at = waiting.indexOf(job);
    if (at >= 0) waiting.splice(at, 1);
  };
}

type Made<T> = { readonly value: T } | { readonly error: unknown } | null;

/**
 * What takes long to make, one thing a task, so that the page takes touches in between. What was made
 * before stands until the new is there; `atOnce` waits for nothing (a page that is being printed). An
 * error of `make` is thrown in rendering, to the nearest boundary.
 */
export function useInTurn<T>(make: () => T, atOnce: boolean): T | null {
  const [made, setMade] = useState<Made<T>>(null);
  useEffect(() => {
    if (atOnce) return;
    return inTurn(() => {
      const result = tried(make);
      startTransition(() => setMade(result));
    });
  }, [make, atOnce]);
  const now = useMemo(() => (atOnce ? tried(make) : null), [make, atOnce]);
  const result = now ?? made;
  if (result && "error" in result) throw result.error;
  return result ? result.value : null;
}

function tried<T>(make: () => T): Made<T> {
  try {
    return { value: make() };
  } catch (error) {
    return { error };
  }
}
