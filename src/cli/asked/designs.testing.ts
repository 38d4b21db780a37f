import { readFileSync } from "node:fs";
import { type Answer, answerBrief } from "../../core/answer/index.ts";
import { type Brief, readDocument } from "../../core/brief/index.ts";

/** A design and its answer, as the page and the command line have them. */
export interface Asked {
  readonly brief: Brief;
  readonly answer: Answer;
}

// biome-ignore lint/suspicious/noExplicitAny: a document is changed before it is checked
type Change = (document: any) => void;

/** One of the examples, changed as a maker would change it. */
export function design(name: string, change: Change = () => {}): Asked {
  const document = JSON.parse(readFileSync(`examples/${name}.json`, "utf8"));
  change(document);
  const read = readDocument(document);
  if (!read.ok) throw new RangeError(JSON.stringify(read.refusals));
  return { brief: read.brief, answer: answerBrief(read.brief) };
}
