import type { Brief } from "../../brief/index.ts";
import type { Demand, Yardage } from "../../layout/index.ts";
import type { Length } from "../../measure/index.ts";
import { finishingDemands } from "./finishing.ts";
import { layoutsOf } from "./layouts.ts";
import { roundDemands } from "./round-demands.ts";
import { blocksOf, finishingIn, measuresOf, piecesIn, quiltOf, recipesIn } from "./stages.ts";

/** Every stage before the cutting is planned, and what it asks of the planner. Names are checked. */
export function stagesOf(brief: Brief) {
  const m = measuresOf(brief);
  const blocks = blocksOf(brief, m);
  const quilt = quiltOf(brief, blocks);
  const cut = piecesIn(brief, m, blocks, quilt.geometry);
  const recipes = recipesIn(brief, m, cut);
  const finishing = finishingIn(brief, m, quilt.geometry);
  const rounds = roundDemands(brief, cut.blocks, recipes.demands, m.seam);
  /** With the backing's panels for fabric of another width, where one is told. */
  const asked = (width?: Length): Demand[] => [
    ...rounds,
    ...finishingDemands(finishingIn(brief, m, quilt.geometry, width), m.step),
  ];
  return { m, blocks, quilt, cut, recipes, finishing, asked };
}

/**
 * What to buy of these fabrics alone, at their stated widths, by the first plan: the same numbers as
 * in the whole answer, without the rest of it. Strip sets that feed on them are planned too. A fabric
 * that cannot give a piece has no yardage.
 */
export function boughtOf(brief: Brief, fabricIds: readonly string[]): Yardage[] {
  const plan = new Set(fabricIds);
  for (let grown = -1; grown !== plan.size; ) {
    grown = plan.size;
    for (const f of brief.fabrics)
      if (f.kind === "strip-set" && f.strips.some((s) => plan.has(s.fabric))) plan.add(f.id);
  }
  const fabrics = brief.fabrics.map((f) => ({ ...f, narrower: undefined }));
  const { m, asked } = stagesOf(brief);
  const planned = layoutsOf({ ...brief, fabrics }, m, (_, width) =>
    asked(width).filter((d) => plan.has(d.fabricId)),
  );
  return planned.yardages.filter((y) => fabricIds.includes(y.fabricId));
}
