import type { Answer } from "../../answer/index.ts";
import { type Brief, contentHash, roomIn } from "../../brief/index.ts";
import { type Fact, factsOf, LEAVES, type Leaf } from "./facts.ts";

/** Something that left the design on a day, with the numbers it carries. Kept in the brief's record. */
export interface Left {
  readonly what: "printed" | "cut" | "handed-out" | "corrected";
  readonly of: Leaf;
  /** As printed on it. */
  readonly version: string;
  /** Year-month-day, by the maker. */
  readonly date: string;
  /** To whom, or where it lies. */
  readonly to?: string;
  readonly count?: number;
  /** Of the numbers it carries. */
  readonly hash: string;
  readonly facts: readonly Fact[];
}

const WHATS = ["printed", "cut", "handed-out", "corrected"];

const isFact = (f: unknown): f is Fact =>
  typeof f === "object" &&
  f !== null &&
  ["key", "where", "text"].every((k) => typeof (f as Record<string, unknown>)[k] === "string");

function isLeft(entry: unknown): entry is Left {
  if (typeof entry !== "object" || entry === null) return false;
  const e = entry as Record<string, unknown>;
  return (
    WHATS.includes(e.what as string) &&
    LEAVES.includes(e.of as Leaf) &&
    ["version", "date", "hash"].every((k) => typeof e[k] === "string") &&
    Array.isArray(e.facts) &&
    e.facts.every(isFact)
  );
}

/** What left the design, oldest first. Entries of other kinds are not this record's and stay. */
export const leftOf = (brief: Pick<Brief, "record">): Left[] => (brief.record ?? []).filter(isLeft);

/** The entry for something that leaves the design as it is now. Dates are the caller's: no clock here. */
export function leaving(brief: Brief, answer: Answer, told: Omit<Left, "hash" | "facts">): Left {
  const facts = factsOf(told.of, brief, answer);
  return { ...told, hash: contentHash(facts.map((f) => [f.key, f.text])), facts };
}

/** A change of the design that remembers these entries. */
export const remembering =
  (entries: readonly Left[]) =>
  (d: Brief): void => {
    d.record = roomIn([...(d.record ?? []), ...entries], isLeft);
  };
