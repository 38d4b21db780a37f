import fc from "fast-check";
import { expect, test } from "vitest";
import type { Brief } from "../../core/brief/index.ts";
import { edited, freshLine, type Line, redone, replaced, sharedSteps, undone } from "./history.ts";
import { same } from "./same.ts";

const SEED = 20_251;
const AT = "2031-05-06T07:08:09.000Z";

/** Any plain document will do: the history knows nothing of briefs. */
const start = { title: "Marsh", list: [1], inner: { a: "x" } } as unknown as Brief;

type Move =
  | { kind: "set"; key: string; value: number }
  | { kind: "push"; value: number }
  | { kind: "drop" }
  | { kind: "whole"; value: number }
  | { kind: "undo" }
  | { kind: "redo" };

const move: fc.Arbitrary<Move> = fc.oneof(
  fc.record({
    kind: fc.constant("set" as const),
    key: fc.constantFrom("a", "b", "c"),
    value: fc.nat(9),
  }),
  fc.record({ kind: fc.constant("push" as const), value: fc.nat(9) }),
  fc.record({ kind: fc.constant("drop" as const) }),
  fc.record({ kind: fc.constant("whole" as const), value: fc.nat(9) }),
  fc.record({ kind: fc.constant("undo" as const) }),
  fc.record({ kind: fc.constant("redo" as const) }),
);

interface Loose {
  list: number[];
  inner: Record<string, unknown>;
}

function make(line: Line, m: Move): Line {
  switch (m.kind) {
    case "undo":
      return undone(line);
    case "redo":
      return redone(line);
    case "whole":
      return replaced(line, "all", AT, { list: [m.value], inner: {} } as unknown as Brief);
    default:
      return edited(line, m.kind, AT, (brief) => {
        const d = brief as unknown as Loose;
        if (m.kind === "set") d.inner[m.key] = m.value;
        else if (m.kind === "push") d.list.push(m.value);
        else d.list.pop();
      });
  }
}

test(`undo and redo walk exactly the states that were (seed ${SEED})`, () => {
  fc.assert(
    fc.property(fc.array(move, { maxLength: 60 }), (moves) => {
      // The model keeps whole copies of every state and a place among them.
      let states: string[] = [JSON.stringify(start)];
      let place = 0;
      let line = freshLine(start);
      for (const m of moves) {
        const before = line;
        line = make(line, m);
        if (m.kind === "undo") place = Math.max(0, place - 1);
        else if (m.kind === "redo") place = Math.min(states.length - 1, place + 1);
        else if (line !== before) {
          states = [...states.slice(0, place + 1), JSON.stringify(line.brief)];
          place++;
        }
        expect(JSON.stringify(line.brief)).toBe(states[place]);
        expect(line.at).toBe(place);
        expect(line.steps.length).toBe(states.length - 1);
      }
      let back = line;
      while (back.at > 0) back = undone(back);
      expect(same(back.brief, start)).toBe(true);
      while (back.at < back.steps.length) back = redone(back);
      expect(JSON.stringify(back.brief)).toBe(states[states.length - 1]);
      expect(sharedSteps(back.steps, line.steps)).toBe(line.steps.length);
    }),
    { seed: SEED, numRuns: 300 },
  );
});

test("a change that changes nothing is no step", () => {
  const line = freshLine(start);
  expect(
    edited(line, "same title", AT, (b) => {
      b.title = "Marsh";
    }),
  ).toBe(line);
});

test("data that differ in one place are told apart", () => {
  fc.assert(
    fc.property(fc.jsonValue(), fc.jsonValue(), (a, b) => {
      // Whether JSON with sorted keys agrees is a second way to know it; -0 is the one exception.
      const text = (v: unknown) =>
        JSON.stringify(v, (_k, x) =>
          x && typeof x === "object" && !Array.isArray(x)
            ? Object.fromEntries(Object.entries(x).sort(([p], [q]) => (p < q ? -1 : 1)))
            : Object.is(x, -0)
              ? "-0"
              : x,
        );
      expect(same(a, structuredClone(a))).toBe(true);
      expect(same(a, b)).toBe(text(a) === text(b));
    }),
    { seed: SEED, numRuns: 300 },
  );
});
