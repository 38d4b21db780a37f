import { looksOf } from "../answer/index.ts";
import { toSvg } from "../picture/index.ts";
import { dxfText } from "./dxf.ts";
import type { SheetJob } from "./job.ts";
import { listFiles } from "./lists.ts";
import { pictureFiles } from "./pictures.ts";
import { templatePicture, templatesOf } from "./shapes.ts";

/**
 * What other programs take of a job, by file name: every list as CSV, every picture as SVG in real
 * units, every template as SVG at true size, and all templates as one DXF file.
 */
export function formFiles(job: SheetJob): Map<string, string> {
  const { brief, answer } = job;
  const templates = templatesOf(job);
  const options = { swatches: job.swatches, theme: "paper", realUnits: true } as const;
  return new Map([
    ...listFiles(brief, answer),
    ...pictureFiles(brief, answer, looksOf(brief, answer), { realUnits: true }),
    ...templates.map((t): [string, string] => {
      const letters = t.pieces.map((p) => p.letter).join("-");
      return [
        `template-${letters}.svg`,
        toSvg(templatePicture(job, t), { ...options, width: Number.POSITIVE_INFINITY }),
      ];
    }),
    ...(templates.length > 0 ? [["templates.dxf", dxfText(job)] as const] : []),
  ]);
}
