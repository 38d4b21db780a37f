import type { Finding } from "../findings/index.ts";
import type { Length } from "../measure/index.ts";
import type { Lay } from "./lay.ts";
import { fits, layerWidth, laysOf, NOISE } from "./lay.ts";
import { registeredStrips } from "./register.ts";
import type { Demand, Stock, Strip } from "./types.ts";

/** What is to be cut in strips of so many layers: a demand, or the full-width parts of a joined one. */
export interface Job {
  readonly demandId: string;
  /** Cuts to make: copies in each layer. */
  readonly cuts: number;
  readonly layers: 1 | 2;
  readonly lays: readonly Lay[];
  /** A length of a joined strip. */
  readonly segment: boolean;
  /** The demand of the other hand that the second layer serves. */
  readonly mirrorId?: string;
}

export interface Work {
  readonly jobs: readonly Job[];
  /** Strips registered to a repeat: they come first, and nothing is planned into them. */
  readonly fixed: readonly Strip[];
  readonly unplaced: readonly { readonly demandId: string; readonly count: number }[];
  readonly findings: readonly Finding[];
}

/**
 * What the demands ask of one fabric, as jobs that each fit it. A piece too wide for the layers it
 * should be cut in is cut single; one too wide for the fabric is turned where it may be, joined
 * where that is allowed, and else refused with a finding.
 */
export function workFor(demands: readonly Demand[], stock: Stock): Work {
  const jobs: Job[] = [];
  const fixed: Strip[] = [];
  const unplaced: { demandId: string; count: number }[] = [];
  const findings: Finding[] = [];
  for (const demand of demands) {
    if (demand.fabricId !== stock.fabricId || demand.count < 1) continue;
    const registered = registeredStrips(demand, stock);
    const fitting = demand.register ? undefined : single(demand, stock);
    if (registered) fixed.push(...registered);
    else if (fitting) jobs.push(...splitByFold(demand, fitting, stock));
    else if (joinable(demand, stock)) jobs.push(...joined(demand, stock));
    else {
      unplaced.push({ demandId: demand.id, count: demand.count });
      findings.push(tooWide(demand, stock));
    }
  }
  return { jobs: pairHands(jobs, demands), fixed, unplaced, findings };
}

const single = (demand: Demand, stock: Stock): readonly Lay[] | undefined => {
  const lays = laysOf(demand).filter((lay) => fits(lay.first, stock.width));
  return lays.length > 0 ? lays : undefined;
};

function splitByFold(demand: Demand, lays: readonly Lay[], stock: Stock): Job[] {
  const base = { demandId: demand.id, segment: false };
  const open: Job = { ...base, cuts: demand.count, layers: 1, lays };
  if (stock.folds === 0) return [open];
  const double = lays.filter((lay) => fits(lay.first, layerWidth(stock, 2)));
  if (double.length === 0) return [open];
  return [{ ...base, cuts: Math.ceil(demand.count / 2), layers: 2, lays: double }];
}

/**
 * A nested piece with a hand, cut through a fold, gives one of each hand. Twins (same shape, other
 * hand) share their cuts; what has no twin is cut single, or half of it would be the wrong hand.
 */
function pairHands(jobs: readonly Job[], demands: readonly Demand[]): Job[] {
  const handed = new Map(
    demands.filter((d) => d.hand !== "none" && d.shape.kind === "nested").map((d) => [d.id, d]),
  );
  const open = new Map([...handed].map(([id, d]) => [id, d.count]));
  const out: Job[] = [];
  for (const job of jobs) {
    const demand = handed.get(job.demandId);
    if (!demand || job.layers === 1) {
      out.push(job);
      continue;
    }
    const twin = [...handed.values()].find((d) => isTwin(d, demand) && open.get(d.id)! > 0);
    const pairs = twin ? Math.min(open.get(demand.id)!, open.get(twin.id)!) : 0;
    if (twin && pairs > 0) {
      out.push({ ...job, cuts: pairs, mirrorId: twin.id });
      for (const d of [demand, twin]) open.set(d.id, open.get(d.id)! - pairs);
    }
  }
  for (const job of jobs)
    if (job.layers === 2 && (open.get(job.demandId) ?? 0) > 0)
      out.push({ ...job, cuts: open.get(job.demandId)!, layers: 1 });
  return out;
}

const isTwin = (a: Demand, b: Demand): boolean =>
  a.fabricId === b.fabricId &&
  a.hand !== b.hand &&
  a.shape.first === b.shape.first &&
  a.shape.pitch === b.shape.pitch &&
  a.shape.height === b.shape.height;

/** A fabric narrower than what a join takes never gets longer by joining. */
const joinable = (demand: Demand, stock: Stock): boolean =>
  demand.joinsAllowed && demand.shape.kind === "rect" && stock.width > (demand.joinLoss ?? 0);

/** Full widths and one part of a width, as many as make up the length once joined. */
function joined(demand: Demand, stock: Stock): Job[] {
  const { first, height } = demand.shape;
  const loss = demand.joinLoss ?? 0;
  const needed = demand.count * first;
  const step = stock.width - loss;
  const widths = Math.max(1, Math.ceil((needed - loss) / step - NOISE));
  const last = needed + (widths - 1) * loss - (widths - 1) * stock.width;
  const piece = (length: Length, cuts: number): Job => ({
    demandId: demand.id,
    cuts,
    layers: 1,
    lays: [{ first: length, pitch: length, height, turned: false }],
    segment: true,
  });
  const full = fits(stock.width, last) ? widths : widths - 1;
  const jobs = full > 0 ? [piece(stock.width, full)] : [];
  return full < widths ? [...jobs, piece(last, 1)] : jobs;
}

const tooWide = (demand: Demand, stock: Stock): Finding => ({
  code: "piece-wider-than-fabric",
  severity: "blocks",
  place: demand.id,
  needed: Math.min(...laysOf(demand).map((lay) => lay.first)),
  found: stock.width,
  words: {
    fabric: stock.fabricId,
    pieces: demand.pieceIds.join(", "),
    works: "Take a wider fabric, or let it be joined from shorter lengths.",
  },
});
