import type { Brief } from "../../brief/index.ts";
import {
  cuttingOrder,
  type Demand,
  type FabricLayout,
  type FabricPlan,
  handLedger,
  offerWedges,
  type Sheet,
  type SheetPlan,
  type WasteWedge,
  waysUp,
} from "../../layout/index.ts";
import type { Length } from "../../measure/index.ts";
import type { Piece } from "../../piece/index.ts";
import type { Recipe } from "../../recipe/index.ts";
import type {
  FabricCutting,
  HandsLedger,
  Narrower,
  OrderFrom,
  WaysLaid,
} from "../types/cutting.ts";
import { isOffcut } from "./offcuts.ts";

/** Most layers a rotary cutter is trusted with: common practice, no source. */
const LAYERS = 4;

export interface CuttingInput {
  readonly brief: Brief;
  readonly plans: readonly FabricPlan[];
  readonly layouts: readonly FabricLayout[];
  readonly demands: readonly Demand[];
  readonly pieces: readonly Piece[];
  readonly recipes: readonly Recipe[];
  readonly narrower: readonly Narrower[];
}

/** Cutting order, hands, ways and usable waste of every fabric, read from its finished plan. */
export function cuttingOf(input: CuttingInput): FabricCutting[] {
  return input.layouts.map((layout, i) => {
    const plan = input.plans[i];
    const set = input.brief.fabrics.find((f) => f.id === layout.fabricId)?.kind === "strip-set";
    const cut = plan.pieces && plan.pieces.sheets.length > 0 ? plan.pieces : undefined;
    const waste = wasteOf(layout, input);
    const own = input.demands.filter((d) => d.fabricId === layout.fabricId);
    const narrower = input.narrower.find((n) => n.fabricId === layout.fabricId);
    return {
      fabricId: layout.fabricId,
      ...(set && { sets: layout.strips.reduce((n, s) => n + s.times, 0) }),
      ...(cut && { pieces: cut, sheets: plan.sheets }),
      orders: [
        ...onPieces(layout, cut, inHand),
        fromBolt(plan, layout),
        ...onPieces(layout, cut, isOffcut),
      ].flatMap(({ from, layout: l }): OrderFrom[] =>
        l.strips.length > 0 ? [{ from, ...cuttingOrder(l, own) }] : [],
      ),
      hands: handsOf(layout.fabricId, input),
      ways: waysOf([...onPieces(layout, cut, inHand).map((p) => p.layout), layout], own),
      waste,
      // A gap lies the other way up than what was cut beside it.
      offers: offerWedges(
        waste,
        own.filter((d) => !d.up),
      ).offers,
      ...(narrower && { narrower }),
    };
  });
}

interface CutFrom {
  readonly from: string;
  readonly layout: FabricLayout;
}

/** Each kind of piece that is cut, as a layout of its own, its strips as often as it is cut. */
const onPieces = (
  layout: FabricLayout,
  plan: SheetPlan | undefined,
  which: (sheetId: string) => boolean,
): CutFrom[] =>
  (plan?.sheets ?? [])
    .filter((s) => which(s.sheetId))
    .map((s) => {
      const strips = s.strips.map((strip) => ({ ...strip, times: strip.times * s.times }));
      return { from: s.sheetId, layout: { ...layout, width: s.width, strips } };
    });

/** Pieces in hand of one size that are cut alike: how many, and the layout of one of them. */
export interface InHandLayout {
  readonly sheet: Sheet;
  readonly times: number;
  /** The strips run along the piece's length, not across its width. */
  readonly turned: boolean;
  /** Room for strips one after another. */
  readonly room: Length;
  readonly layout: FabricLayout;
}

/** What is cut from the maker's own pieces, in the order they are cut. */
export function inHandLayouts(
  cutting: Pick<FabricCutting, "pieces" | "sheets">,
  bolt: FabricLayout,
): InHandLayout[] {
  return (cutting.pieces?.sheets ?? []).flatMap((s): InHandLayout[] => {
    const sheet = cutting.sheets?.find((x) => x.id === s.sheetId);
    if (!sheet || isOffcut(s.sheetId)) return [];
    const length = s.strips.reduce((t, x) => t + x.times * x.height, 0);
    const layout = { ...bolt, width: s.width, strips: s.strips, length, leftovers: s.leftovers };
    return [{ sheet, times: s.times, turned: s.turned, room: s.length, layout }];
  });
}

