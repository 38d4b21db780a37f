import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { Worked } from "./rpc.ts";

/** A worker in the test's hand: it keeps what it was asked, and answers when told. */
class HandWorker {
  static made: HandWorker[] = [];
  onmessage: ((event: { data: unknown }) => void) | null = null;
  onerror: ((event: object) => void) | null = null;
  onmessageerror = null;
  asked: { id: number; args: unknown[] }[] = [];
  ended = false;
  constructor() {
    HandWorker.made.push(this);
  }
  postMessage(ask: { id: number; args: unknown[] }): void {
    this.asked.push(ask);
  }
  terminate(): void {
    this.ended = true;
  }
  reply(part: object): void {
    this.onmessage?.({ data: { id: this.asked.at(-1)!.id, ...part } });
  }
  crash(message: string): void {
    this.onerror?.({ message, preventDefault() {} });
  }
}

const make = () => new HandWorker() as unknown as Worker;
const made = () => HandWorker.made;
const newWorked = () =>
  new Worked<{ double: (x: number) => number }>(make, { patience: 70, limit: 9_000 });

beforeEach(() => {
  HandWorker.made = [];
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

test("one question, one answer; the worker is made at first need and stays", async () => {
  const worked = newWorked();
  expect(made()).toHaveLength(0);
  const first = worked.ask("a", "double", 3);
  made()[0].reply({ value: 6 });
  expect(await first).toEqual({ kind: "done", value: 6 });
  const second = worked.ask("a", "double", 5);
  made()[0].reply({ value: 10 });
  expect(await second).toEqual({ kind: "done", value: 10 });
  expect(made()).toHaveLength(1);
});

describe("newer questions", () => {
  test("replace the waiting one of their lane, not those of others", async () => {
    const worked = newWorked();
    const running = worked.ask("a", "double", 1);
    const waiting = worked.ask("b", "double", 2);
    const newer = worked.ask("b", "double", 4);
    const other = worked.ask("c", "double", 7);
    expect(await waiting).toEqual({ kind: "superseded" });
    for (const value of [2, 8, 14]) made()[0].reply({ value });
    expect(await Promise.all([running, newer, other])).toEqual(
      [2, 8, 14].map((value) => ({ kind: "done", value })),
    );
    expect(made()[0].asked.map((a) => a.args[0])).toEqual([1, 4, 7]);
  });

  test("of the first lane go before all that wait", async () => {
    const worked = new Worked<{ double: (x: number) => number }>(make, { first: "page" });
    const asks = [
      worked.ask("choice", "double", 1),
      worked.ask("other", "double", 2),
      worked.ask("page", "double", 3),
    ];
    for (const value of [2, 6, 4]) made()[0].reply({ value });
    await Promise.all(asks);
    expect(made()[0].asked.map((a) => a.args[0])).toEqual([1, 3, 2]);
  });

  test("make a running one of their lane worthless even when it ends in time", async () => {
    const worked = newWorked();
    const old = worked.ask("a", "double", 1);
    const newer = worked.ask("a", "double", 9);
    made()[0].reply({ value: 2 });
    expect(await old).toEqual({ kind: "superseded" });
    made()[0].reply({ value: 18 });
    expect(await newer).toEqual({ kind: "done", value: 18 });
    expect(made()).toHaveLength(1);
  });

  test("stop the worker of a running one after the patience", async () => {
    const worked = newWorked();
    const old = worked.ask("a", "double", 1);
    const newer = worked.ask("a", "double", 9);
    vi.advanceTimersByTime(69);
    expect(made()[0].ended).toBe(false);
    vi.advanceTimersByTime(1);
    expect(made()[0].ended).toBe(true);
    expect(await old).toEqual({ kind: "superseded" });
    made()[1].reply({ value: 18 });
    expect(await newer).toEqual({ kind: "done", value: 18 });
  });
});

describe("what goes wrong", () => {
  test("an error comes back with its question, and the worker lives on", async () => {
    const worked = newWorked();
    const bad = worked.ask("a", "double", 1);
    made()[0].reply({ error: { message: "seven is odd", question: "cover" } });
    expect(await bad).toEqual({
      kind: "failed",
      failure: { message: "seven is odd", question: "cover", crashed: false },
    });
    expect(made()[0].ended).toBe(false);
  });

  test("a crash is tried once more in a new worker", async () => {
    const worked = newWorked();
    const asked = worked.ask("a", "double", 4);
    made()[0].crash("out of memory");
    expect(made()[0].ended).toBe(true);
    made()[1].reply({ value: 8 });
    expect(await asked).toEqual({ kind: "done", value: 8 });
  });

  test("a second crash is an outcome; the next question finds a new worker", async () => {
    const worked = newWorked();
    const asked = worked.ask("a", "double", 4);
    made()[0].crash("out of memory");
    made()[1].crash("out of memory again");
    expect(await asked).toEqual({
      kind: "failed",
      failure: { message: "out of memory again", crashed: true },
    });
    const next = worked.ask("a", "double", 5);
    made()[2].reply({ value: 10 });
    expect(await next).toEqual({ kind: "done", value: 10 });
  });

  test("a worker that hangs is stopped at the limit", async () => {
    const worked = newWorked();
    const asked = worked.ask("a", "double", 4);
    vi.advanceTimersByTime(9_000);
    expect(await asked).toEqual({
      kind: "failed",
      failure: { message: "no answer within 9 s", crashed: true },
    });
    expect(made()[0].ended).toBe(true);
  });
});
