import { say as sayFinding } from "../findings/index.ts";
import type { SheetJob } from "./job.ts";

/** Why the pattern must keep the word draft; empty when it may lose it. */
export function draftReasons(job: SheetJob): string[] {
  const accepted = new Set((job.brief.accepted ?? []).map((a) => `${a.code} ${a.place}`));
  return job.answer.findings
    .filter((f) => f.severity !== "advice" && !accepted.has(`${f.code} ${f.place}`))
    .map((f) => sayFinding(f, { step: job.step }));
}
