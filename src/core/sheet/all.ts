import { cardSheet } from "./card.ts";
import { chartSheet } from "./chart.ts";
import type { SheetJob } from "./job.ts";
import { layoutSheet } from "./layouts.ts";
import { longSheet } from "./long.ts";
import type { Sheet } from "./model.ts";
import { patternSheet } from "./pattern.ts";
import { sewingSheet } from "./sewing.ts";
import { templateSheet } from "./templates.ts";

/** What can be printed, by name. Kit and class sheets join here when the shop has them. */
export const SHEETS = {
  pattern: { make: patternSheet, what: "the pattern in two sides" },
  templates: { make: templateSheet, what: "templates at true size" },
  chart: { make: chartSheet, what: "the wedge chart of the ruler" },
  card: { make: cardSheet, what: "the cutting-table card" },
  layouts: { make: layoutSheet, what: "cutting layouts to scale" },
  sewing: { make: sewingSheet, what: "the sewing card" },
  long: { make: longSheet, what: "the long form, with every proof" },
} as const satisfies Readonly<
  Record<string, { readonly make: (job: SheetJob) => Sheet; readonly what: string }>
>;

export type SheetName = keyof typeof SHEETS;
export const SHEET_NAMES = Object.keys(SHEETS) as readonly SheetName[];

/**
 * Sheets that have something to show for this job. A job whose findings block has no pieces to cut,
 * so it has none; a quilt without wedges has no wedge chart; one of plain rectangles no templates.
 */
export function sheetNames(job: SheetJob): SheetName[] {
  const { answer, brief } = job;
  if (!answer.quilt || answer.pieces.length === 0 || answer.recipes.length === 0) return [];
  const shaped = answer.recipes.some((r) => r.kind !== "rectangle");
  const wedges = brief.blocks.some((b) => b.kind === "wedges");
  return SHEET_NAMES.filter((n) => (n === "chart" ? wedges : n === "templates" ? shaped : true));
}

export const makeSheet = (job: SheetJob, name: SheetName): Sheet => SHEETS[name].make(job);
