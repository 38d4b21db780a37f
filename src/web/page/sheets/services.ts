import type { Answer } from "../../../core/answer/index.ts";
import { type Brief, canonicalText, computedText } from "../../../core/brief/index.ts";
import {
  type Check,
  formFiles,
  makeSheet,
  releaseChecks,
  SHEETS,
  type Sheet,
  type SheetJob,
  type SheetName,
  type SheetOptions,
  sheetJob,
  sheetNames,
} from "../../../core/sheet/index.ts";
import { webFonts } from "../../../pdf/fonts.web.ts";
import { type FontFiles, writePdf } from "../../../pdf/index.ts";

/** What is printed, and how. */
export interface Printing {
  readonly brief: Brief;
  readonly answer: Answer;
  readonly options: SheetOptions;
  /** Date written into the files: `2026-11-25`. */
  readonly day: string;
}

/** Which sheets there are, and what keeps the pattern a draft. */
export interface Overview {
  readonly sheets: readonly { readonly name: SheetName; readonly what: string }[];
  readonly checks: readonly Check[];
}

const jobOf = ({ brief, answer, options }: Printing): SheetJob => sheetJob(brief, answer, options);

let fonts: Promise<FontFiles> | undefined;

/** What the page asks of its worker for sheets: the core's pages and the writer's bytes, as they are. */
export const services = {
  overview: (printing: Printing): Overview => {
    const job = jobOf(printing);
    return {
      sheets: sheetNames(job).map((name) => ({ name, what: SHEETS[name].what })),
      checks: releaseChecks(job),
    };
  },
  sheet: (printing: Printing, name: SheetName): Sheet => makeSheet(jobOf(printing), name),
  pdf: async (printing: Printing, name: SheetName): Promise<Uint8Array<ArrayBuffer>> => {
    fonts ??= webFonts();
    const bytes = await writePdf([makeSheet(jobOf(printing), name)], {
      fonts: await fonts,
      created: new Date(`${printing.day}T12:00:00Z`),
      version: printing.options.version,
    });
    return bytes as Uint8Array<ArrayBuffer>;
  },
  /** Lists, pictures, templates for other programs, and the design with its answer. */
  forms: (printing: Printing): [string, string][] => [
    ["answer.json", computedText(printing.answer)],
    ["brief.json", canonicalText(printing.brief)],
    ...formFiles(jobOf(printing)),
  ],
};
