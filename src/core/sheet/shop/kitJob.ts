import type { KitPlan, KitRules, Shelf } from "../../shop/index.ts";
import type { SheetJob } from "../job.ts";

/** What the kit sheets are made from: the design's job, the plan, and the shelf it cuts from. */
export interface KitJob {
  readonly job: SheetJob;
  readonly plan: KitPlan;
  readonly shelf: Shelf;
  readonly rules: KitRules;
}
