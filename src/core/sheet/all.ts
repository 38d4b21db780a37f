import { cardSheet } from "./card.ts";
import { chartSheet } from "./chart.ts";
import type { SheetJob } from "./job.ts";
import { layoutSheet } from "./layouts.ts";
import type { Sheet } from "./model.ts";
import { longSheet, patternSheet } from "./pattern.ts";
import { sewingSheet } from "./sewing.ts";
import { templateSheet } from "./templates.ts";

interface SheetKind {
  readonly make: (job: SheetJob) => Sheet;
  /** What it is, as a list of sheets says it. */
  readonly what: string;
  /** Has it something to show for this job? Always, unless told. */
  readonly when?: (job: SheetJob) => boolean;
}

/** What can be printed, by name, in the order it is offered. A new sheet is one line here. */
export const SHEETS = {
  pattern: { make: patternSheet, what: "the pattern" },
  templates: { make: templateSheet, what: "templates at true size", when: hasTemplates },
  chart: {
    make: chartSheet,
    what: "the wedge chart of the ruler",
    when: ({ brief }) => brief.blocks.some((b) => b.kind === "wedges"),
  },
  card: { make: cardSheet, what: "the cutting-table card" },
  layouts: { make: layoutSheet, what: "cutting layouts to scale" },
  sewing: { make: sewingSheet, what: "the sewing card" },
  long: { make: longSheet, what: "the long form, with every proof" },
} as const satisfies Readonly<Record<string, SheetKind>>;

export type SheetName = keyof typeof SHEETS;
export const SHEET_NAMES = Object.keys(SHEETS) as readonly SheetName[];

/** A quilt of plain rectangles has no templates. */
function hasTemplates({ answer }: SheetJob): boolean {
  return answer.recipes.some((r) => r.kind !== "rectangle");
}

/**
 * Sheets that have something to show for this job. A job whose findings block has no pieces to cut,
 * so it has none.
 */
export function sheetNames(job: SheetJob): SheetName[] {
  const { answer } = job;
  if (!answer.quilt || answer.pieces.length === 0 || answer.recipes.length === 0) return [];
  return SHEET_NAMES.filter((n) => (SHEETS[n] as SheetKind).when?.(job) ?? true);
}

export const makeSheet = (job: SheetJob, name: SheetName): Sheet => SHEETS[name].make(job);
