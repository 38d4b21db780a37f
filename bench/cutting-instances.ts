import type { Demand, Sheet, Stock } from "../src/core/layout/index.ts";
import { MM_PER_INCH } from "../src/core/measure/index.ts";

/** One fabric's pieces, in the form of bench/instances/quilts.json. */
export interface QuiltInstance {
  readonly id: string;
  readonly unit: "in" | "mm";
  readonly width: number;
  readonly items: readonly {
    readonly w: number;
    readonly h: number;
    readonly n: number;
    readonly pitch?: number;
    readonly rotate?: boolean;
  }[];
  readonly lowerBound?: number;
  readonly lowerBoundStacked?: number;
  readonly bestKnownLength?: number;
  readonly areaBound?: number;
}

/** Several stock sizes, in the form of bench/instances/cintra2008.json. */
export interface StockInstance {
  readonly name: string;
  readonly stock: readonly { readonly w: number; readonly h: number; readonly cost: number }[];
  readonly items: readonly { readonly w: number; readonly h: number; readonly n: number }[];
  readonly reported: Readonly<
    Record<"2nho" | "2nhr", { readonly bestKnownCost: number; readonly bestKnownBound: number }>
  >;
}

const FABRIC = "fabric";

export const stockOf = (q: QuiltInstance): Stock => ({
  fabricId: FABRIC,
  width: q.width,
  folds: 0,
});

export const demandsOf = (q: QuiltInstance): Demand[] =>
  q.items.map((item, i) => ({
    ...plain(`item-${i}`, item.w, item.h, item.n, item.rotate === true),
    ...(item.pitch === undefined
      ? {}
      : { shape: { kind: "nested", first: item.w, pitch: item.pitch, height: item.h } }),
  }));

export const sheetsOf = (g: StockInstance): Sheet[] =>
  g.stock.map((s, i) => ({
    id: `stock-${i}`,
    fabricId: FABRIC,
    width: s.w,
    length: s.h,
    count: Number.POSITIVE_INFINITY,
    cost: s.cost,
  }));

export const stockDemandsOf = (g: StockInstance, rotate: boolean): Demand[] =>
  g.items.map((item, i) => plain(`item-${i}`, item.w, item.h, item.n, rotate));

const plain = (id: string, w: number, h: number, count: number, rotate: boolean): Demand => ({
  id,
  fabricId: FABRIC,
  shape: { kind: "rect", first: w, pitch: w, height: h },
  count,
  turns: rotate ? "quarter" : "half",
  hand: "none",
  up: false,
  layers: 1,
  joinsAllowed: false,
  piecesEach: 1,
  pieceIds: [id],
});

/** Yards as a shop cuts them: the next eighth. */
export const yardsFor = (length: number, unit: "in" | "mm"): number =>
  Math.ceil((unit === "in" ? length : length / MM_PER_INCH) / 4.5 - 1e-9) / 8;
