import type { Reading } from "./reading.ts";
import type { Stuck } from "./stuck.ts";
import { cuts, hands } from "./try-cuts.ts";
import { buys, reads, sizes } from "./try-head.ts";
import { finishes, sews } from "./try-sewing.ts";

/**
 * Makes the quilt from the printed words alone: buys, cuts only what the list gives, joins only what
 * a step says, measures at every stop. Everything found, in the order a maker would meet it.
 */
export function tried(r: Reading): Stuck[] {
  return [
    ...reads(r),
    ...sizes(r),
    ...buys(r),
    ...cuts(r),
    ...hands(r),
    ...sews(r),
    ...finishes(r),
  ];
}
