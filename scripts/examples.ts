// Writes the checked-in pictures of the examples and the gallery page made from them.
// `npm run -s examples`, then look at each picture before committing it.
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { answerText } from "../src/cli/text.ts";
import { type Answer, answerBrief, looksOf } from "../src/core/answer/index.ts";
import { type Brief, readBrief } from "../src/core/brief/index.ts";
import { pictureFiles } from "../src/core/sheet/index.ts";

export interface Example {
  readonly name: string;
  readonly brief: Brief;
  readonly answer: Answer;
}

/** Every brief of examples/, answered, in the order of their names. */
export function examples(): Example[] {
  return readdirSync("examples")
    .filter((f) => f.endsWith(".json"))
    .sort()
    .map((file) => {
      const read = readBrief(readFileSync(`examples/${file}`, "utf8"));
      if (!read.ok) throw new Error(`${file}: ${JSON.stringify(read.refusals)}`);
      return {
        name: file.replace(".json", ""),
        brief: read.brief,
        answer: answerBrief(read.brief),
      };
    });
}

/** The files checked in for one example: its pictures and its answer as text. */
export function filesOf({ name, brief, answer }: Example): Map<string, string> {
  const folder = `examples/pictures/${name}`;
  return new Map([
    [`${folder}/answer.txt`, answerText(brief, answer)],
    ...pictureFiles(brief, answer, looksOf(brief, answer)).map(([file, svg]): [string, string] => [
      `${folder}/${file}`,
      `${svg}\n`,
    ]),
  ]);
}

/** The gallery: every example with its sentence and its pictures. */
export function gallery(all: readonly Example[]): string {
  const sections = all.map(({ name, brief, answer }) => {
    const folder = `pictures/${name}`;
    const blocks = answer.blocks.map(
      (b) => `<img src="${folder}/block-${b.id}.svg" alt="Block ${b.name}" width="220">`,
    );
    return [
      `## ${brief.title}`,
      "",
      answer.sentence.map((p) => p.text).join(""),
      "",
      `<img src="${folder}/quilt.svg" alt="${brief.title}" width="440"> ${blocks.join(" ")}`,
      "",
      `[Brief](${name}.json) · [answer](${folder}/answer.txt) · [all pictures](${folder}/)`,
      "",
    ].join("\n");
  });
  return [
    "# Gallery",
    "",
    "Every example with its pictures, written by `npm run -s examples`. All of them are tests.",
    "",
    ...sections,
  ].join("\n");
}

if (process.argv[1]?.endsWith("examples.ts")) {
  const all = examples();
  rmSync("examples/pictures", { recursive: true, force: true });
  for (const [file, text] of [
    ...all.flatMap((e) => [...filesOf(e)]),
    ["examples/README.md", gallery(all)] as const,
  ]) {
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, text);
  }
}
