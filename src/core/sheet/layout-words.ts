import type { FabricLayout, Yardage } from "../layout/types.ts";
import { type SheetJob, say, sayUnit } from "./job.ts";

/** What the bolt must give at once: the yardage at the layout's own width. */
export const yardageFor = (job: SheetJob, layout: FabricLayout): Yardage | undefined =>
  job.answer.yardages.find((y) => y.fabricId === layout.fabricId && y.width === layout.width);

/** "1 yd bought, 31 in needed with its margins; 40 in usable, cut folded" */
export function boughtWords(job: SheetJob, layout: FabricLayout): string {
  const y = yardageFor(job, layout);
  const folded = layout.strips.some((s) => s.layers === 2) ? "cut folded" : "cut single";
  const bought = y ? `${y.buyText} bought, ${sayUnit(job, y.total)} needed with its margins; ` : "";
  return `${bought}${sayUnit(job, layout.width)} usable, ${folded}`;
}

/** Why the plan takes no less, with what is left over; bold between pairs of asterisks. */
export function whyWords(job: SheetJob, layout: FabricLayout): string {
  const gap = layout.length - layout.lowerBound;
  const unit = job.brief.unit;
  const proved =
    gap < 1e-6
      ? "no plan of this kind can be shorter: **gap 0**"
      : `no plan of this kind can be under ${say(job, layout.lowerBound)} ${unit}: **gap ${say(job, gap)}**`;
  const saved = layout.handbook - layout.length;
  const handbook =
    saved > 1e-6 ? ` One size to a strip would take ${sayUnit(job, layout.handbook)}.` : "";
  const left = layout.leftovers
    .slice(0, 3)
    .map(
      (l) => `${l.count > 1 ? `${l.count} of ` : ""}${say(job, l.height)} × ${say(job, l.width)}`,
    )
    .join("; ");
  return `**Why no less.** In strips across the width the plan takes ${sayUnit(job, layout.length)}; ${proved}.${handbook}${left ? ` Left over: ${left}.` : ""}`;
}
