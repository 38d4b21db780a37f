import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";

/** A change that a guide prints: of the file last named above its block. */
export interface Change {
  readonly file: string;
  /** The whole of a new file, or a hunk whose lines begin with a space, a minus or a plus. */
  readonly kind: "new" | "diff";
  readonly text: string;
  /** Whether the words of its step say that the compiler asks for it. */
  readonly asked: boolean;
}

/** The changes printed under one heading of a page, in order. */
export function changesUnder(page: string, heading: string): Change[] {
  const section = page.split(/^## /m).find((part) => part.startsWith(`${heading}\n`));
  if (section === undefined) throw new RangeError(`no heading "${heading}"`);
  let file: string | undefined;
  return section.split(/^```/m).flatMap((part, i): Change[] => {
    if (i % 2 === 0) {
      const named = [...part.matchAll(/`((?:src|docs|examples)\/[\w./-]+\.\w+)`/g)];
      file = named.at(-1)?.[1] ?? file;
      return [];
    }
    const [language, ...lines] = part.split("\n");
    if (file === undefined) throw new RangeError(`a block under "${heading}" names no file`);
    const kind = language === "diff" ? "diff" : "new";
    const words =
      section
        .slice(0, section.indexOf(part))
        .split(/^\d\. /m)
        .at(-1) ?? "";
    return [{ file, kind, text: lines.join("\n"), asked: words.includes("(asked for)") }];
  });
}

/** Makes a change in a copy of the source. The lines a hunk takes for granted stand there once, so. */
export function make({ file, kind, text }: Change, root: string): void {
  const path = join(root, file);
  if (kind === "new") {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
    return;
  }
  const lines = text.split("\n").filter((line) => line !== "");
  const side = (sign: string): string =>
    lines.flatMap((l) => (l[0] === " " || l[0] === sign ? [`${l.slice(1)}\n`] : [])).join("");
  const [before, after] = [side("-"), side("+")];
  const there = readFileSync(path, "utf8").split(before);
  if (there.length !== 2)
    throw new RangeError(`${file} has ${there.length - 1} times, not once:\n${before}`);
  writeFileSync(path, there.join(after));
}
