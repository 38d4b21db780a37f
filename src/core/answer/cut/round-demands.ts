import { type Brief, type Fabric, leftAfterWash, usableWidth } from "../../brief/index.ts";
import {
  type Look,
  lookOf,
  type Place,
  placeOf,
  type RoundPlan,
  roundDemand,
  waysOf,
} from "../../fabric/index.ts";
import type { Demand } from "../../layout/index.ts";
import { knownLength, type Length } from "../../measure/index.ts";
import type { AnswerBlock } from "../types/answer.ts";

/** Wedges of one block of one piece that are taken from the fabric in one way. */
interface Round {
  readonly plan: RoundPlan;
  /** All from one place of a print. */
  readonly placed: boolean;
  readonly wedges: number;
  readonly rounds: number;
}

/**
 * The demands for wedges as their rounds ask for them. Matched and mixed rounds fix where in the
 * repeat every strip begins, and how many wedges lie which way up; a matched round of a print is cut
 * from as many repeats, laid on one another, as it has wedges. Free rounds stay as they are.
 */
export function roundDemands(
  brief: Brief,
  blocks: readonly AnswerBlock[],
  demands: readonly Demand[],
  seam: Length,
): Demand[] {
  const placed = brief.blocks.some((b) => Object.keys(b.place ?? {}).length > 0);
  if (!placed) return [...demands];
  return demands.flatMap((demand) => {
    const fabric = brief.fabrics.find((f) => f.id === demand.fabricId);
    if (demand.shape.kind !== "nested" || !fabric || fabric.kind === "plain") return [demand];
    const look = lookToCut(brief, fabric, seam);
    const rounds = roundsOf(brief, blocks, demand);
    const counted = rounds.reduce((n, r) => n + r.wedges * r.rounds, 0);
    const fixed = rounds.filter((r) => r.plan.round !== "free");
    if (fixed.length === 0 || counted !== demand.count) return [demand];
    return together(
      rounds.flatMap((r) => demandsOfRound(demand, r, fabric, look)),
      demand.id,
    );
  });
}

/** A print's repeat counts whether or not there is a photo of it. */
function lookToCut(brief: Brief, fabric: Fabric, seam: Length): Look {
  if (fabric.kind !== "print" || !fabric.repeat)
    return lookOf(fabric, brief.fabrics, brief.unit, seam).look;
  const left = leftAfterWash(fabric);
  const along = knownLength(fabric.repeat.along, brief.unit) * left.along;
  const width = usableWidth(brief, fabric);
  const across =
    fabric.repeat.across && knownLength(fabric.repeat.across, brief.unit) * left.across;
  const { id: fabricId, color } = fabric;
  const repeat = { along, ...(across && { across }) };
  return { kind: "photo", fabricId, color, width, height: along, repeat };
}

function roundsOf(brief: Brief, blocks: readonly AnswerBlock[], demand: Demand): Round[] {
  return blocks.flatMap((b): Round[] => {
    const block = brief.blocks.find((k) => k.id === b.id.split("~")[0]);
    if (!block) return [];
    const byPlace = new Map<string, Round>();
    for (const patch of b.patches) {
      if (!demand.pieceIds.includes(b.pieceOf[patch.id])) continue;
      const { at, ...place } = placeOf(block, patch, brief.unit);
      const plan = planOf(place, demand.shape.height);
      const key = JSON.stringify([plan, at]);
      const had = byPlace.get(key)?.wedges ?? 0;
      byPlace.set(key, { plan, placed: at !== undefined, wedges: had + 1, rounds: b.count });
    }
    return [...byPlace.values()];
  });
}

const planOf = ({ round, way, start }: Place, strip: Length): RoundPlan => ({
  round,
  way,
  start,
  strip,
  strips: 1,
});

function demandsOfRound(demand: Demand, r: Round, fabric: Fabric, look: Look): Demand[] {
  const count = r.wedges * r.rounds;
  if (r.plan.round === "free") return [{ ...demand, count }];
  const runs = fabric.kind === "stripe" ? fabric.runs : "across";
  const asked = roundDemand(r.plan, waysOf(r.plan, look, r.wedges, r.rounds), look, runs);
  const register = asked.register && { register: asked.register };
  if (look.kind === "photo" && r.placed && asked.register)
    return fromOnePlace({ ...demand, count }, asked.register, look, r);
  if (look.kind === "photo" && r.plan.round === "matched" && asked.register)
    return [{ ...demand, count, ...register, layers: r.wedges }];
  // A print with a way up never turns, whatever the round would like.
  if (demand.up) return [{ ...demand, count, ...register }];
  const flipped: Demand = { ...demand, ...register, count: asked.flipped, turns: "half" };
  const oneWay: Demand = {
    ...demand,
    ...register,
    count: asked.oneWay,
    shape: { ...demand.shape, pitch: demand.shape.first },
    turns: "none",
    up: true,
  };
  return [flipped, oneWay].filter((d) => d.count > 0);
}

/**
 * Wedges cut from one place of a print: as many repeats laid on one another as a round has wedges.
 * Across the fabric that place comes again with the repeat; where none is given, once. What lies
 * half round is cut at the same place of another repeat.
 */
function fromOnePlace(
  demand: Demand,
  register: NonNullable<Demand["register"]>,
  look: Extract<Look, { kind: "photo" }>,
  r: Round,
): Demand[] {
  const { first, height } = demand.shape;
  const across = look.repeat?.across ?? look.width;
  const everyAcross = Math.ceil(first / across - 1e-9) * across;
  return [
    {
      ...demand,
      shape: { kind: "nested", first, pitch: everyAcross, height },
      register: { ...register, phase: 0, everyAcross },
      turns: "none",
      layers: r.wedges,
    },
  ];
}

/** Demands that ask for the same are one; the first keeps the id, the others are numbered. */
function together(parts: readonly Demand[], id: string): Demand[] {
  const byAsk = new Map<string, Demand>();
  for (const part of parts) {
    const key = JSON.stringify({ ...part, count: 0 });
    const had = byAsk.get(key);
    byAsk.set(key, had ? { ...had, count: had.count + part.count } : part);
  }
  return [...byAsk.values()].map((d, i) => (i === 0 ? d : { ...d, id: `${id}-${i + 1}` }));
}