const inHand = (sheetId: string): boolean => !isOffcut(sheetId);

/** Long cuts and the rest as they are cut: the offcuts have an order of their own. */
const fromBolt = ({ long, bolt }: FabricPlan, layout: FabricLayout): CutFrom => ({
  from: "bolt",
  layout: { ...layout, strips: [...(long?.strips ?? []), ...bolt.strips] },
});

function handsOf(fabricId: string, { brief, pieces, demands }: CuttingInput): HandsLedger[] {
  const handed = new Set(demands.flatMap((d) => (d.hand === "none" ? [] : d.pieceIds)));
  const reversible = brief.fabrics.find((f) => f.id === fabricId)?.reversible ?? false;
  const own = pieces.filter((p) => p.fabricId === fabricId && handed.has(p.id));
  return own.flatMap((p): HandsLedger[] => {
    const twin = own.find((q) => q.id === p.mirrorId);
    if (p.hand === "none" || (twin && p.hand === "right")) return [];
    const other = twin?.count ?? 0;
    const needed =
      p.hand === "left"
        ? { left: p.count, right: other, reversible }
        : { left: other, right: p.count, reversible };
    return [
      {
        pieceIds: twin ? [p.id, twin.id] : [p.id],
        needed,
        rows: handLedger(needed, LAYERS),
      },
    ];
  });
}

const waysOf = (layouts: readonly FabricLayout[], demands: readonly Demand[]): WaysLaid[] =>
  demands
    .filter((d) => d.shape.kind === "nested")
    .map((d) => {
      const all = layouts.map((l) => waysUp(l, d));
      const sum = (way: "up" | "down") => all.reduce((n, w) => n + w[way], 0);
      return { demandId: d.id, up: sum("up"), down: sum("down") };
    });

/** Gaps between wedges cut all one way, and what a sliced half square leaves: both true wedges. */
function wasteOf(layout: FabricLayout, input: CuttingInput): WasteWedge[] {
  return [...gapsOf(layout, input), ...slicesOf(layout.fabricId, input)];
}

function gapsOf(layout: FabricLayout, { demands, recipes }: CuttingInput): WasteWedge[] {
  return demands.flatMap((d): WasteWedge[] => {
    if (d.fabricId !== layout.fabricId || d.shape.kind !== "nested") return [];
    if (d.shape.pitch < d.shape.first - 1e-9) return [];
    const recipe = recipes.find((r) => d.pieceIds.includes(r.pieceId) && r.kind === "wedge");
    const [base, tip] = recipe?.cuts[1]?.lengths ?? [];
    if (base === undefined || tip === undefined) return [];
    const count = layout.strips
      .flatMap((s) => s.runs.map((r) => ({ s, r })))
      .filter(({ r }) => r.demandId === d.id)
      .reduce((n, { s, r }) => n + s.times * s.layers * (r.copies - 1), 0);
    if (count === 0) return [];
    const wedge = { height: d.shape.height, base: base - tip, count };
    return [{ id: `gap-${d.id}`, fabricId: d.fabricId, ...wedge }];
  });
}

/** The corner of a half square has 45 degrees; the slice lies square to the line that halves it. */
const SLICE = 2 * Math.tan(Math.PI / 8);

function slicesOf(fabricId: string, { pieces, recipes }: CuttingInput): WasteWedge[] {
  return recipes.flatMap((r): WasteWedge[] => {
    const piece = pieces.find((p) => p.id === r.pieceId && p.fabricId === fabricId);
    const slice = r.cuts.find((c) => c.op === "slice");
    if (r.kind !== "half-square-sliced" || !piece || !slice) return [];
    const [height] = slice.lengths;
    return [
      { id: `slice-${piece.id}`, fabricId, height, base: height * SLICE, count: piece.count },
    ];
  });
}
