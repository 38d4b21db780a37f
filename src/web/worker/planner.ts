import type { Answer } from "../../core/answer/types/answer.ts";
import type { Brief } from "../../core/brief/index.ts";

/** The answer with the best plans so far; the last one of a search is the best it will find. */
export interface Told {
  readonly answer: Answer;
  readonly last: boolean;
}

export interface Listener {
  readonly told: (t: Told) => void;
  readonly failed: (message: string) => void;
}

const newWorker = (): Worker =>
  new Worker(new URL("./planner.worker.ts", import.meta.url), { type: "module" });

/**
 * One search for the least fabric at a time, in a worker of its own that loads the solver. The solver
 * hears nothing while it works, so stopping it is ending its worker: what it told before is kept.
 */
export class Planner {
  private readonly make: () => Worker;
  private worker: Worker | null = null;

  constructor(make: () => Worker = newWorker) {
    this.make = make;
  }

  /** Begins a search; one that is under way ends. */
  begin(brief: Brief, listener: Listener): void {
    this.end();
    const worker = this.make();
    this.worker = worker;
    worker.onmessage = ({ data }: MessageEvent<Told>) => {
      if (this.worker !== worker) return;
      if (data.last) this.end();
      listener.told(data);
    };
    worker.onerror = (event) => {
      event.preventDefault();
      if (this.worker !== worker) return;
      this.end();
      listener.failed(event.message || "the planner stopped");
    };
    worker.postMessage(brief);
  }

  end(): void {
    this.worker?.terminate();
    this.worker = null;
  }
}
