import { execFile } from "node:child_process";
import { readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";

/** Every page of words in the repository, from its root. */
export function pages(root: string): string[] {
  const below = (folder: string): string[] =>
    readdirSync(join(root, folder), { withFileTypes: true }).flatMap((f) => {
      const path = join(folder, f.name);
      if (f.isDirectory()) return below(path);
      return path.endsWith(".md") ? [path] : [];
    });
  const top = readdirSync(root).filter((name) => name.endsWith(".md"));
  return [...top, ...below("docs"), ...below("examples"), ...below("bench")];
}

/** A heading's address on its page, as forges make it. */
const anchorOf = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[`*_]/g, "")
    .replace(/[^\p{L}\p{N}\s-]/gu, "")
    .trim()
    .replace(/\s/g, "-");

const anchors = (text: string): Set<string> =>
  new Set([...withoutCode(text).matchAll(/^#+\s+(.+)$/gm)].map(([, heading]) => anchorOf(heading)));

const withoutCode = (text: string): string => text.replace(/^```[\s\S]*?^```/gm, "");

/** Links and pictures of a page that lead nowhere in the repository. */
export function brokenLinks(root: string, page: string): string[] {
  const text = readFileSync(join(root, page), "utf8");
  const words = withoutCode(text).replace(/`[^`]*`/g, "");
  const links = [
    ...words.matchAll(/\]\(([^)\s]+)\)/g),
    ...words.matchAll(/<(?:img|a)\b[^>]*\b(?:src|href)="([^"]+)"/g),
    ...words.matchAll(/^\[[^\]]+\]:\s*(\S+)/gm),
  ];
  return links.flatMap(([, link]) => {
    if (/^(https:|mailto:)/.test(link)) return [];
    const [path, anchor] = link.split("#");
    const target = path === "" ? join(root, page) : resolve(root, dirname(page), path);
    const there = statSync(target, { throwIfNoEntry: false });
    const inside = !relative(root, target).startsWith("..");
    if (!there || !inside) return [`${page}: ${link}`];
    if (anchor === undefined) return [];
    return anchors(readFileSync(target, "utf8")).has(anchor) ? [] : [`${page}: ${link}`];
  });
}

/** Pictures of a page, by their files from the root, each with the words that stand for it. */
export function picturesOf(root: string, page: string): { file: string; words: string }[] {
  const text = withoutCode(readFileSync(join(root, page), "utf8"));
  const inline = [...text.matchAll(/!\[([^\]]*)\]\(([^)\s]+)\)/g)].map(([, w, src]) => [w, src]);
  const tags = [...text.matchAll(/<img\b[^>]*>/g)].map(([tag]) => [
    /\balt="([^"]*)"/.exec(tag)?.[1] ?? "",
    /\bsrc="([^"]+)"/.exec(tag)?.[1] ?? "",
  ]);
  return [...inline, ...tags].map(([words, src]) => ({ file: join(dirname(page), src), words }));
}

/** Names of the project's own commands a page speaks of that package.json does not have. */
export function unknownCommands(root: string, page: string): string[] {
  const { scripts } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
  const text = readFileSync(join(root, page), "utf8");
  const run = [...text.matchAll(/npm run (?:-s )?([\w:-]+)/g)].map(([, name]) => name);
  const files = [...text.matchAll(/\b((?:scripts|bench)\/[\w/.-]+\.(?:ts|mjs|sh))\b/g)];
  return [
    ...run.filter((name) => !(name in scripts)).map((name) => `${page}: npm run ${name}`),
    ...files
      .filter(([, file]) => !statSync(join(root, file), { throwIfNoEntry: false }))
      .map(([, file]) => `${page}: ${file}`),
  ];
}

/** A line of a shell block that runs the program, and the block that must be what it prints. */
export interface Shown {
  readonly page: string;
  readonly line: string;
  /** The fenced block marked `text` that follows the line's own block; only its last line's. */
  readonly prints?: string;
  /** What the comment above its lines says after a colon; "" where it says nothing. */
  readonly says: string;
}

/** Every line that runs the program, page by page and in order: later ones may use earlier ones' files. */
export function shown(root: string, page: string): Shown[] {
  const text = readFileSync(join(root, page), "utf8");
  const blocks = [...text.matchAll(/^```sh\n([\s\S]*?)^```\n(?:\n```text\n([\s\S]*?)^```)?/gm)];
  return blocks.flatMap(([, body, prints]) => {
    let says = "";
    const lines = body.split("\n").flatMap((line) => {
      if (line.startsWith("#")) says = /:(.+)$/.exec(line)?.[1] ?? "";
      return /^(npx )?eighthwise /.test(line) ? [{ line, says }] : [];
    });
    return lines.map(({ line, says }, i) => ({
      page,
      line,
      says,
      ...(prints !== undefined && i === lines.length - 1 && { prints }),
    }));
  });
}

/** The numbers of a sentence, mixed ones whole. */
export const numbersIn = (text: string): string[] =>
  text.match(/\d+ \d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?/g) ?? [];

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs one shown line in a folder, with the built program. */
export const ran = (line: string, program: string, folder: string): Promise<Ran> =>
  new Promise((done) => {
    const command = line.replace(/^(npx )?eighthwise/, `"${process.execPath}" "${program}"`);
    execFile("sh", ["-c", command], { cwd: folder, maxBuffer: 2 ** 26 }, (error, out, err) =>
      done({ code: typeof error?.code === "number" ? error.code : 0, out, err }),
    );
  });
