import type * as z from "zod";

/** Why a document was refused: the place in it, and a sentence. Nothing is computed from it. */
export interface Refusal {
  /** Where in the document, as a path: `blocks/0/strip`. Empty for the whole. */
  readonly path: string;
  readonly message: string;
}

/** More than this help no maker: the rest is counted. */
const MOST_REFUSALS = 60;
const LONGEST_SHOWN = 60;

/** Text of a foreign document, short enough to print. */
const short = (text: string): string =>
  text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN)}...` : text;

/** A foreign value as it may stand in a sentence. */
export function shown(value: unknown): string {
  if (value === undefined) return "nothing";
  if (Array.isArray(value)) return value.length === 0 ? "an empty list" : "a list";
  if (value !== null && typeof value === "object") return "a group of named values";
  return short(JSON.stringify(value) ?? String(value));
}

const pathOf = (keys: readonly PropertyKey[]): string =>
  keys.map((key) => short(String(key))).join("/");

/** At most sixty, and how many more there are; a place of any length cut to be printed. */
export function firstOf(refusals: readonly Refusal[], more = 0): Refusal[] {
  const rest = more + Math.max(0, refusals.length - MOST_REFUSALS);
  const told = refusals
    .slice(0, MOST_REFUSALS)
    .map((r) => ({ ...r, path: pathOf(r.path.split("/")) }));
  return rest > 0 ? [...told, { path: "", message: `and ${rest} more like these` }] : told;
}

/** What the schema found, in plain words. */
export const refusalsOf = (issues: readonly z.core.$ZodIssue[]): Refusal[] =>
  firstOf(issues.slice(0, MOST_REFUSALS).flatMap(one), Math.max(0, issues.length - MOST_REFUSALS));

function one(issue: z.core.$ZodIssue): Refusal[] {
  const path = pathOf(issue.path);
  if (issue.code === "unrecognized_keys")
    return issue.keys.map((key) => ({
      path: path ? `${path}/${short(key)}` : short(key),
      message: `unknown key "${short(key)}" (keys of your own start with x-, or stand under notes)`,
    }));
  return [{ path, message: `expected ${wanted(issue)}, got ${shown(given(issue))}` }];
}

/** Of a group that says what kind it is: the kind it says. */
function given(issue: z.core.$ZodIssue): unknown {
  if (issue.code !== "invalid_union" || !issue.discriminator) return issue.input;
  return (issue.input as Record<string, unknown>)[issue.discriminator];
}

const KINDS: Readonly<Record<string, string>> = {
  string: "a text",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
  array: "a list",
  object: "a group of named values",
  record: "a group of named values",
};

const anyOf = (values: readonly unknown[]): string =>
  values.map((v) => JSON.stringify(v)).join(" or ");

/** "1 letter", "40 entries", or the bare number. */
function counted(n: number | bigint, origin: string): string {
  if (origin === "string") return `${n} ${n === 1 ? "letter" : "letters"}`;
  if (origin === "array") return `${n} ${n === 1 ? "entry" : "entries"}`;
  return String(n);
}

function wanted(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case "invalid_type":
      return KINDS[issue.expected] ?? issue.expected;
    case "invalid_value":
      return anyOf(issue.values);
    case "invalid_format":
      return issue.message;
    case "too_small":
      return `${counted(issue.minimum, issue.origin)} or more`;
    case "too_big":
      return `at most ${counted(issue.maximum, issue.origin)}`;
    case "invalid_union":
      return union(issue);
    case "invalid_key":
      return wanted(issue.issues[0]);
    default:
      return issue.message;
  }
}

/** Each way it could have been: by what kind of thing it is, or by the fields of the nearest way. */
function union(issue: z.core.$ZodIssueInvalidUnion): string {
  if (issue.errors.length === 0 && "options" in issue) return anyOf(issue.options as unknown[]);
  const ways = issue.errors.map((errors) => {
    const [first] = errors;
    const inside = first.path.length > 0 || first.code === "unrecognized_keys";
    return inside ? one(first)[0].path.concat(": ", one(first)[0].message) : wanted(first);
  });
  return [...new Set(ways)].join(" or ");
}
