import type { Length } from "../measure/index.ts";
import { columnsOf } from "./leftover.ts";
import type { Demand, DemandShape, FabricLayout, Placement, Strip } from "./types.ts";

/** One step at the cutting table: so many cuts with the ruler set to one size. */
export interface CutStep {
  readonly number: number;
  /** straighten the end; cut strips; subcut along them; divide a stacked column; trim to height. */
  readonly op: "straighten" | "strip" | "subcut" | "divide" | "trim";
  /** What the ruler is set to. For nested pieces the length of the first one's wide edge. */
  readonly size: Length;
  readonly cuts: number;
  /** Place in the layout's strips; absent when straightening. */
  readonly strip?: number;
  readonly demandId?: string;
  /** Copies of the demand this step gives. */
  readonly copies?: number;
}

export interface CuttingOrder {
  readonly fabricId: string;
  readonly steps: readonly CutStep[];
  /** Cuts with the knife, and changes of the ruler's setting. */
  readonly cuts: number;
  readonly settings: number;
}

/**
 * The layout as a numbered sequence: straighten, then each kind of strip (long and tall first, as
 * the layout has them) cut as often as it is wanted, then subcut from the left with few changes of
 * the ruler. Layers are cut together.
 */
export function cuttingOrder(layout: FabricLayout, demands: readonly Demand[]): CuttingOrder {
  const shapes = new Map(demands.map((d) => [d.id, d.shape]));
  const steps: Omit<CutStep, "number">[] = [];
  if (layout.strips.length > 0) steps.push({ op: "straighten", size: 0, cuts: 1 });
  layout.strips.forEach((strip, i) => {
    steps.push({ op: "strip", size: strip.height, cuts: strip.times, strip: i });
    for (const column of columnsOf(strip.runs))
      steps.push(...columnSteps(column, strip, i, layout.width, shapes));
  });
  const numbered = steps.map((step, i) => ({ number: i + 1, ...step }));
  const settings = numbered.filter((s, i) => i === 0 || s.size !== numbered[i - 1].size).length;
  return {
    fabricId: layout.fabricId,
    steps: numbered,
    cuts: numbered.reduce((t, s) => t + s.cuts, 0),
    settings,
  };
}

function columnSteps(
  column: readonly Placement[],
  strip: Strip,
  index: number,
  width: Length,
  shapes: ReadonlyMap<string, DemandShape>,
): Omit<CutStep, "number">[] {
  const [run] = column;
  const common = { strip: index, demandId: run.demandId };
  const room = width / strip.layers;
  const shape = run.segment ? undefined : shapes.get(run.demandId);
  const size = !shape ? run.width : run.turned ? shape.height : shape.first;
  const copies = column.reduce((t, r) => t + r.copies, 0);
  const gives = copies * strip.times * (run.mirrorId ? 1 : strip.layers);
  const ends = run.x + run.width < room * (1 - 1e-9) || strip.layers === 2;
  // Each copy needs the cut at its far side; the last one only when the strip goes on. A nested
  // run needs one more, for the slant its first copy begins with.
  const nested = shape !== undefined && shape.pitch < shape.first;
  const subcuts = run.copies - (ends ? 0 : 1) + (nested ? 1 : 0);
  const top = Math.max(...column.map((r) => r.y + r.height));
  const steps: Omit<CutStep, "number">[] = [];
  if (subcuts > 0)
    steps.push({
      op: "subcut",
      size,
      cuts: subcuts * strip.times,
      ...common,
      copies: gives,
    });
  if (column.length > 1)
    steps.push({
      op: "divide",
      size: run.height,
      cuts: (column.length - 1) * strip.times,
      ...common,
    });
  if (top < strip.height * (1 - 1e-9) || run.y > 0)
    steps.push({ op: "trim", size: top, cuts: strip.times, ...common });
  return steps;
}
