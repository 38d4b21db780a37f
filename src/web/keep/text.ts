import { type Brief, canonicalText } from "../../core/brief/index.ts";
import { same } from "./same.ts";
import type { Reader } from "./types.ts";

/**
 * The text of a design for a file. A file that was opened and not edited (or edited and taken
 * back) keeps its own text, equal to the byte; otherwise the one serialization of the core, with
 * the keys other programs left in the opened file (`x-...`) put back where they stood.
 */
export function fileText(brief: Brief, opened: string | undefined, reader: Reader): string {
  if (opened === undefined) return canonicalText(brief);
  const was = reader.text(opened);
  if (!was.ok) return canonicalText(brief);
  if (same(was.brief, brief)) return opened;
  return canonicalText(withForeignKeys(JSON.parse(opened.replace(/^\uFEFF/, "")), brief));
}

/** Members of a list are known by their id where they have one, else by their place. */
function withForeignKeys(from: unknown, to: unknown): unknown {
  if (typeof from !== "object" || typeof to !== "object" || !from || !to) return to;
  if (Array.isArray(to)) {
    if (!Array.isArray(from)) return to;
    return to.map((x, i) =>
      withForeignKeys(from.find((f) => idOf(f) === idOf(x, i)) ?? from[i], x),
    );
  }
  const source = from as Record<string, unknown>;
  const foreign = Object.entries(source).filter(([key]) => key.startsWith("x-"));
  const own = Object.entries(to).map(([key, value]) => [
    key,
    key === "notes" || !Object.hasOwn(source, key) ? value : withForeignKeys(source[key], value),
  ]);
  return Object.fromEntries([...foreign, ...own]);
}

const idOf = (value: unknown, otherwise?: number): unknown =>
  (typeof value === "object" && value && "id" in value ? value.id : undefined) ?? otherwise;

/** A name for a file: the title in small letters, figures and hyphens. */
export const fileName = (title: string): string => `${slugOf(title) || "design"}.json`;

export function slugOf(title: string): string {
  return title
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 60);
}

/** The text of a file's bytes, kept so that it can be written again equal to the byte; null if it is not UTF-8. */
export function exactText(bytes: ArrayBuffer): string | null {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return null;
  }
}
