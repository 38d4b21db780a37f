import type { Length } from "../measure/index.ts";
import { copiesIn, layerWidth, laysOf } from "./lay.ts";
import type { Demand, FabricLayout, Stock } from "./types.ts";

/** What a narrower fabric changes for one demand: copies a strip gives, laid as it stands. */
export interface WidthChange {
  readonly demandId: string;
  readonly atWide: number;
  readonly atNarrow: number;
}

export interface WidthChanges {
  /** Only the demands that lose by it; none means: say so. */
  readonly demands: readonly WidthChange[];
  /** Length the narrower fabric needs beyond the wider. */
  readonly more: Length;
}

/** Which pieces lose one or more a strip on narrower fabric, and how much more length that takes. */
export function whatNarrowerChanges(
  demands: readonly Demand[],
  wide: { readonly stock: Stock; readonly layout: FabricLayout },
  narrow: { readonly stock: Stock; readonly layout: FabricLayout },
): WidthChanges {
  const own = demands.filter((d) => d.fabricId === wide.stock.fabricId && d.count > 0);
  const changes = own.flatMap((d): WidthChange[] => {
    const atWide = perStrip(d, wide.stock);
    const atNarrow = perStrip(d, narrow.stock);
    return atWide === atNarrow ? [] : [{ demandId: d.id, atWide, atNarrow }];
  });
  return { demands: changes, more: narrow.layout.length - wide.layout.length };
}

const perStrip = (demand: Demand, stock: Stock): number => {
  const layers = stock.folds === 1 ? 2 : 1;
  const lay = laysOf(demand)[0];
  return copiesIn(lay, layerWidth(stock, layers)) * layers;
};
