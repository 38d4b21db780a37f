// Runs cases one after another in a thread that can be ended when one of them does not come back.
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { parentPort, workerData } from "node:worker_threads";
import { type Kind, Met, type Plan, runAny } from "./cases.ts";
import type { Broken } from "./laws.ts";

export interface Job {
  readonly plan: Plan;
  readonly from: number;
  readonly to: number;
  /** Where the case under way is told, and how many were begun. */
  readonly now: Int32Array;
}

export type Told =
  | {
      readonly kind: "failed";
      readonly number: number;
      readonly of: Kind;
      readonly broken: readonly Broken[];
    }
  | {
      readonly kind: "done";
      readonly ends: Readonly<Record<string, number>>;
      readonly heaps: readonly number[];
    };

setFlagsFromString("--expose_gc");
const collect = runInNewContext("gc") as () => void;
/** Bytes in use with nothing left to collect. */
const heap = (): number => {
  collect();
  return process.memoryUsage().heapUsed;
};

const { plan, from, to, now } = workerData as Job;
const tell = (told: Told): void => parentPort?.postMessage(told);
const met = new Met();
const ends: Record<string, number> = {};
const heaps: number[] = [];
const tenth = Math.max(1, Math.floor((to - from) / 10));

for (let number = from; number < to; number++) {
  Atomics.store(now, 0, number);
  try {
    const { kind, end, broken } = await runAny(plan, number, met);
    ends[`${kind} ${end}`] = (ends[`${kind} ${end}`] ?? 0) + 1;
    if (broken.length > 0) tell({ kind: "failed", number, of: kind, broken });
  } catch (e) {
    const detail = (e as Error).stack?.split("\n").slice(0, 5).join(" | ") ?? String(e);
    tell({ kind: "failed", number, of: "harmed", broken: [{ law: "no crash", detail }] });
  }
  if ((number - from) % tenth === tenth - 1) heaps.push(heap());
}
tell({ kind: "done", ends, heaps });
