import type { Brief } from "../../brief/index.ts";

/** The version that left this design last, as its record has it; "1" where nothing has left yet. */
export function lastVersion({ record }: Pick<Brief, "record">): string {
  for (const entry of [...(record ?? [])].reverse()) {
    if (typeof entry !== "object" || entry === null) continue;
    const { of, version } = entry as { of?: unknown; version?: unknown };
    if (typeof of === "string" && typeof version === "string" && version !== "") return version;
  }
  return "1";
}

/** "1" is followed by "2", "1.9" by "1.10", "draft" by "draft 2". */
export const nextVersion = (text: string): string =>
  /\d+$/.test(text)
    ? text.replace(/\d+$/, (n) => String(BigInt(n) + 1n))
    : `${text.trim()} 2`.trim();

/**
 * What is printed next must not carry the version of what is out with other numbers: the version to
 * give it instead, or none where nothing is wrong.
 */
export const versionToGive = (
  brief: Pick<Brief, "record">,
  wrong: readonly { readonly left: { readonly version: string } }[],
): string | undefined => {
  const last = lastVersion(brief);
  return wrong.some((w) => w.left.version === last) ? nextVersion(last) : undefined;
};
