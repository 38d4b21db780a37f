/**
 * Asking a module worker to compute: one question at a time, the newest of each lane first heard.
 *
 * A lane is a kind of question whose older forms nobody waits for any more: the answer to the
 * present brief, the choices of the open word. A newer question replaces the waiting one of its
 * lane; one already being computed is given `patience` to end, then its worker is stopped. A worker
 * that crashes is replaced and asked again once. Nothing here throws: every ask ends in an outcome.
 */
export type Services = Readonly<Record<string, (...args: never[]) => unknown>>;

export interface Failure {
  readonly message: string;
  /** The question whose computing failed, where the service knows it. */
  readonly question?: string;
  readonly crashed: boolean;
}

export type Outcome<T> =
  | { readonly kind: "done"; readonly value: T }
  | { readonly kind: "superseded" }
  | { readonly kind: "failed"; readonly failure: Failure };

interface Ask {
  readonly id: number;
  readonly name: string;
  readonly args: readonly unknown[];
}

type Reply =
  | { readonly id: number; readonly value: unknown }
  | { readonly id: number; readonly error: { message: string; question?: string } };

/** The worker's side: answers every ask with what the named service gives or throws. */
export function serve(services: Services): void {
  addEventListener("message", async ({ data }: MessageEvent<Ask>) => {
    const { id, name, args } = data;
    try {
      if (!Object.hasOwn(services, name)) throw new RangeError(`no service is called ${name}`);
      postMessage({ id, value: await services[name](...(args as never[])) } satisfies Reply);
    } catch (thrown) {
      const { message, question } = thrown as { message?: string; question?: string };
      postMessage({ id, error: { message: message ?? String(thrown), question } } satisfies Reply);
    }
  });
}

interface Job extends Ask {
  readonly lane: string;
  readonly end: (outcome: Outcome<unknown>) => void;
  crashes: number;
}

export interface Limits {
  /** How long, in milliseconds, a superseded computation may go on. */
  readonly patience?: number;
  /** The lane whose questions go before all others. */
  readonly first?: string;
  /** How long any computation may take before its worker is taken for hung. */
  readonly limit?: number;
}

/** The page's side of one worker. */
export class Worked<S extends Services> {
  private readonly make: () => Worker;
  private readonly patience: number;
  private readonly limit: number;
  private readonly first: string | undefined;
  private worker: Worker | null = null;
  private waiting: Job[] = [];
  private running: Job | null = null;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private count = 0;

  constructor(make: () => Worker, { patience = 500, limit = 30_000, first }: Limits = {}) {
    this.make = make;
    this.patience = patience;
    this.limit = limit;
    this.first = first;
  }

  ask<N extends keyof S & string>(
    lane: string,
    name: N,
    ...args: Parameters<S[N]>
  ): Promise<Outcome<Awaited<ReturnType<S[N]>>>> {
    return new Promise((resolve) => {
      const end = resolve as Job["end"];
      const job: Job = { id: ++this.count, lane, name, args, end, crashes: 0 };
      const [older, others] = [
        this.waiting.filter((j) => j.lane === lane),
        this.waiting.filter((j) => j.lane !== lane),
      ];
      for (const { end } of older) end({ kind: "superseded" });
      this.waiting = lane === this.first ? [job, ...others] : [...others, job];
      if (this.running?.lane === lane) this.giveUpIn(this.patience, { kind: "superseded" });
      this.next();
    });
  }

  /** Starts the worker before it is asked, so that its code is there when it is. */
  ready(): Worker {
    this.worker ??= this.fresh();
    return this.worker;
  }

  stop(): void {
    for (const { end } of [...(this.running ? [this.running] : []), ...this.waiting])
      end({ kind: "superseded" });
    this.waiting = [];
    this.finish();
    this.drop();
  }

  private next(): void {
    if (this.running || this.waiting.length === 0) return;
    const [job, ...rest] = this.waiting;
    this.waiting = rest;
    this.running = job;
    const message = `no answer within ${this.limit / 1000} s`;
    this.giveUpIn(this.limit, { kind: "failed", failure: { message, crashed: true } });
    this.ready().postMessage({ id: job.id, name: job.name, args: job.args } satisfies Ask);
  }

  private fresh(): Worker {
    const worker = this.make();
    worker.onmessage = ({ data }: MessageEvent<Reply>) => {
      const job = this.finish();
      if (!job) return;
      if (this.waiting.some((j) => j.lane === job.lane)) job.end({ kind: "superseded" });
      else if ("error" in data)
        job.end({ kind: "failed", failure: { ...data.error, crashed: false } });
      else job.end({ kind: "done", value: data.value });
      this.next();
    };
    const crashed = (event: Event) => {
      event.preventDefault();
      this.drop();
      const job = this.finish();
      if (!job) return;
      job.crashes++;
      const message = (event as ErrorEvent).message || "the worker stopped";
      if (job.crashes > 1) job.end({ kind: "failed", failure: { message, crashed: true } });
      else if (this.waiting.some((j) => j.lane === job.lane)) job.end({ kind: "superseded" });
      else this.waiting = [job, ...this.waiting];
      this.next();
    };
    worker.onerror = crashed;
    worker.onmessageerror = crashed;
    return worker;
  }

  /** Ends what is running, with this outcome, if it has not ended by itself by then. */
  private giveUpIn(milliseconds: number, outcome: Outcome<unknown>): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => {
      this.drop();
      this.finish()?.end(outcome);
      this.next();
    }, milliseconds);
  }

  private finish(): Job | null {
    clearTimeout(this.timer);
    const job = this.running;
    this.running = null;
    return job;
  }

  private drop(): void {
    this.worker?.terminate();
    this.worker = null;
  }
}
