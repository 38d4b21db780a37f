import type { Refusal } from "../../core/brief/index.ts";
import type { Kept, Notice, NotSaved } from "./types.ts";

const NOT_SAVED: Readonly<Record<NotSaved, string>> = {
  writing: "saving",
  "storage-full": "the browser's storage is full",
  "storage-off": "this browser does not let pages keep anything",
  "storage-newer": "a newer edition of this page keeps the designs; load the page again",
  "changed-elsewhere": "the design was changed in another tab",
  "deleted-elsewhere": "the design was deleted in another tab",
  "read-back-differs": "what was read back from the browser's storage differs",
  failed: "the browser's storage failed",
};

/** Where the work is, for the status line. */
export function sayKept(kept: Kept): string {
  if (kept.kind === "browser") return "Kept in this browser, read back and equal";
  if (kept.kind === "file") return `Kept in the file ${kept.name}`;
  return `Not saved: ${NOT_SAVED[kept.reason]}`;
}

export function sayNotice(notice: Notice): string {
  switch (notice.kind) {
    case "followed":
      return `Changed in another tab${notice.words && `: ${notice.words}`}. This tab shows it.`;
    case "written-back":
      return "The browser's storage had been cleared. The design was written back from this tab.";
    case "handed-over":
      return `${notice.name} was handed to the browser's downloads. Look whether it is there.`;
    case "refused":
      return `${notice.name}: ${notice.why.join("; ")}. Nothing was changed.`;
    case "deleted":
      return `${notice.title} was deleted.`;
    case "from-copies":
      return `The browser had lost its database. Brought back from second copies, without their history: ${notice.titles.join(", ")}.`;
    case "file-changed":
      return `Another program changed ${notice.name}. It was not written over.`;
  }
}

/** Why a document was refused, each with its place; the first few say enough. */
export const sentences = (refusals: readonly Refusal[]): string[] =>
  refusals.slice(0, 5).map(({ path, message }) => (path ? `${path}: ${message}` : message));
