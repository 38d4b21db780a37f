import type { Brief } from "../brief/index.ts";
import { area, centroid, distance } from "../geometry/index.ts";
import type { Answer } from "./types/answer.ts";
import { type Change, changed, MOST_CHOICES } from "./words/word.ts";

type Quilt = Brief["quilt"];

/** One word each: how the same blocks may lie. Where a plan has one cell its blocks may alternate. */
const WAYS: readonly { readonly label: string; readonly lay: (q: Quilt) => void }[] = [
  {
    label: "in straight rows",
    lay: (q) => {
      q.arrangement = "rows";
      delete q.offset;
    },
  },
  {
    label: "every second one turned",
    lay: (q) => {
      const cell = q.plan[0][0];
      const own = typeof cell === "string" ? { block: cell, quarters: 0, mirrored: false } : cell;
      const turned = { ...own, quarters: (own.quarters + 1) % 4 };
      q.plan = [
        [cell, turned],
        [turned, cell],
      ];
    },
  },
  {
    label: "every second row shifted",
    lay: (q) => {
      q.arrangement = "rows";
      q.offset = true;
    },
  },
  {
    label: "on point",
    lay: (q) => {
      q.arrangement = "on-point";
      delete q.offset;
    },
  },
];

/** Does a quarter turn lay every patch on one of the same fabric? */
function sameTurned({ patches, fabricOf }: Answer["blocks"][number]): boolean {
  const at = patches.map((p) => ({ middle: centroid(p.polygon), fabric: fabricOf[p.id] }));
  const near = Math.sqrt(patches.reduce((sum, p) => sum + area(p.polygon), 0)) * 1e-6;
  return at.every(({ middle, fabric }) => {
    const turned = { x: -middle.y, y: middle.x };
    return at.some((o) => o.fabric === fabric && distance(o.middle, turned) <= near);
  });
}

/** One way the same blocks may lie, not yet answered. */
export interface Laying {
  readonly label: string;
  readonly brief: Brief;
  readonly change: Change;
  /** The brief as it is. */
  readonly now: boolean;
}

/** At most four ways to lay the same square blocks, the one there is first. */
export function layingsOf(brief: Brief, answer: Answer): Laying[] {
  const one = brief.quilt.plan.length === 1 && brief.quilt.plan[0].length === 1;
  const turns = one && !answer.blocks.every(sameTurned);
  const fits = brief.quilt.arrangement !== "hexagon-rows" && !brief.quilt.sashing;
  const others = fits ? WAYS.filter((w) => turns || w.label !== "every second one turned") : [];
  const keyOf = ({ quilt }: Brief): string =>
    JSON.stringify([quilt.arrangement, quilt.offset ?? false, quilt.edges ?? "", quilt.plan]);
  const seen = new Set([keyOf(brief)]);
  const ways = others.flatMap(({ label, lay }): Laying[] => {
    const change: Change = (d) => {
      if (label !== "every second one turned") delete d.quilt.edges;
      lay(d.quilt);
      if (label === "on point") d.quilt.setting ??= d.fabrics[d.fabrics.length - 1].id;
    };
    const laid = changed(brief, change);
    const key = keyOf(laid);
    if (seen.has(key)) return [];
    seen.add(key);
    return [{ label, brief: laid, change, now: false }];
  });
  const asIs: Laying = { label: "as it is", brief, change: () => {}, now: true };
  return [asIs, ...ways].slice(0, MOST_CHOICES);
}
