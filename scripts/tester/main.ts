// Makes a quilt from a pattern's printed words alone, and says where a stranger would be stuck.
//   npm run -s stranger PATTERN.pdf                        reads the file's print
//   npm run -s stranger PATTERN.pdf -- --words WORDS.tsv   also writes the print, to be edited
//   npm run -s stranger WORDS.tsv                          reads the print as somebody edited it
// Exit codes: 0 nothing is missing; 1 somewhere she would be stuck; 2 bad command; 3 cannot read.
import { readFileSync, writeFileSync } from "node:fs";
import { reading } from "./parse.ts";
import { type Print, printOf } from "./read.ts";
import { tried } from "./try.ts";

const HEAD = ["page", "x", "y", "width", "size", "text"].join("\t");

export const wordsText = (print: readonly Print[]): string =>
  `${[HEAD, ...print.map((p) => [p.page, p.x, p.y, p.width, p.size, p.text].join("\t"))].join("\n")}\n`;

export function wordsIn(text: string): Print[] {
  const [head, ...lines] = text.replace(/\r/g, "").split("\n");
  if (head !== HEAD) throw new RangeError(`the first line must be ${JSON.stringify(HEAD)}`);
  return lines.flatMap((line, i): Print[] => {
    if (line === "") return [];
    const [page, x, y, width, size, ...words] = line.split("\t");
    const numbers = [page, x, y, width, size].map(Number);
    if (words.length === 0 || numbers.some((n) => !Number.isFinite(n)))
      throw new RangeError(`line ${i + 2}: five numbers and a text expected, got "${line}"`);
    const [p, a, b, c, d] = numbers as [number, number, number, number, number];
    return [{ page: p, x: a, y: b, width: c, size: d, text: words.join(" ") }];
  });
}

async function main(args: readonly string[]): Promise<number> {
  const at = args.indexOf("--words");
  const to = at < 0 ? undefined : args[at + 1];
  const [path] = args.filter((a, i) => a !== "--words" && (at < 0 || i !== at + 1));
  if (path === undefined || (at >= 0 && to === undefined)) {
    console.error("stranger: PATTERN.pdf or WORDS.tsv expected, and a name after --words");
    return 2;
  }
  let print: Print[];
  try {
    const bytes = readFileSync(path);
    print =
      bytes.subarray(0, 5).toString("latin1") === "%PDF-"
        ? await printOf(bytes)
        : wordsIn(bytes.toString("utf8"));
  } catch (error) {
    console.error(`stranger: ${path}: ${(error as Error).message}`);
    return 3;
  }
  if (to !== undefined) writeFileSync(to, wordsText(print));
  const found = tried(reading(print));
  for (const { where, why } of found) console.log(`${where}: ${why}`);
  if (found.length === 0) console.log("A stranger can make it from its words.");
  return found.length === 0 ? 0 : 1;
}

if (process.argv[1]?.endsWith("main.ts"))
  main(process.argv.slice(2)).then((code) => {
    process.exitCode = code;
  });
