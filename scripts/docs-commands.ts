import { readFileSync } from "node:fs";
import { join } from "node:path";

/** A command that a page states, in a line of a shell block or within its words. */
export interface Stated {
  readonly page: string;
  readonly line: string;
}

const withoutBlocks = (text: string): string => text.replace(/^```[\s\S]*?^```/gm, "");

/** Every stretch of code within the words of a page. */
export const spans = (text: string): string[] =>
  [...withoutBlocks(text).matchAll(/`([^`]+)`/g)].map(([, span]) => span.replace(/\s+/g, " "));

/** The commands of a page that are not the program's own. */
export function stated(root: string, page: string): Stated[] {
  const text = readFileSync(join(root, page), "utf8");
  const blocks = [...text.matchAll(/^```sh\n([\s\S]*?)^```/gm)].flatMap(([, b]) => b.split("\n"));
  return [...blocks, ...spans(text)]
    .map((line) => line.replace(/\s+# .*/, ""))
    .filter((line) => /^(npm|npx|bash|node) (?!eighthwise)/.test(line))
    .map((line) => ({ page, line }));
}

/** Options of a stated command of the project's that none of its scripts knows. */
export function unknownOptions(root: string, line: string): string[] {
  const { scripts } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
  const [, name] = /^npm run (?:-s )?([\w:-]+)/.exec(line) ?? [];
  const files =
    `${scripts[name ?? ""]} ${line}`.match(/\b(?:scripts|bench)\/[\w/.-]+\.(?:ts|mjs|sh)\b/g) ?? [];
  const text = files.map((file) => readFileSync(join(root, file), "utf8")).join("\n");
  const options = (line.match(/ --[a-z]+/g) ?? []).map((option) => option.slice(3));
  const known = (o: string): boolean => new RegExp(`["-]${o}"|\\b${o}: \\{ type`).test(text);
  return files.length === 0 ? [] : options.filter((option) => !known(option));
}
