import type { Answered } from "../answers.ts";
import { editionOf } from "../sheets/choices.ts";
import { sayAloud } from "../view.ts";
import { shopWorker } from "./asking.ts";
import type { Printing, ShopPaper } from "./services.ts";

/** Hands a file to the browser's downloads. */
export function give(name: string, content: BlobPart, type: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([content], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

export const today = (): string => {
  const d = new Date();
  const two = (n: number): string => String(n).padStart(2, "0");
  return `${d.getFullYear()}-${two(d.getMonth() + 1)}-${two(d.getDate())}`;
};

export const slugOf = (title: string): string =>
  title
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "") || "design";

/** Writes a paper in the worker and hands it over; says how it went. */
export async function print(
  { brief, answer }: Answered,
  paper: ShopPaper,
  name: string,
): Promise<string | null> {
  const printing: Printing = { brief, answer, ...editionOf(brief) };
  const outcome = await shopWorker.ask("print", "pdf", printing, paper);
  if (outcome.kind === "superseded") return null;
  if (outcome.kind === "failed") return outcome.failure.message;
  give(`${slugOf(brief.title)}-${name}.pdf`, outcome.value, "application/pdf");
  sayAloud(`${name}: handed to your downloads.`);
  return null;
}
