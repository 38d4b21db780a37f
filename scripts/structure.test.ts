import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { describe, expect, test } from "vitest";

const root = join(import.meta.dirname, "..");
const FOLDERS = ["src", "scripts", "e2e", "bench"];

interface Source {
  readonly path: string;
  readonly text: string;
}

const sources: readonly Source[] = FOLDERS.flatMap((folder) =>
  readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
    .filter((name) => /\.(ts|tsx|mjs)$/.test(name))
    .map((name) => ({
      path: relative(root, join(root, folder, name)),
      text: readFileSync(join(root, folder, name), "utf8"),
    })),
);
const onlyForTests = ({ path }: Source): boolean => /\.(test|testing)\.tsx?$/.test(path);
/** Code without its comments: words about a clock are no clock. */
const code = (text: string): string => text.replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, "");

describe("how the sources are kept", () => {
  test("there are sources to look at", () => {
    expect(sources.length).toBeGreaterThan(500);
  });

  test("no file is longer than 400 lines", () => {
    const long = sources.filter((s) => s.text.split("\n").length > 401).map((s) => s.path);
    expect(long).toEqual([]);
  });

  test("nothing that is shipped imports what only tests use", () => {
    const shipped = sources.filter((s) => s.path.startsWith("src/") && !onlyForTests(s));
    const wrong = shipped.filter((s) => /from "[^"]+\.testing\.tsx?"/.test(s.text));
    expect(wrong.map((s) => s.path)).toEqual([]);
    const helpers =
      /(^|\/)(forTests?|testing|helpers?|utils?)\.tsx?$|\.(check|arbitrary|helper)\.tsx?$/i;
    expect(sources.filter((s) => helpers.test(s.path)).map((s) => s.path)).toEqual([]);
  });

  test("the core asks no clock, no chance, no window and no machine", () => {
    const impure =
      /\bDate\.now\b|\bnew Date\(\)|\bMath\.random\b|\bperformance\.|\b(navigator|localStorage|indexedDB|process|globalThis)\.|\b(window|document)\.(addEventListener|querySelector|createElement|location|body)\b|\bfetch\(|\bset(Timeout|Interval)\(|\bcrypto\./;
    const core = sources.filter((s) => s.path.startsWith("src/core/") && !onlyForTests(s));
    const wrong = core.flatMap((s) => {
      const found = impure.exec(code(s.text))?.[0];
      return found ? [`${s.path}: ${found}`] : [];
    });
    expect(wrong).toEqual([]);
  });
});
