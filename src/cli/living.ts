import { readFile } from "node:fs/promises";

/** Where the built template lies, seen from the built command line and from its source. */
const PLACES = ["../living/pattern.html", "../../dist/living/pattern.html"];

/** The living pattern's template, written by `npm run -s build:living`; undefined when it is not built. */
export async function livingTemplate(): Promise<string | undefined> {
  for (const place of PLACES) {
    try {
      return await readFile(new URL(place, import.meta.url), "utf8");
    } catch {
      // The other place may have it.
    }
  }
  return undefined;
}
