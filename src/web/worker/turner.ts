import type { Turned, Turning } from "../../core/turn/index.ts";

/** How far a search is; `found` is null where it is as told before. */
export interface TurnTold {
  readonly turned: Omit<Turned, "found"> & { readonly found: Turned["found"] | null };
  readonly last: boolean;
}

export interface TurnListener {
  readonly told: (t: TurnTold) => void;
  readonly failed: (message: string) => void;
}

const newWorker = (): Worker =>
  new Worker(new URL("./turn.worker.ts", import.meta.url), { type: "module" });

/** Begins one search in a worker of its own; what is returned ends it, what was told is kept. */
export function beginTurn(
  asked: Turning,
  listener: TurnListener,
  make: () => Worker = newWorker,
): () => void {
  const worker = make();
  worker.onmessage = ({ data }: MessageEvent<TurnTold>) => {
    if (data.last) worker.terminate();
    listener.told(data);
  };
  worker.onerror = (event) => {
    event.preventDefault();
    worker.terminate();
    listener.failed(event.message || "the search stopped");
  };
  worker.postMessage(asked);
  return () => worker.terminate();
}
