import { type Answer, answerBrief } from "../answer/index.ts";
import { type Brief, readBrief } from "../brief/index.ts";
import { type SheetJob, sheetJob } from "./job.ts";
import type { SheetOptions } from "./options.ts";

/** A job of a brief's text, with the version and date that tests print. */
export function jobOf(text: string, options: Partial<SheetOptions> = {}): SheetJob {
  const { brief, answer } = answered(text);
  return sheetJob(brief, answer, { version: "1", date: "25 November 2026", ...options });
}

export function answered(text: string): { readonly brief: Brief; readonly answer: Answer } {
  const result = readBrief(text);
  if (!result.ok) throw new RangeError(`a brief expected, refused: ${JSON.stringify(result)}`);
  return { brief: result.brief, answer: answerBrief(result.brief) };
}
