import type { Brief, Fabric } from "../../brief/index.ts";
import type { Finding } from "../../findings/index.ts";
import {
  type Demand,
  type FabricLayout,
  type FabricPlan,
  type FabricPlanOptions,
  type FabricToPlan,
  planHandbook,
  planQuilt,
  whatNarrowerChanges,
  type Yardage,
  yardageOf,
} from "../../layout/index.ts";
import type { Length } from "../../measure/index.ts";
import type { Narrower } from "../types/cutting.ts";
import { isOffcut, withOffcuts } from "./offcuts.ts";
import type { Measures } from "./stages.ts";
import { feedsItself, stockOf } from "./stock.ts";

export interface Layouts {
  /** As the planner got them: what the brief asks of each fabric, and strips for strip sets. */
  readonly demands: readonly Demand[];
  readonly plans: readonly FabricPlan[];
  /** What each fabric's bolt must give, in one drawing. */
  readonly layouts: readonly FabricLayout[];
  readonly yardages: readonly Yardage[];
  readonly narrower: readonly Narrower[];
  readonly findings: readonly Finding[];
}

/**
 * One layout a fabric at its usable width; what to buy there and at the next narrower width. A width
 * at which a piece no longer fits has no yardage: its finding says which piece. Strip sets are sewn,
 * not bought: their strips count with the fabrics they are cut from.
 */
export function layoutsOf(
  brief: Brief,
  m: Measures,
  demandsAt: (fabricId: string, width: Length) => readonly Demand[],
  options: FabricPlanOptions = {},
): Layouts {
  const stated = planAt(brief, stockOf(brief, m.seam), demandsAt, options);
  const narrow = stockOf(brief, m.seam, true).filter(({ stock, stripSet }) => {
    const fabric = brief.fabrics.find((f) => f.id === stock.fabricId);
    return stripSet !== undefined || fabric?.narrower !== undefined;
  });
  const narrower = narrow.some((f) => !f.stripSet)
    ? planAt(brief, narrow, demandsAt, options)
    : undefined;
  const rings = brief.fabrics.filter((f) => feedsItself(brief, f));
  return {
    demands: stated.demands,
    plans: stated.plans,
    layouts: stated.layouts,
    yardages: byFabric(brief, [
      ...yardagesOf(brief, m, stated),
      ...(narrower ? yardagesOf(brief, m, narrower) : []),
    ]),
    narrower: narrower ? narrowerOf(stated, narrower) : [],
    findings: [
      ...rings.map(
        (f): Finding => ({ code: "strip-set-in-itself", severity: "blocks", place: f.id }),
      ),
      ...stated.findings.map((f): Finding => ({ ...f, severity: "blocks" })),
      ...(narrower?.findings ?? []).map((f): Finding => ({ ...f, severity: "advice" })),
    ],
  };
}

interface PlannedAt {
  readonly demands: readonly Demand[];
  readonly plans: readonly FabricPlan[];
  readonly layouts: readonly FabricLayout[];
  readonly folds: readonly (0 | 1)[];
  readonly findings: readonly Finding[];
}

function planAt(
  brief: Brief,
  fabrics: readonly FabricToPlan[],
  demandsAt: (fabricId: string, width: Length) => readonly Demand[],
  options: FabricPlanOptions,
): PlannedAt {
  const asked = fabrics.flatMap(({ stock: { fabricId, width } }) =>
    demandsAt(fabricId, width).filter((d) => d.fabricId === fabricId && d.count > 0),
  );
  const planned = planQuilt(asked, fabrics, options);
  const plans = inOrderOf(brief, planned.fabrics).filter((p) => p.demands.length > 0);
  const own = new Set(asked.map((d) => d.id));
  const fed = plans.flatMap((p) => p.demands.filter((d) => !own.has(d.id)));
  const foldsOf = (id: string) => fabrics.find((f) => f.stock.fabricId === id)?.stock.folds ?? 0;
  return {
    demands: [...asked, ...fed],
    plans,
    layouts: plans.map((p) => oneDrawing(p, foldsOf(p.fabricId))),
    folds: plans.map((p) => foldsOf(p.fabricId)),
    findings: planned.findings,
  };
}

