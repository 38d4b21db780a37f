import { type Answer, changed, stagesOf } from "../answer/index.ts";
import { type Brief, type Fabric, leftAfterWash, usableWidth } from "../brief/index.ts";
import { type StockPiece, setWidth } from "../fabric/index.ts";
import {
  type Demand,
  type FabricToPlan,
  planQuilt,
  type QuiltPlan,
  type Sheet,
} from "../layout/index.ts";
import { knownLength, type Length } from "../measure/index.ts";

/** A design, by the name of its file or its title. */
export interface NamedDesign {
  readonly name: string;
  readonly brief: Brief;
  /** Where it is kept, for who wants to open it. */
  readonly id?: string;
}

/** One fabric of a project: which fabric of the list it is cut from, and what is left of that. */
export interface Taken {
  readonly fabricId: string;
  readonly stock: string;
  /** Of the bolt, straightening in it; 0 where pieces alone are enough. */
  readonly fromBolt: Length;
  readonly boltLeft: Length;
  readonly pieces: number;
}

/** What can be made of what is here: a design, how many times, from what, with its layout. */
export interface Project {
  readonly design: NamedDesign;
  readonly times: number;
  readonly taken: readonly Taken[];
  readonly plan: QuiltPlan;
  /** What its layouts are drawn with: as many copies of everything as are made. */
  readonly drawn: Pick<Answer, "pieces" | "recipes" | "demands">;
  /** Area of fabric its pieces take, of all that is here: 0 to 1. */
  readonly uses: number;
}

/** A design that cannot be made once, and the fabrics that are short or not there. */
export interface NotMade {
  readonly design: NamedDesign;
  readonly short: readonly string[];
}

export interface FromHere {
  readonly projects: readonly Project[];
  readonly notMade: readonly NotMade[];
  readonly done: number;
  readonly all: number;
}

/** Most of one design that are looked for. */
const MOST_TIMES = 24;

/**
 * Designs that the fabric of a stock list makes, each as often as it can, most fabric used first. A
 * design's fabric is cut from the one of the same name in the list; fabrics without one take what is
 * left, largest need from the largest there is. Everything is cut by the planner from the very pieces:
 * quarters, strips and scraps first, then one bolt a fabric. Backing is left out. What a design washes
 * before it is cut is measured washed. Lengths in each design's own unit. A step of the generator for
 * every design.
 */
export function* fromStock(
  designs: readonly NamedDesign[],
  stock: readonly StockPiece[],
): Generator<FromHere, FromHere> {
  const projects: Project[] = [];
  const notMade: NotMade[] = [];
  const told = (done: number): FromHere => ({
    projects: [...projects].sort(
      (a, b) => b.uses - a.uses || a.design.name.localeCompare(b.design.name),
    ),
    notMade,
    done,
    all: designs.length,
  });
  for (const [i, design] of designs.entries()) {
    const made = mostOf(design, stock);
    if ("times" in made) projects.push(made);
    else notMade.push(made);
    yield told(i + 1);
  }
  return told(designs.length);
}

function mostOf(design: NamedDesign, stock: readonly StockPiece[]): Project | NotMade {
  const brief = changed(design.brief, (d) => {
    delete d.sizes;
    delete d.finishing?.backing;
  });
  const { asked, m, cut: pieces, recipes } = stagesOf(brief);
  const demands = asked();
  const named = matched(brief, demands, stock);
  const missing = named.filter((x) => x.pieces.length === 0).map((x) => x.fabric.name);
  if (missing.length > 0) return { design, short: missing };
  const cut = (times: number): QuiltPlan | string[] => {
    const copies = demands.map((d) => ({ ...d, count: d.count * times }));
    const fabrics = toPlan(brief, named, m.seam);
    const plan = planQuilt(copies, fabrics);
    const short = named.filter((x) => {
      const p = plan.fabrics.find((f) => f.fabricId === x.fabric.id);
      if (!p || p.length <= 1e-9) return false;
      const blocked = [...p.bolt.findings, ...(p.long?.findings ?? [])].length > 0;
      return blocked || p.length + m.straighten > boltOf(x, brief) + 1e-9;
    });
    return short.length > 0 ? short.map((x) => x.fabric.name) : plan;
  };
  const once = cut(1);
  if (Array.isArray(once)) return { design, short: once };
  let best = { times: 1, plan: once };
  for (let times = 2; times <= MOST_TIMES; times++) {
    const plan = cut(times);
    if (Array.isArray(plan)) break;
    best = { times, plan };
  }
  const all = areaOf(stock, brief);
  const area = demands.reduce((t, d) => t + d.count * d.shape.pitch * d.shape.height, 0);
  return {
    design,
    ...best,
    drawn: {
      pieces: pieces.pieces,
      recipes: recipes.recipes,
      demands: best.plan.fabrics.flatMap((f) => f.demands),
    },
    uses: all > 0 ? Math.min(1, (area * best.times) / all) : 0,
    taken: named.map((x): Taken => {
      const p = best.plan.fabrics.find((f) => f.fabricId === x.fabric.id);
      const fromBolt = p && p.length > 1e-9 ? p.length + m.straighten : 0;
      return {
        fabricId: x.fabric.id,
        stock: x.pieces[0].fabric,
        fromBolt,
        boltLeft: Math.max(0, boltOf(x, brief) - fromBolt),
        pieces: p?.pieces?.sheets.reduce((n, s) => n + s.times, 0) ?? 0,
      };
    }),
  };
}

