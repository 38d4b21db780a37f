import type { Print } from "./read.ts";

/** One error of a kind, planted in whatever pattern has a place for it. */
export interface Plant {
  readonly kind: string;
  readonly what: string;
  /** The print with the error in it; undefined where this pattern has nothing of the sort. */
  readonly plant: (print: readonly Print[]) => Print[] | undefined;
  /** Where a maker first meets it. */
  readonly at: RegExp;
}

const near = (a: number, b: number): boolean => Math.abs(a - b) < 0.06;
const orderOf = (p: Print): number => p.page * 1e5 + p.y;

/** The print from one heading to the next words given. */
function between(print: readonly Print[], from: RegExp, to: RegExp): Print[] {
  const top = print.find((p) => from.test(p.text) && p.size > 12);
  if (!top) return [];
  const foot = print.find((p) => to.test(p.text) && orderOf(p) > orderOf(top));
  return print.filter(
    (p) => orderOf(p) > orderOf(top) && (foot === undefined || orderOf(p) < orderOf(foot) - 0.5),
  );
}

const list = (print: readonly Print[]): Print[] => between(print, /^What do I cut/, /^Lefts/);
const order = (print: readonly Print[]): Print[] => between(print, /^In what order/, /^And then/);
const supplies = (print: readonly Print[]): Print[] =>
  between(print, /^Is there enough/, /^(Backing|Batting|Binding|To finish|Also)/);

/** One stretch with its words changed. */
function changed(
  print: readonly Print[],
  at: Print | undefined,
  to: (text: string) => string,
): Print[] | undefined {
  if (!at) return undefined;
  const text = to(at.text);
  if (text === at.text) throw new Error(`nothing is changed in "${at.text}"`);
  return print.map((p) => (p === at ? { ...p, text } : p));
}

const without = (print: readonly Print[], at: Print | undefined): Print[] | undefined =>
  at && print.filter((p) => p !== at);

/** The first number of a text, so many more. */
const more =
  (by: number) =>
  (text: string): string =>
    text.replace(/\d+(\.\d+)?/, (n) => String(Number(n) + by));

/** A piece that one line of the list alone cuts. */
function cutOnce(print: readonly Print[]): Print | undefined {
  const letters = list(print).filter((p) => /^[A-Z]+\d+$/.test(p.text.trim()));
  return letters.find((p) => letters.filter((o) => o.text === p.text).length === 1);
}

/** Numbers of the steps, the first step that sews pieces first. */
const stepNumbers = (print: readonly Print[]): Print[] =>
  order(print).filter((p) => near(p.size, 17) && /^\d+$/.test(p.text));