function narrowerOf(stated: PlannedAt, narrow: PlannedAt): Narrower[] {
  return stated.layouts.flatMap((layout, i): Narrower[] => {
    const other = narrow.layouts.findIndex((l) => l.fabricId === layout.fabricId);
    if (other < 0 || narrow.layouts[other].width >= layout.width) return [];
    if (layout.unplaced.length + narrow.layouts[other].unplaced.length > 0) return [];
    const at = (p: PlannedAt, n: number) => ({
      stock: { fabricId: layout.fabricId, width: p.layouts[n].width, folds: p.folds[n] },
      layout: p.layouts[n],
    });
    const changes = whatNarrowerChanges(stated.plans[i].demands, at(stated, i), at(narrow, other));
    return [{ fabricId: layout.fabricId, width: narrow.layouts[other].width, ...changes }];
  });
}

/** The planner takes sets first; the answer keeps the brief's order. */
const inOrderOf = (brief: Brief, plans: readonly FabricPlan[]): FabricPlan[] =>
  brief.fabrics.flatMap((f) => plans.filter((p) => p.fabricId === f.id));

const byFabric = (brief: Brief, yardages: readonly Yardage[]): Yardage[] =>
  brief.fabrics.flatMap((f) => yardages.filter((y) => y.fabricId === f.id));

/**
 * Long cuts and the rest one after another on the bolt. Where pieces in hand or offcuts serve too,
 * area and the long cuts bound the whole: the planner's own bounds hold for strips of the bolt alone.
 */
function oneDrawing(plan: FabricPlan, folds: 0 | 1): FabricLayout {
  const { long, bolt, pieces, length } = plan;
  if (!long && !pieces) return bolt;
  const after = bolt.strips.map((s) => ({ ...s, from: s.from + (long?.length ?? 0) }));
  const inHand = plan.sheets.filter((s) => !isOffcut(s.id));
  const stock = { fabricId: plan.fabricId, width: bolt.width, folds };
  const handbook =
    inHand.length === 0
      ? planHandbook(plan.demands, stock).length
      : (long?.handbook ?? 0) + bolt.handbook;
  const held = inHand.reduce((t, s) => t + s.count * s.width * s.length, 0);
  // Long cuts come from the bolt whatever else does, so what they take alone bounds the whole too.
  const area = (areaOf(plan.demands) - held) / bolt.width;
  const lowerBound = Math.min(length, Math.max(0, area, long?.lowerBound ?? 0));
  return {
    ...bolt,
    strips: [...withOffcuts(plan), ...after],
    length,
    lowerBound,
    handbook: Math.max(length, handbook),
    proven: length - lowerBound <= 1e-9 * Math.max(1, length),
    leftovers: plan.leftovers,
    nearMisses: [...(long?.nearMisses ?? []), ...bolt.nearMisses],
    unplaced: [...(long?.unplaced ?? []), ...bolt.unplaced],
    findings: [...(long?.findings ?? []), ...bolt.findings],
  };
}

/** No copy takes less of its strip than its pitch. */
const areaOf = (demands: readonly Demand[]): number =>
  demands.reduce((t, { count, shape }) => t + count * shape.pitch * shape.height, 0);

function yardagesOf(brief: Brief, m: Measures, { layouts, demands }: PlannedAt): Yardage[] {
  return layouts.flatMap((layout) => {
    const fabric = brief.fabrics.find((f) => f.id === layout.fabricId);
    if (!fabric || fabric.kind === "strip-set" || layout.unplaced.length > 0) return [];
    return [yardageOf(layout, marginsOf(brief, m, fabric, demands))];
  });
}

function marginsOf(brief: Brief, m: Measures, fabric: Fabric, demands: readonly Demand[]) {
  const own = demands.filter((d) => d.fabricId === fabric.id);
  const mended = own.filter(
    (d) => d.joinsAllowed || d.shape.kind === "along" || d.id === "backing",
  );
  const across = own.filter((d) => d.register?.axis === "across");
  const along = own.flatMap((d) => (d.register?.axis === "along" ? [d.register.period] : []));
  return {
    ...m,
    unit: brief.unit,
    shrinkage: fabric.shrinkage?.length,
    mended: new Set(mended.map((d) => d.id)),
    sideBySide: new Set(across.map((d) => d.id)),
    ...(along.length > 0 && { toRepeat: Math.max(...along) }),
  };
}