interface Matched {
  readonly fabric: Fabric;
  readonly pieces: readonly StockPiece[];
}

const sameName = (a: string, b: string): boolean =>
  a.trim().toLowerCase() === b.trim().toLowerCase();

/** Which fabric of the list each fabric that is cut is taken from. */
function matched(
  brief: Brief,
  demands: readonly Demand[],
  stock: readonly StockPiece[],
): Matched[] {
  const needs = new Map<string, number>();
  const add = (id: string, area: number): void => {
    needs.set(id, (needs.get(id) ?? 0) + area);
  };
  for (const d of demands) {
    const f = brief.fabrics.find((x) => x.id === d.fabricId);
    const area = d.count * d.shape.pitch * d.shape.height;
    if (f?.kind === "strip-set") for (const s of f.strips) add(s.fabric, area / f.strips.length);
    else add(d.fabricId, area);
  }
  const used = brief.fabrics.filter((f) => f.kind !== "strip-set" && needs.has(f.id));
  const names = [...new Set(stock.map((p) => p.fabric.trim().toLowerCase()))];
  const of = (name: string): StockPiece[] => stock.filter((p) => sameName(p.fabric, name));
  const taken = new Set(used.flatMap((f) => names.filter((n) => sameName(n, f.name))));
  const free = names
    .filter((n) => !taken.has(n))
    .sort((a, b) => areaOf(of(b), brief) - areaOf(of(a), brief));
  const byNeed = [...used].sort((a, b) => (needs.get(b.id) ?? 0) - (needs.get(a.id) ?? 0));
  return byNeed.map((fabric) => {
    const own = of(fabric.name);
    return { fabric, pieces: own.length > 0 ? own : of(free.shift() ?? "\u0000") };
  });
}

const widthOf = (p: StockPiece, brief: Brief): Length =>
  knownLength(p.width ?? brief.fabrics[0].usable, brief.unit);

const areaOf = (pieces: readonly StockPiece[], brief: Brief): number =>
  pieces.reduce((t, p) => t + p.count * widthOf(p, brief) * knownLength(p.length, brief.unit), 0);

/** A piece as it is cut: washed first where its fabric is. */
function asCut(p: StockPiece, fabric: Fabric, brief: Brief): { width: Length; length: Length } {
  const { along, across } = leftAfterWash(fabric);
  const bought = knownLength(p.width ?? fabric.usable, brief.unit);
  return { width: bought * across, length: knownLength(p.length, brief.unit) * along };
}

/** The longest bolt is cut as a bolt; every other one is a piece like a scrap. */
const boltIn = ({ pieces }: Matched, brief: Brief): StockPiece | undefined =>
  [...pieces]
    .filter((p) => p.kind === "bolt")
    .sort((a, b) => knownLength(b.length, brief.unit) - knownLength(a.length, brief.unit))[0];

const boltOf = (x: Matched, brief: Brief): Length => {
  const bolt = boltIn(x, brief);
  return bolt ? asCut(bolt, x.fabric, brief).length : 0;
};

/** As wide as its bolt; without one as its design says. A set is as long as the narrowest of its own. */
function widthToCut(brief: Brief, f: Fabric, named: readonly Matched[]): Length {
  if (f.kind === "strip-set") {
    const own = brief.fabrics.filter((m) =>
      f.strips.some((s) => s.fabric === m.id && m.id !== f.id),
    );
    const plain = own.filter((m) => m.kind !== "strip-set");
    return Math.min(usableWidth(brief, f), ...plain.map((m) => widthToCut(brief, m, named)));
  }
  const x = named.find((n) => n.fabric.id === f.id);
  const bolt = x && boltIn(x, brief);
  return bolt ? asCut(bolt, f, brief).width : usableWidth(brief, f);
}

function toPlan(brief: Brief, named: readonly Matched[], seam: Length): FabricToPlan[] {
  return brief.fabrics.map((f): FabricToPlan => {
    const x = named.find((n) => n.fabric.id === f.id);
    const bolt = x && boltIn(x, brief);
    const width = widthToCut(brief, f, named);
    if (f.kind === "strip-set") {
      const strips = f.strips.map((s) => ({
        fabricId: s.fabric,
        cut: knownLength(s.cut, brief.unit),
      }));
      const height = setWidth(
        strips.map((s) => s.cut),
        seam,
      );
      return { stock: { fabricId: f.id, width, folds: f.folds }, stripSet: { strips, height } };
    }
    const either = !f.directional && (f.kind === "plain" || f.kind === "print");
    const inHand = (x?.pieces ?? []).flatMap((p, i): Sheet[] => {
      const count = p.count - (p === bolt ? 1 : 0);
      if (count < 1) return [];
      return [
        {
          id: `${f.id}-in-hand-${i + 1}`,
          fabricId: f.id,
          ...asCut(p, f, brief),
          count,
          ...(either && { eitherWay: true }),
        },
      ];
    });
    return {
      stock: { fabricId: f.id, width, folds: f.folds },
      ...(inHand.length > 0 && { inHand }),
    };
  });
}
