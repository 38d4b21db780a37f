import type { Brief, Fabric } from "../../brief/index.ts";
import {
  type BlockLookInput,
  type Look,
  type PatchLook,
  type Place,
  placeOf,
  type RoundPlan,
  ringsOf,
  ringWidth,
  roundDemand,
  stripOf,
  type WedgeCut,
  wedgeLay,
} from "../../fabric/index.ts";
import type { Length } from "../../measure/index.ts";
import type { AnswerBlock } from "../types/answer.ts";
import type { RingsSeen, SeamsMeet, StacksSeen, WedgeRound } from "../types/look.ts";
import type { Cut } from "./looks.ts";
import { seamsOf } from "./seams.ts";

/** A round's numbers, with what the fabric stage reads of it. */
export interface RoundSeen extends WedgeRound {
  readonly plan: RoundPlan;
  readonly look: Look;
}

type Seen = BlockLookInput & { readonly wedge: WedgeCut };

/**
 * The rounds of one kind of block: for each fabric with bands or a picture, how its wedges lie and
 * what the blocks of the whole quilt come to.
 */
export function roundsOf(
  brief: Brief,
  block: AnswerBlock,
  input: Seen,
  shown: readonly PatchLook[],
  cut: Pick<Cut, "demands" | "layouts">,
): RoundSeen[] {
  const wedges = block.patches.filter(
    (p) => (p.role === "wedge-even" || p.role === "wedge-odd") && p.polygon.length === 3,
  );
  const fabrics = [...new Set(wedges.map((p) => input.fabricOf[p.id]))];
  return fabrics.flatMap((fabricId) => {
    const look = input.looks[fabricId];
    const fabric = brief.fabrics.find((f) => f.id === fabricId);
    if (!fabric || !look || look.kind === "plain") return [];
    const mine = wedges.filter((p) => input.fabricOf[p.id] === fabricId);
    const seams = seamsOf(block, mine, look, input.wedge, shown);
    const places = mine.map((p) => placeOf(input.block, p, input.unit));
    const lays = mine.flatMap((p) => shown.filter((s) => s.patchId === p.id));
    const strips = input.strips?.[block.pieceOf[mine[0].id]] ?? 1;
    const stacks = stacksOf(cut, block.pieceOf[mine[0].id]);
    return [roundSeen({ fabric, look, places, lays, strips, input, block, stacks, seams })];
  });
}

/** Strips cut in layers, repeat on repeat, that a piece comes from. */
function stacksOf({ demands, layouts }: Pick<Cut, "demands" | "layouts">, piece: string) {
  const mine = demands.filter((d) => d.layers > 1 && d.register && d.pieceIds.includes(piece));
  const [demand] = mine;
  if (!demand) return undefined;
  const strips = layouts
    .flatMap((l) => l.strips)
    .filter((s) => s.runs.some((r) => mine.some((d) => d.id === r.demandId)));
  const count = strips.reduce((n, s) => n + s.times, 0);
  if (count === 0) return undefined;
  return {
    layers: demand.layers,
    layer: strips[0].height,
    stacks: count / demand.layers,
    length: strips.reduce((sum, s) => sum + s.times * s.height, 0),
  };
}

interface RoundInput {
  readonly fabric: Fabric;
  readonly look: Look;
  readonly places: readonly Place[];
  readonly lays: readonly PatchLook[];
  readonly strips: number;
  readonly input: Seen;
  readonly block: AnswerBlock;
  readonly stacks?: StacksSeen | undefined;
  readonly seams: readonly SeamsMeet[];
}

function roundSeen(r: RoundInput): RoundSeen {
  const [place] = r.places;
  const alike = r.places.every((p) => samePlace(p, place));
  const plan: RoundPlan = {
    round: place.round,
    way: place.way,
    start: place.start,
    strip: stripOf(r.input.wedge),
    strips: r.strips,
  };
  const wedges = r.lays.length;
  const up = r.lays.filter((l) => l.way === "up").length;
  const { count } = r.block;
  const ups = alike
    ? Array.from({ length: count }, (_, i) => upsIn(plan, r.look, wedges, i))
    : Array.from({ length: count }, () => up);
  const blocksUp = ups.filter((n) => n === wedges).length;
  const blocksDown = ups.filter((n) => n === 0).length;
  const total = ups.reduce((a, b) => a + b, 0);
  const ways = { up: total, down: wedges * count - total };
  const runs = r.fabric.kind === "stripe" ? r.fabric.runs : "across";
  const { spare } = roundDemand(plan, ways, r.look, runs);
  const rings = ringsSeen(r);
  const widths = rings.flatMap((x) => x.rings.map(ringWidth));
  return {
    fabricId: r.fabric.id,
    round: alike ? place.round : "by-place",
    way: place.way,
    start: place.start,
    ...(place.tilt !== undefined && { tilt: place.tilt }),
    ...(alike && place.at && r.look.kind === "photo" && { at: place.at }),
    ...(r.stacks && { stacks: r.stacks }),
    wedges,
    up,
    down: wedges - up,
    blocksUp,
    blocksDown,
    blocksMixed: count - blocksUp - blocksDown,
    spare: alike ? spare.up + spare.down : 0,
    rings,
    seams: r.seams,
    ...(widths.length > 0 && { narrowest: Math.min(...widths) }),
    plan,
    look: r.look,
  };
}

const samePlace = (p: Place, q: Place): boolean =>
  p.round === q.round &&
  p.way === q.way &&
  p.start === q.start &&
  p.tilt === q.tilt &&
  p.at?.x === q.at?.x &&
  p.at?.y === q.at?.y &&
  p.at?.turn === q.at?.turn;

function upsIn(plan: RoundPlan, look: Look, wedges: number, block: number): number {
  let up = 0;
  for (let rank = 0; rank < wedges; rank++)
    if (wedgeLay(plan, rank, look, wedges, block).way === "up") up++;
  return up;
}

/** Rings of each way and start that occur; bands askew make none, a picture none. */
function ringsSeen({ look, lays, places, input }: RoundInput): RingsSeen[] {
  if (look.kind !== "bands") return [];
  if (places.some((p) => (p.tilt ?? look.tilt) !== 0)) return [];
  const seen = new Map<string, RingsSeen>();
  for (const { way, start } of lays) {
    const key = `${way} ${start.toFixed(9)}`;
    if (seen.has(key)) continue;
    seen.set(key, { way, start, rings: ringsOf(look, input.wedge, way, start) });
  }
  return [...seen.values()].sort((p, q) =>
    p.way === q.way ? p.start - q.start : p.way === "up" ? -1 : 1,
  );
}

/** Only what the answer keeps. */
export const roundPlain = ({ plan: _plan, look: _look, ...round }: RoundSeen): WedgeRound => round;

/** Narrowest ring of all rounds, with the fabric that shows it. */
export function narrowestRing(
  rounds: readonly WedgeRound[],
): { readonly fabricId: string; readonly width: Length } | undefined {
  const all = rounds.flatMap((r) =>
    r.narrowest === undefined ? [] : [{ fabricId: r.fabricId, width: r.narrowest }],
  );
  return all.sort((p, q) => p.width - q.width)[0];
}