export const PLANTS: readonly Plant[] = [
  {
    kind: "a count",
    what: "fewer pairs than the next step wants",
    plant: (print) =>
      changed(
        print,
        order(print).find((p) => /^\d+ pairs\./.test(p.text)),
        more(-1),
      ),
    at: /step/,
  },
  {
    kind: "a count",
    what: "another number of blocks in the sentence",
    plant: (print) =>
      changed(
        print,
        print.find((p) => p.size > 10.9 && /^\d+ blocks?$/.test(p.text)),
        more(1),
      ),
    at: /How big/,
  },
  {
    kind: "a hand",
    what: "fewer lefts than are cut",
    plant: (print) =>
      changed(
        print,
        print.find((p) => /^ ?\d+ [A-Z]+\d+ \(/.test(p.text)),
        more(-1),
      ),
    at: /Lefts|cutting/,
  },
  {
    kind: "a hand",
    what: "lefts called rights",
    plant: (print) =>
      changed(
        print,
        list(print).find((p) => /^left (?!whole)/.test(p.text.trim())),
        (t) => t.replace("left", "right"),
      ),
    at: /Lefts/,
  },
  {
    kind: "a size",
    what: "the last stop before the rows",
    plant: (print) =>
      changed(
        print,
        [...order(print)].reverse().find((p) => near(p.size, 13) && /\d/.test(p.text)),
        more(1),
      ),
    at: /step/,
  },
  {
    kind: "a size",
    what: "the block unfinished",
    plant: (print) => {
      const at = print.find((p) => /^block \(/.test(p.text));
      const number = print.find(
        (p) => at && /\d/.test(p.text) && near(p.size, at.size) && near(p.y, at.y) && p.x >= at.x,
      );
      return changed(print, number, more(1));
    },
    at: /How big|step/,
  },
  {
    kind: "a missing cut",
    what: "no line cuts the piece",
    plant: (print) => without(print, cutOnce(print)),
    at: /cutting|fabric|step/,
  },
  {
    kind: "an unused piece",
    what: "a corner fewer is sewn on",
    plant: (print) =>
      changed(
        print,
        order(print).find((p) => /\d [A-Z]+\d+, one by one/.test(p.text)),
        (t) => t.replace(/(\d)(?= [A-Z]+\d+, one by one)/, (n) => String(Number(n) - 1)),
      ),
    at: /left over|last step/,
  },
  {
    kind: "an unused piece",
    what: "a unit that no step takes up",
    plant: (print) => {
      const last = [...order(print)].reverse().find((p) => /Two of step \d+/.test(p.text));
      return changed(print, last, (t) =>
        t.replace(/(Two of step )(\d+)/, (_, words, n) => `${words}${Number(n) - 1}`),
      );
    },
    at: /step/,
  },
  {
    kind: "a wrong fabric letter",
    what: "in the list",
    plant: (print) =>
      changed(
        print,
        list(print).find((p) => near(p.size, 13) && /^[A-Z]$/.test(p.text)),
        () => "Z",
      ),
    at: /cutting/,
  },
  {
    kind: "a wrong fabric letter",
    what: "in a step",
    plant: (print) =>
      changed(
        print,
        order(print).find((p) => /^ ?[A-Z]+\d+ and [A-Z]+\d+\./.test(p.text)),
        (t) => t.replace(/and [A-Z]+/, "and Z"),
      ),
    at: /step/,
  },
  {
    kind: "a wrong yardage",
    what: "far too much",
    plant: (print) =>
      changed(
        print,
        supplies(print).find((p) => near(p.size, 10.5) && /^\d/.test(p.text)),
        (t) => t.replace(/^(\d+\u2044\d+|\d+(\.\d+)?)/, "29"),
      ),
    at: /fabric/,
  },
  {
    kind: "a missing size",
    what: "no size of the top",
    plant: (print) =>
      without(
        print,
        print.find((p) => /^the top, finished/.test(p.text)),
      ),
    at: /How big/,
  },
  {
    kind: "a missing size",
    what: "nothing to measure at a step",
    plant: (print) => without(print, order(print).filter((p) => /Should measure/.test(p.text))[1]),
    at: /step/,
  },
  {
    kind: "a step out of order",
    what: "two numbers exchanged",
    plant: (print) => {
      const [, a, b] = stepNumbers(print);
      if (!a || !b) return undefined;
      return print.map((p) =>
        p === a ? { ...p, text: b.text } : p === b ? { ...p, text: a.text } : p,
      );
    },
    at: /step/,
  },
  {
    kind: "a step out of order",
    what: "a unit wanted before it is sewn",
    plant: (print) =>
      changed(
        print,
        order(print).find((p) => /of step \d+/.test(p.text)),
        (t) => t.replace(/of step (\d+)/, (_, n) => `of step ${Number(n) + 2}`),
      ),
    at: /step/,
  },
  {
    kind: "a stale number",
    what: "another version at the last foot",
    plant: (print) =>
      changed(
        print,
        [...print].reverse().find((p) => /Version 1,/.test(p.text)),
        (t) => t.replace("Version 1,", "Version 2,"),
      ),
    at: /foot/,
  },
  {
    kind: "a stale number",
    what: "the size when bound",
    plant: (print) =>
      changed(
        print,
        [...print].reverse().find((p) => near(p.size, 13) && /\d.*×|×.*\d/.test(p.text)),
        more(3),
      ),
    at: /And then/,
  },
];
