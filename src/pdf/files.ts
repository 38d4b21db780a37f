import { makeSheet, type SheetJob, sheetNames } from "../core/sheet/index.ts";
import { type PdfOptions, writePdf } from "./write.ts";

/** Every sheet of a job as a PDF file, by file name: `pattern.pdf`, `templates.pdf` ... */
export async function pdfFiles(
  job: SheetJob,
  options: PdfOptions,
): Promise<Map<string, Uint8Array>> {
  const files = new Map<string, Uint8Array>();
  for (const name of sheetNames(job))
    files.set(`${name}.pdf`, await writePdf([makeSheet(job, name)], options));
  return files;
}
