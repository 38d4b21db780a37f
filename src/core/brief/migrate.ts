import { VERSION } from "./schema.ts";

type Document = Readonly<Record<string, unknown>>;

/**
 * Numbered steps from one version of the brief to the next, without gaps: MIGRATIONS[0] takes
 * version 1 to 2, and so on. Each is pure and leaves its argument alone. There is one version so far.
 */
export const MIGRATIONS: readonly ((d: Document) => Document)[] = [];

export type Migrated =
  | { readonly ok: true; readonly document: Document }
  | { readonly ok: false; readonly message: string };

/** Brings an older brief to the current version. The caller has refused newer ones. */
export function migrate(document: Document): Migrated {
  const from = document.version as number;
  if (from < 1) return { ok: false, message: `there never was a version ${from}` };
  let d = document;
  for (let v = from; v < VERSION; v++) d = { ...MIGRATIONS[v - 1](d), version: v + 1 };
  return { ok: true, document: d };
}
