import { parseLength, type Unit } from "../measure/index.ts";
import { migrate } from "./migrate.ts";
import { firstOf, type Refusal, refusalsOf, shown } from "./refusal.ts";
import { type Brief, brief as briefSchema, FORMAT, VERSION } from "./schema.ts";

export type { Refusal };

export type ReadResult =
  | { readonly ok: true; readonly brief: Brief }
  | { readonly ok: false; readonly refusals: readonly Refusal[] };

/** Texts longer than this are refused before they are parsed: photos included, 64 MiB. */
export const LONGEST_TEXT = 64 * 1024 * 1024;
/** Nesting deeper than this is refused: no brief needs it, and recursion stays bounded. */
export const DEEPEST = 40;

/** Nor does any brief hold more values than this; each costs far more to check than to write. */
export const MOST_VALUES = 200_000;

/** Reads a brief from its text. Never throws; every refusal names its place. */
export function readBrief(text: string): ReadResult {
  if (text.length > LONGEST_TEXT)
    return refused("", `the brief is larger than ${LONGEST_TEXT} characters`);
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch (e) {
    return refused("", `this is not JSON: ${(e as Error).message}`);
  }
  return readDocument(value);
}

/** Reads a brief from parsed JSON: format, version, migrations, shape, then every length. */
export function readDocument(value: unknown): ReadResult {
  if (value === null || typeof value !== "object" || Array.isArray(value))
    return refused("", "a brief is a JSON object");
  const bounds = { deepest: DEEPEST, values: MOST_VALUES };
  if (!within(value, bounds)) {
    const deep = bounds.values > 0;
    return refused(
      "",
      deep
        ? `the brief is nested deeper than ${DEEPEST}`
        : `the brief holds more than ${MOST_VALUES} values`,
    );
  }
  const head = value as Record<string, unknown>;
  if (head.format !== FORMAT)
    return refused("format", `expected "${FORMAT}", got ${shown(head.format)}`);
  if (head.unit === undefined)
    return refused("unit", 'the unit is missing; say "in" or "mm" (it is never guessed)');
  if (!Number.isInteger(head.version)) return refused("version", "the version is missing");
  if ((head.version as number) > VERSION)
    return refused(
      "version",
      `this brief has version ${head.version}; this program knows versions up to ${VERSION}. Nothing was changed.`,
    );
  const taken = protoKeys(value, "");
  if (taken.length > 0) return { ok: false, refusals: firstOf(taken) };
  const current = migrate(head);
  if (!current.ok) return refused("version", current.message);
  const parsed = briefSchema.safeParse(withoutExtras(current.document), { reportInput: true });
  if (!parsed.success) return { ok: false, refusals: refusalsOf(parsed.error.issues) };
  const refusals = [...controlCharacters(parsed.data, ""), ...lengths(parsed.data)];
  return refusals.length > 0
    ? { ok: false, refusals: firstOf(refusals) }
    : { ok: true, brief: parsed.data };
}

const refused = (path: string, message: string): ReadResult => ({
  ok: false,
  refusals: [{ path, message }],
});

/** No reader of JSON agrees with the next on what this key means. */
function protoKeys(value: unknown, path: string): Refusal[] {
  if (value === null || typeof value !== "object") return [];
  return Object.entries(value).flatMap(([key, v]) => {
    const here = path ? `${path}/${key}` : key;
    return key === "__proto__"
      ? [{ path: here, message: "this key cannot be used" }]
      : protoKeys(v, here);
  });
}

/** Keys that start "x-" belong to other programs: allowed anywhere, not read. */
function withoutExtras(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutExtras);
  if (value === null || typeof value !== "object") return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([k]) => !k.startsWith("x-"))
      .map(([k, v]) => [k, k === "notes" ? v : withoutExtras(v)]),
  );
}

