/**
 * Photos travel inside a brief as long texts. The storage keeps each of them once per design, so
 * that saving an edit, a step or a dated version does not write the photos again.
 */
export interface Packed {
  readonly value: unknown;
  /** Where a long text was taken out, and the number of the picture that holds it. */
  readonly holes: readonly { readonly path: readonly string[]; readonly picture: number }[];
}

/** Texts of this length and more are kept apart. */
export const LONG = 4096;

/** The long texts of one design, numbered in the order they came. */
export class Pictures {
  private readonly numbers = new Map<string, number>();
  private readonly texts = new Map<number, string>();
  private next = 1;

  constructor(kept: readonly { readonly n: number; readonly text: string }[] = []) {
    for (const { n, text } of kept) this.hold(n, text);
  }

  number(text: string): number {
    const known = this.numbers.get(text);
    if (known !== undefined) return known;
    const n = this.next;
    this.hold(n, text);
    return n;
  }

  text(n: number): string | undefined {
    return this.texts.get(n);
  }

  private hold(n: number, text: string): void {
    this.numbers.set(text, n);
    this.texts.set(n, text);
    this.next = Math.max(this.next, n + 1);
  }
}

/** Takes the long texts out of plain data. Data without any is given back as it is. */
export function pack(value: unknown, pictures: Pictures): Packed {
  const holes: { path: string[]; picture: number }[] = [];
  const walk = (v: unknown, path: string[]): unknown => {
    if (typeof v === "string" && v.length >= LONG) {
      holes.push({ path, picture: pictures.number(v) });
      return "";
    }
    if (typeof v !== "object" || v === null) return v;
    const before = holes.length;
    const parts = Object.entries(v).map(([k, x]) => [k, walk(x, [...path, k])] as const);
    if (holes.length === before) return v;
    return Array.isArray(v) ? parts.map(([, x]) => x) : Object.fromEntries(parts);
  };
  const packed = walk(value, []);
  return { value: packed, holes };
}

/** Puts the long texts back. A picture that is missing leaves its place empty. */
export function unpack(packed: Packed, pictures: Pictures): unknown {
  return packed.holes.reduce<unknown>(
    (value, { path, picture }) => placed(value, path, pictures.text(picture) ?? ""),
    packed.value,
  );
}

function placed(value: unknown, path: readonly string[], text: string): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return text;
  const inner = placed((value as Record<string, unknown>)[key], rest, text);
  if (Array.isArray(value)) return value.map((x, i) => (i === Number(key) ? inner : x));
  return Object.fromEntries(
    Object.entries(value as object).map(([k, x]) => [k, k === key ? inner : x]),
  );
}
