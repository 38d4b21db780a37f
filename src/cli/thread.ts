import { isMainThread, parentPort, Worker, workerData } from "node:worker_threads";
import type { Answer } from "../core/answer/index.ts";
import type { Brief } from "../core/brief/index.ts";
import type { FabricLayout } from "../core/layout/index.ts";
import { answerBest } from "./best.ts";
import type { BestAnswer, Search } from "./io.ts";

/**
 * The solver blocks its thread, and a blocked thread hears no Ctrl-C: so it works in one of its own,
 * and the two share one word of memory that says stop.
 */
interface Work {
  readonly brief: Brief;
  readonly search: Search;
  readonly stop: SharedArrayBuffer;
}

type Said = { readonly better: FabricLayout } | { readonly answer: Answer };

/** Plans in a thread that runs `program`, which calls `planIfThread` first of all. */
export const inThread =
  (program: URL): BestAnswer =>
  (brief, search, told, signal) =>
    new Promise((resolve, reject) => {
      const stop = new SharedArrayBuffer(4);
      const worker = new Worker(program, { workerData: { brief, search, stop } satisfies Work });
      const halt = (): void => void Atomics.store(new Int32Array(stop), 0, 1);
      if (signal.aborted) halt();
      if (signal instanceof AbortSignal) signal.addEventListener("abort", halt, { once: true });
      worker.on("message", (said: Said) => {
        if ("better" in said) told(said.better);
        else resolve(said.answer);
      });
      worker.on("error", reject);
    });

/** In a planning thread: does its work and says true. In the main thread: false. */
export async function planIfThread(): Promise<boolean> {
  if (isMainThread || !parentPort) return false;
  const port = parentPort;
  const { brief, search, stop } = workerData as Work;
  const flag = new Int32Array(stop);
  const signal = {
    get aborted() {
      return Atomics.load(flag, 0) === 1;
    },
  };
  const told = (better: FabricLayout): void => port.postMessage({ better } satisfies Said);
  const answer = await answerBest(brief, search, told, signal);
  port.postMessage({ answer } satisfies Said);
  return true;
}
