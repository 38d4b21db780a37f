import { sideIsFixed } from "../../block/index.ts";
import { type Brief, blockIn, type WedgeBlock } from "../../brief/index.ts";
import { knownLength, type Length, printLength, type Step } from "../../measure/index.ts";
import {
  type FreeLength,
  missedBy,
  planByBlocks,
  planByLength,
  type SizePlan,
  type TopShape,
  type Wanted,
} from "../../quilt/index.ts";
import { halfAcross } from "../../recipe/index.ts";
import { type Measures, rulerFor } from "../cut/stages.ts";
import { nextBorder } from "../words/edges.ts";
import { outerFabric } from "../words/roles.ts";
import { FREE_SIDE, leastSide } from "../words/size.ts";
import { type Change, changed } from "../words/word.ts";

/** One block of the quilt, finished. */
export type Finished = TopShape["block"];

/** The shape of the quilt as it is now. */
export function shapeNow(b: Brief, block: Finished): TopShape {
  const { arrangement, sashing, borders } = b.quilt;
  return {
    arrangement,
    block,
    sash: sashing && takesSashing(b.quilt) ? knownLength(sashing.width, b.unit) : 0,
    borders: borders.reduce((sum, x) => sum + knownLength(x.width, b.unit), 0),
  };
}

/** The kinds of block in the plan. */
function kindsOf(b: Brief) {
  const named = new Set(b.quilt.plan.flat().map(blockIn));
  return b.blocks.filter((k) => named.has(k.id));
}

/** All kinds in the plan, where every one is a wedge block with a side that can be chosen. */
function floating(b: Brief): WedgeBlock[] {
  const kinds = kindsOf(b);
  const free = kinds.filter(
    (k): k is WedgeBlock =>
      k.kind === "wedges" && (FREE_SIDE.includes(k.setting) || k.setting === "sectors"),
  );
  return free.length === kinds.length ? free : [];
}

/** All kinds in the plan, where every one is a wedge block as large as one strip makes it. */
function fixedByStrip(b: Brief): WedgeBlock[] {
  const kinds = kindsOf(b);
  const fixed = kinds.filter(
    (k): k is WedgeBlock =>
      k.kind === "wedges" && sideIsFixed(k.setting) && k.strip === (kinds[0] as WedgeBlock).strip,
  );
  return fixed.length === kinds.length ? fixed : [];
}

/** Half and half again of what it is now: further away it is another design. */
const SMALLER = 1 / 2;
const LARGER = 3 / 2;

function sideFree(b: Brief, m: Measures, block: Finished, now: TopShape): FreeLength[] {
  const kinds = floating(b);
  if (kinds.length === 0) return [];
  const least = Math.max(...kinds.map((k) => leastSide(b, k, k.setting)));
  const room = kinds.every((k) => k.setting === "deep") ? 0 : m.step.size.valueOf();
  return [
    {
      way: "float",
      now: block.width,
      least: Math.max(least + room, block.width * SMALLER),
      most: block.width * LARGER,
      shape: (x) => ({ ...now, block: { width: x, height: x } }),
    },
  ];
}

function stripFree(b: Brief, m: Measures, now: TopShape): FreeLength[] {
  const [first] = fixedByStrip(b);
  if (!first) return [];
  const ruler = rulerFor(b, first.n);
  const strip = knownLength(first.strip, b.unit);
  const side = (x: Length): Length => 2 * halfAcross(ruler, x, m.seam);
  return [
    {
      way: "strip",
      now: strip,
      least: Math.max(ruler.shortest ?? 0, strip * SMALLER),
      most: Math.min(ruler.longest ?? Number.POSITIVE_INFINITY, strip * LARGER),
      shape: (x) => ({ ...now, block: { width: side(x), height: side(x) } }),
    },
  ];
}

/** Sashes lie straight between the blocks of straight rows and of rows on point, nowhere else. */
export const takesSashing = ({ arrangement, offset }: Brief["quilt"]): boolean =>
  arrangement === "on-point" || (arrangement === "rows" && !offset);

/** Wider than the allowances that lie under it; at most half a block. */
function sashFree(b: Brief, m: Measures, block: Finished, now: TopShape): FreeLength[] {
  if (!takesSashing(b.quilt)) return [];
  const most = Math.max(now.sash, Math.min(block.width, block.height) / 2);
  const shape = (sash: Length): TopShape => ({ ...now, sash });
  return [
    { way: "sashing", now: now.sash, least: 2 * m.seam + m.step.size.valueOf(), most, shape },
  ];
}

/** The outermost border, at most as wide as a block. */
function borderFree(b: Brief, m: Measures, block: Finished, now: TopShape): FreeLength[] {
  const last = b.quilt.borders.at(-1);
  const width = last ? knownLength(last.width, b.unit) : 0;
  const others = now.borders - width;
  const shape = (x: Length): TopShape => ({ ...now, borders: others + x });
  const most = Math.max(width, Math.min(block.width, block.height));
  return [{ way: "borders", now: width, least: 2 * m.seam + m.step.size.valueOf(), most, shape }];
}

/** The nearest this quilt comes to a size by blocks alone and by each length that is free in it. */
export function plansFor(b: Brief, m: Measures, block: Finished, wanted: Wanted): SizePlan[] {
  const now = shapeNow(b, block);
  const free = [
    ...sideFree(b, m, block, now),
    ...stripFree(b, m, now),
    ...sashFree(b, m, block, now),
    ...borderFree(b, m, block, now),
  ];
  return [planByBlocks(now, wanted), ...free.flatMap((f) => planByLength(f, wanted, m.step) ?? [])];
}

/** Nearest first, by whole steps of the ruler; of equals the one that changes less stays first. */
export function byNearness(plans: readonly SizePlan[], step: Step): SizePlan[] {
  const size = step.size.valueOf();
  const steps = (p: SizePlan): number => Math.ceil(missedBy(p) / size - 1e-6);
  return [...plans].sort((p, q) => steps(p) - steps(q));
}

/** The change that carries out a plan: rows, columns and the one length. */
export const planChange =
  (b: Brief, plan: SizePlan, step: Step): Change =>
  (d) => {
    d.quilt.rows = plan.rows;
    d.quilt.columns = plan.columns;
    if (plan.length === undefined) return;
    const text = printLength(plan.length, step);
    const named = new Set(kindsOf(b).map((k) => k.id));
    if (plan.way === "float" || plan.way === "strip")
      for (const k of d.blocks)
        if (named.has(k.id) && k.kind === "wedges") {
          if (plan.way === "strip") {
            k.strip = text;
            delete k.side;
          } else k.side = text;
        }
    if (plan.way === "sashing")
      d.quilt.sashing = {
        ...(d.quilt.sashing ?? { fabric: outerFabric(d, d.blocks[0]) }),
        width: text,
      };
    if (plan.way === "borders") {
      if (d.quilt.borders.length === 0) d.quilt.borders.push(nextBorder(d));
      d.quilt.borders[d.quilt.borders.length - 1].width = text;
    }
  };

/** The brief that carries out a plan. Sizes are left out. */
export const withPlan = (b: Brief, plan: SizePlan, step: Step): Brief =>
  changed(b, (d) => {
    delete d.sizes;
    planChange(b, plan, step)(d);
  });
