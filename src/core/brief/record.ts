import type { Brief } from "./schema.ts";

export type { Brief };

/**
 * What was done and measured, kept with the design and never read by the geometry. Entries of other
 * kinds, and entries this version does not understand, are left as they are.
 *
 * sewn: a step ticked off at the sewing table. measured: one width of one unit, with what it should
 * have measured then. seam-test: strips of one width sewn side by side. reading: one measurement of a
 * finished block, for finding out why it is off. Sizes stay as typed.
 */
export type Recorded =
  | { readonly what: "sewn"; readonly unit: string }
  | {
      readonly what: "measured";
      readonly unit: string;
      readonly width: string;
      readonly size: string;
      readonly should: string;
    }
  | {
      readonly what: "seam-test";
      readonly strips: number;
      readonly cut: string;
      readonly size: string;
    }
  | {
      readonly what: "reading";
      readonly block: string;
      readonly name: string;
      readonly size: string;
    };

type Kind = Recorded["what"];
type Of<K extends Kind> = Extract<Recorded, { what: K }>;

const TEXTS: Readonly<Record<Kind, readonly string[]>> = {
  sewn: ["unit"],
  measured: ["unit", "width", "size", "should"],
  "seam-test": ["cut", "size"],
  reading: ["block", "name", "size"],
};

function is<K extends Kind>(entry: unknown, kind: K): entry is Of<K> {
  if (typeof entry !== "object" || entry === null) return false;
  const e = entry as Record<string, unknown>;
  return (
    e.what === kind &&
    TEXTS[kind].every((key) => typeof e[key] === "string") &&
    (kind !== "seam-test" || (Number.isInteger(e.strips) && (e.strips as number) >= 2))
  );
}

/** All entries of one kind, oldest first. */
export const recorded = <K extends Kind>(b: Pick<Brief, "record">, kind: K): Of<K>[] =>
  (b.record ?? []).filter((e): e is Of<K> => is(e, kind));

/** As many as a design may hold (the schema's bound). */
const MOST = 2000;

/** Past the bound the oldest entries that `own` finds give way, never another's. */
export function roomIn(
  entries: readonly unknown[],
  own: (entry: unknown) => boolean,
): NonNullable<Brief["record"]> {
  let over = entries.length - MOST;
  return entries.filter((e) => over <= 0 || !own(e) || over-- <= 0);
}

/** A change of the design that puts an entry in the place of those that `same` finds, or takes them out. */
const put =
  <K extends Kind>(kind: K, same: (e: Of<K>) => boolean, entry: Of<K> | undefined) =>
  (d: Brief): void => {
    const others = (d.record ?? []).filter((e) => !(is(e, kind) && same(e)));
    const next = entry ? [...others, entry] : others;
    if (next.length === 0) delete d.record;
    else d.record = roomIn(next, (e) => is(e, kind));
  };

/** Ticks a unit off, or takes the tick away. */
export const tick = (unit: string, sewn: boolean) =>
  put("sewn", (e) => e.unit === unit, sewn ? { what: "sewn", unit } : undefined);

/** Keeps a measured width of a unit as typed; an empty text takes it out. */
export const keepMeasured = (unit: string, width: string, size: string, should: string) =>
  put(
    "measured",
    (e) => e.unit === unit && e.width === width,
    size.trim() === "" ? undefined : { what: "measured", unit, width, size: size.trim(), should },
  );

/** Keeps one seam test as the only one of its number of strips; an empty text takes it out. */
export const keepSeamTest = (strips: number, cut: string, size: string) =>
  put(
    "seam-test",
    (e) => e.strips === strips,
    size.trim() === "" ? undefined : { what: "seam-test", strips, cut, size: size.trim() },
  );

/** Keeps one reading of a finished block as typed; an empty text takes it out. */
export const keepReading = (block: string, name: string, size: string) =>
  put(
    "reading",
    (e) => e.block === block && e.name === name,
    size.trim() === "" ? undefined : { what: "reading", block, name, size: size.trim() },
  );

/** Everything that decides the answer is the very same; only what was done or measured may differ. */
export const sameButRecord = (a: Brief, b: Brief): boolean => {
  const keys = new Set([...Object.keys(a), ...Object.keys(b)] as (keyof Brief)[]);
  return [...keys].every((key) => key === "record" || a[key] === b[key]);
};
