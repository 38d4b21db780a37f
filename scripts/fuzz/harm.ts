import type { Luck } from "./luck.ts";

/** Values that have broken programs before: empty, huge, odd, deep, and keys of the prototype. */
export const HOSTILE: readonly (() => unknown)[] = [
  () => null,
  () => "",
  () => [],
  () => ({}),
  () => true,
  () => 0,
  () => -0,
  () => -1,
  () => 1e308,
  () => 2 ** 53,
  () => 1e-300,
  () => "0",
  () => "1/0",
  () => "1/3",
  () => "-4 1/2",
  () => "4000",
  () => "0.0001",
  () => "99999999999999999999999999999999999999",
  () => "4 1/2 in",
  () => "1.0000000000000000000000000000000000001",
  () => "1/9007199254740993",
  () => "NaN",
  () => "Infinity",
  () => "1e9",
  () => "\u202e4",
  () => "\u0000",
  () => "\ud800",
  () => "𝟜",
  () => "４ １/２",
  () => "__proto__",
  () => "constructor",
  () => "toString",
  () => "x".repeat(5000),
  () => "=HYPERLINK(1)",
  () => "<script>1</script>",
  () => "red",
  () => ["reef", "reef"],
  () => new Array(2000).fill(1),
  () => deep(60),
  () => JSON.parse('{"__proto__": {"spoiled": true}}'),
  () => ({ constructor: { prototype: { spoiled: true } } }),
];

function deep(levels: number): unknown {
  let value: unknown = 1;
  for (let i = 0; i < levels; i++) value = i % 2 ? [value] : { a: value };
  return value;
}

const KEYS = [
  "__proto__",
  "constructor",
  "x-mine",
  "toString",
  "hasOwnProperty",
  "id",
  "fabric",
  "",
  "é",
];

type Holder = { readonly of: Record<string, unknown> | unknown[]; readonly key: string | number };

/** Every place of a document where a value stands. */
function places(value: unknown): Holder[] {
  if (value === null || typeof value !== "object") return [];
  const of = value as Record<string, unknown> | unknown[];
  const keys: (string | number)[] = Array.isArray(of) ? [...of.keys()] : Object.keys(of);
  return keys.flatMap((key) => [{ of, key }, ...places((of as never)[key])]);
}

/** Harms a document in one to three places. It may stay a brief: small harms are the best finders. */
export function harmed(document: Record<string, unknown>, luck: Luck): Record<string, unknown> {
  const copy = structuredClone(document);
  for (let n = luck.int(1, 3); n > 0; n--) {
    const all = places(copy);
    if (all.length === 0) return copy;
    const { of, key } = luck.pick(all);
    const set = (value: unknown): void =>
      // An own key even where it is "__proto__", as JSON.parse would make it.
      void Object.defineProperty(of, key, {
        value,
        enumerable: true,
        writable: true,
        configurable: true,
      });
    const how = luck.int(0, 7);
    if (how === 0 && !Array.isArray(of)) delete of[key as string];
    else if (how === 1 && !Array.isArray(of))
      Object.defineProperty(of, luck.pick(KEYS), {
        value: (of as Record<string, unknown>)[key],
        enumerable: true,
        writable: true,
        configurable: true,
      });
    else if (how === 2 && Array.isArray(of)) of.splice(key as number, 1);
    else if (how === 3 && Array.isArray(of)) of.push(structuredClone(luck.pick(of)));
    else if (how === 4) set(structuredClone(take(luck.pick(all))));
    else set(luck.pick(HOSTILE)());
  }
  return copy;
}

const take = ({ of, key }: Holder): unknown => (of as never)[key];

/** A text with letters taken out, doubled, swapped or put in, or cut off. */
export function harmedText(text: string, luck: Luck): string {
  let t = text;
  for (let n = luck.int(1, 4); n > 0; n--) {
    const at = luck.int(0, t.length);
    const to = Math.min(t.length, at + luck.int(0, luck.once(4) ? 400 : 3));
    t = luck.pick([
      () => t.slice(0, at) + t.slice(to),
      () => t.slice(0, to) + t.slice(at),
      () => t.slice(0, at) + luck.pick(BITS) + t.slice(at),
      () => t.slice(0, at),
      () => t.slice(0, at) + luck.pick(BITS) + t.slice(to),
    ])();
  }
  return t;
}

const BITS = [
  ...'{}[],:"\\0123456789-./eE \n\t',
  "null",
  "\u0000",
  "\u202e",
  "1e999",
  '"__proto__":{},',
  "[[[[[[",
  "\ufeff",
  "½",
  "\ud83e",
];

/** Bytes without meaning, or with the first of a meaning. */
export function bytes(luck: Luck): Uint8Array {
  const head = luck.pick([
    "",
    "{",
    '{"format":"eighthwise-brief"',
    "\ufeff",
    "[".repeat(3000),
    '{"a":'.repeat(900),
    '"',
    "-",
  ]);
  const tail = luck.some(300, () => luck.int(0, 255));
  return Uint8Array.from([...Buffer.from(head), ...tail]);
}
