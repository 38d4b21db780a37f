import type { Answer } from "../../answer/index.ts";
import type { Brief } from "../../brief/index.ts";
import { type Fact, factsOf, LEAF_WORDS } from "./facts.ts";
import { type Left, leaving, leftOf } from "./record.ts";

/** One number that is not true any more. */
export interface Changed {
  readonly where: string;
  /** What it says; absent where nothing stood. */
  readonly was?: string;
  /** What is true now; absent where nothing is left of it. */
  readonly is?: string;
}

/** Something that left the design and is now wrong. */
export interface Wrong {
  readonly left: Left;
  readonly changes: readonly Changed[];
}

/**
 * What was printed, cut or handed out and carries a number that is no longer true, newest first, with
 * every such number. A correction given out for it counts: what it corrected is compared from there on.
 */
export function rippleOf(brief: Brief, answer: Answer): Wrong[] {
  const all = leftOf(brief);
  const now = new Map<string, Fact[]>();
  const factsNow = (of: Left["of"]): Fact[] => {
    const known = now.get(of) ?? factsOf(of, brief, answer);
    now.set(of, known);
    return known;
  };
  return all
    .flatMap((left, i): Wrong[] => {
      if (left.what === "corrected") return [];
      const last = all.slice(i + 1).findLast((e) => e.what === "corrected" && alike(e, left));
      const changes = changesIn((last ?? left).facts, factsNow(left.of));
      return changes.length > 0 ? [{ left, changes }] : [];
    })
    .reverse();
}

const alike = (a: Left, b: Left): boolean =>
  a.of === b.of && a.version === b.version && a.to === b.to;

/** Facts that say something else, are gone, or are new. */
export function changesIn(was: readonly Fact[], is: readonly Fact[]): Changed[] {
  const now = new Map(is.map((f) => [f.key, f]));
  const then = new Map(was.map((f) => [f.key, f]));
  return [
    ...was.flatMap((f): Changed[] => {
      const n = now.get(f.key);
      if (n?.text === f.text) return [];
      return [{ where: f.where, was: f.text, ...(n && { is: n.text }) }];
    }),
    ...is.flatMap((f): Changed[] => (then.has(f.key) ? [] : [{ where: f.where, is: f.text }])),
  ];
}

/** The entries that say a correction was given out for each of these. */
export const correcting = (
  brief: Brief,
  answer: Answer,
  wrong: readonly Wrong[],
  date: string,
): Left[] => {
  const seen = new Set<string>();
  return wrong.flatMap(({ left }) => {
    const key = JSON.stringify([left.of, left.version, left.to]);
    if (seen.has(key)) return [];
    seen.add(key);
    const { of, version, to } = left;
    return [leaving(brief, answer, { what: "corrected", of, version, date, ...(to && { to }) })];
  });
};

const HAS = { printed: "printed", cut: "cut", "handed-out": "handed out", corrected: "corrected" };

/** "Pattern, version 1, handed out 2026-11-25 to the spring class". */
export function sayLeftThing({ of, what, version, date, to, count }: Left): string {
  const name = LEAF_WORDS[of];
  const many = count === undefined ? "" : `, ${count} of them`;
  const whom = to ? (what === "handed-out" ? ` to ${to}` : `, ${to}`) : "";
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}, version ${version}${many}, ${HAS[what]} ${date}${whom}`;
}

/** "Kelp, to buy: it says 5/8 yd; read 3/4 yd". */
export function sayChanged({ where, was, is }: Changed): string {
  if (was === undefined) return `${where}: it says nothing; add ${is}`;
  if (is === undefined) return `${where}: it says ${was}; strike it out`;
  return `${where}: it says ${was}; read ${is}`;
}

/** "2 things that were handed out are now wrong." */
export const sayRipple = (wrong: readonly Wrong[]): string =>
  wrong.length === 0
    ? "Nothing that left this design is wrong."
    : wrong.length === 1
      ? "One thing that left this design is now wrong."
      : `${wrong.length} things that left this design are now wrong.`;
