import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

/** How a fenced block may be marked, each read by a test; CONTRIBUTING.md says how. */
const LANGUAGES: readonly string[] = ["sh", "text", "diff", "json", "ts", ""];

const fences = (text: string): RegExpMatchArray[] => [
  ...text.matchAll(/^```(\w*)\n([\s\S]*?)^```$/gm),
];

/** Blocks of a page in a language that no test reads. */
export function unreadBlocks(root: string, page: string): string[] {
  return fences(readFileSync(join(root, page), "utf8"))
    .filter(([, language]) => !LANGUAGES.includes(language))
    .map(([, language]) => `${page}: a block marked "${language}"`);
}

/** Folders named in an unmarked block, a list indented under its own folder, that are not there. */
export function missingFolders(root: string, page: string): string[] {
  return fences(readFileSync(join(root, page), "utf8"))
    .filter(([, language]) => language === "")
    .flatMap(([, , list]) => {
      let parent = "";
      return list.split("\n").flatMap((line) => {
        const [, indent, name] = /^(\s*)([\w/-]+\/)(?:\s|$)/.exec(line) ?? [];
        if (name === undefined) return line.trim() === "" ? [] : [`${page}: ${line}`];
        if (indent === "") parent = name;
        const path = indent === "" ? name : `${parent}${name}`;
        return existsSync(join(root, path)) ? [] : [`${page}: ${path}`];
      });
    });
}

/** Names that sample code of a page calls and that are neither declared in it nor exported by `folder`. */
export function unknownNames(root: string, page: string, folder: string): string[] {
  const sources = readdirSync(join(root, folder))
    .filter((name) => name.endsWith(".ts"))
    .map((name) => readFileSync(join(root, folder, name), "utf8"))
    .join("\n");
  const exported = new Set(
    [...sources.matchAll(/^export (?:async )?(?:function|const|class) (\w+)/gm)].map(([, n]) => n),
  );
  return fences(readFileSync(join(root, page), "utf8"))
    .filter(([, language]) => language === "ts")
    .flatMap(([, , code]) => {
      const own = new Set([...code.matchAll(/(?:function|const) (\w+)/g)].map(([, n]) => n));
      const called = [...code.matchAll(/(?<![.\w])(\w+)\(/g)].map(([, n]) => n);
      return called
        .filter((n) => !own.has(n) && !exported.has(n) && !["String", "Number"].includes(n))
        .map((n) => `${page}: ${n}`);
    });
}
