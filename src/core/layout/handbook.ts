import { finishLayout } from "./finish.ts";
import { handbookStrips } from "./own-strips.ts";
import type { Demand, FabricLayout, Stock } from "./types.ts";
import { workFor } from "./work.ts";

/**
 * The plan of the handbooks: every piece its own strips, in the orientation that takes least
 * fabric. The baseline every better plan is measured against, and the fallback when there is none.
 */
export function planHandbook(demands: readonly Demand[], stock: Stock): FabricLayout {
  const work = workFor(demands, stock);
  const strips = work.jobs.flatMap((job) => handbookStrips(job, stock));
  return finishLayout({ strips, work, demands, stock });
}
