import { MaxRectsPacker } from "maxrects-packer";
import type { QuiltInstance } from "./cutting-instances.ts";

/**
 * Length a general-purpose rectangle packer needs, as a comparison only: its layouts cannot be cut
 * in strips, and it knows no nesting, so a wedge is given half its box (its run's pitch).
 */
export function packedLength(q: QuiltInstance): number {
  const scale = 8;
  const most = q.items.reduce((t, item) => t + item.n * Math.max(item.w, item.h), 0) * scale;
  const fits = (height: number): number | undefined => {
    const packer = new MaxRectsPacker(q.width * scale, height, 0, {
      smart: true,
      pot: false,
      square: false,
      allowRotation: true,
      border: 0,
    });
    packer.addArray(
      q.items.flatMap((item) =>
        Array.from({ length: item.n }, () => ({
          width: Math.round((item.pitch ?? item.w) * scale),
          height: Math.round(item.h * scale),
          allowRotation: item.rotate === true,
        })),
      ) as never[],
    );
    return packer.bins.length === 1 ? packer.bins[0].height : undefined;
  };
  let low = Math.floor((q.areaBound ?? 1) * scale);
  let high = Math.ceil(most);
  let best = Number.POSITIVE_INFINITY;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    const height = fits(middle);
    if (height === undefined) low = middle + 1;
    else {
      best = Math.min(best, height);
      high = Math.min(middle, height);
    }
  }
  return best / scale;
}
