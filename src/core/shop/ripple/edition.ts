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