/** Keys whose text is a length wherever they stand in a brief. */
const LENGTH_KEYS = new Set([
  "seam",
  "step",
  "strip",
  "side",
  "usable",
  "narrower",
  "width",
  "height",
  "length",
  "cut",
  "size",
  "start",
  "overhang",
  "spare",
  "straighten",
  "between",
  "extra",
  "blunt",
  "flat",
  "shortest",
  "longest",
  "along",
  "across",
  "hexagon",
  "x",
  "y",
]);
/** Larger than any quilt, in inches: a typing slip, or the wrong unit. */
const ABSURD_INCHES = 4000;
/** Thinner than the thread it would be sewn with. */
const ABSURDLY_SMALL_INCHES = 1e-3;
const ZERO_ALLOWED = new Set([
  "overhang",
  "spare",
  "straighten",
  "between",
  "extra",
  "flat",
  "blunt",
  "start",
  "x",
  "y",
]);

/**
 * Is the text at this place of a brief a length? Borders and binding say with "cut" which way they
 * run; only the strips of a set measure it.
 */
export const isLengthAt = (key: string, path: string): boolean =>
  LENGTH_KEYS.has(key) && (key !== "cut" || /strips\/\d+\/cut$/.test(path));

function lengths(b: Brief): Refusal[] {
  const out: Refusal[] = [];
  const { notes: _notes, record: _record, ...decided } = b;
  walk(decided, "", (key, text, path) => {
    if (!isLengthAt(key, path)) return;
    const message = lengthProblem(text, b.unit, ZERO_ALLOWED.has(key));
    if (message) out.push({ path, message });
  });
  return out;
}

/** What is wrong with a length's text, or nothing. */
export function lengthProblem(text: string, unit: Unit, zeroAllowed: boolean): string | undefined {
  const r = parseLength(text, unit);
  if (!r.ok) return `"${text}" is not a length (${r.error.problem.replaceAll("-", " ")})`;
  const inches = r.length.value.valueOf() / (r.length.unit === "in" ? 1 : 25.4);
  if (inches === 0 && !zeroAllowed) return `"${text}" must be more than zero`;
  if (inches > ABSURD_INCHES) return `"${text}" is absurdly large; is the unit right?`;
  if (inches !== 0 && inches < ABSURDLY_SMALL_INCHES)
    return `"${text}" is absurdly small; is the unit right?`;
  return undefined;
}

function walk(
  value: unknown,
  path: string,
  visit: (key: string, text: string, path: string) => void,
): void {
  if (value === null || typeof value !== "object") return;
  for (const [key, v] of Object.entries(value)) {
    const here = path ? `${path}/${key}` : key;
    if (typeof v === "string") visit(key, v, here);
    else if (!(key === "fabric" && typeof v === "object" && v !== null)) walk(v, here, visit);
  }
}

/**
 * Control and direction-changing characters have no place in names: they hide what a name says. Half
 * characters and those that are none cannot be written to every format.
 */
export const CONTROL =
  /(?![\t\n\r])[\p{Cc}\p{Bidi_Control}\p{Surrogate}\p{Noncharacter_Code_Point}]/u;

function controlCharacters(value: unknown, path: string): Refusal[] {
  if (typeof value === "string")
    return CONTROL.test(value)
      ? [{ path, message: "control characters are not allowed in a text" }]
      : [];
  if (value === null || typeof value !== "object") return [];
  return Object.entries(value).flatMap(([k, v]) => [
    ...(CONTROL.test(k) ? [{ path, message: "control characters are not allowed in a key" }] : []),
    ...controlCharacters(v, path ? `${path}/${k}` : k),
  ]);
}

/** Walks a value once, no deeper and no longer than it may; false where it goes beyond. */
function within(value: unknown, left: { readonly deepest: number; values: number }): boolean {
  if (value === null || typeof value !== "object") return true;
  const inside = Object.values(value);
  left.values -= inside.length;
  if (left.deepest === 0 || left.values <= 0) return false;
  for (const v of inside) {
    const deeper = { deepest: left.deepest - 1, values: left.values };
    const fits = within(v, deeper);
    left.values = deeper.values;
    if (!fits) return false;
  }
  return true;
}
