import { expect, test, vi } from "vitest";
import { answerBrief } from "../../core/answer/index.ts";
import { smallBrief } from "../../core/brief/sample.ts";
import { Planner } from "./planner.ts";

/** A worker in the test's hand. */
class HandWorker {
  onmessage: ((event: { data: unknown }) => void) | null = null;
  onerror: ((event: object) => void) | null = null;
  postMessage = vi.fn();
  terminate = vi.fn();
}

const brief = smallBrief();
const answer = answerBrief(brief);

function planner() {
  const made: HandWorker[] = [];
  const make = () => {
    const worker = new HandWorker();
    made.push(worker);
    return worker as unknown as Worker;
  };
  const listener = { told: vi.fn(), failed: vi.fn() };
  return { planner: new Planner(make), made, listener };
}

test("tells every better answer; the last one ends the worker", () => {
  const { planner: p, made, listener } = planner();
  p.begin(brief, listener);
  expect(made[0].postMessage).toHaveBeenCalledWith(brief);
  made[0].onmessage!({ data: { answer, last: false } });
  expect(made[0].terminate).not.toHaveBeenCalled();
  made[0].onmessage!({ data: { answer, last: true } });
  expect(listener.told).toHaveBeenCalledTimes(2);
  expect(made[0].terminate).toHaveBeenCalledOnce();
});

test("a newer search ends the older, whose words are not heard any more", () => {
  const { planner: p, made, listener } = planner();
  p.begin(brief, listener);
  p.begin(brief, listener);
  expect(made[0].terminate).toHaveBeenCalledOnce();
  made[0].onmessage!({ data: { answer, last: false } });
  expect(listener.told).not.toHaveBeenCalled();
});

test("ended by hand nothing more is told; a crash is", () => {
  const { planner: p, made, listener } = planner();
  p.begin(brief, listener);
  p.end();
  made[0].onmessage!({ data: { answer, last: true } });
  expect(listener.told).not.toHaveBeenCalled();
  p.begin(brief, listener);
  made[1].onerror!({ message: "out of memory", preventDefault() {} });
  expect(listener.failed).toHaveBeenCalledWith("out of memory");
  expect(made[1].terminate).toHaveBeenCalledOnce();
});
