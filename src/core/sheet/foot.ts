import type { SheetJob } from "./job.ts";
import { draftReasons } from "./release.ts";

/** What the foot of every sheet says: draft or not, title, version, date, and the seam. */
export function footWords(job: SheetJob): string {
  const draft = draftReasons(job).length > 0 ? "DRAFT. " : "";
  const { title, seam, unit } = job.brief;
  const seamText = /[a-z]/i.test(seam) ? seam : `${seam} ${unit}`;
  return `${draft}${title}. Version ${job.version}, ${job.date}. Sewn with a ${seamText} seam throughout.`;
}
