import { type BlockGeometry, BROADER_ROLES, type Patch } from "../block/index.ts";
import type { Block, Placement } from "../brief/index.ts";
import {
  andThen,
  boundingBox,
  middle,
  moving,
  type Polygon,
  type Rigid,
} from "../geometry/index.ts";
import { type Degree, knownLength, type Length, tolerances, type Unit } from "../measure/index.ts";
import { laidOn, type Piece, withoutStraightCorners } from "../piece/index.ts";
import { movedShown, shownIn } from "./bands.ts";
import { layMotion, layOnPhoto, undone, wedgeToStrip } from "./motion.ts";
import { phase } from "./repeat.ts";
import { type RoundPlan, wedgeLay } from "./rounds.ts";
import {
  type AlikePlace,
  type Lay,
  type Look,
  type Shown,
  stripOf,
  type Way,
  type WedgeCut,
} from "./types.ts";

/** Where one patch is cut from, as the brief says it, in numbers. */
export interface Place {
  readonly round: "matched" | "mixed" | "free";
  readonly way: Way;
  readonly start: Length;
  readonly tilt?: Degree;
  readonly at?: AlikePlace;
}

/** The place of a patch: by its own id, then its role, then the broader role; else free and up. */
export function placeOf(block: Block, patch: Pick<Patch, "id" | "role">, unit: Unit): Place {
  const names = [patch.id, patch.role, ...(BROADER_ROLES[patch.role] ?? [])];
  const name = names.find((n) => block.place && Object.hasOwn(block.place, n));
  const said: Placement = (name && block.place?.[name]) || { round: "free", way: "up" };
  return {
    // A place that is said leaves nothing free.
    round: said.at && said.round === "free" ? "matched" : said.round,
    way: said.way,
    start: said.start ? knownLength(said.start, unit) : 0,
    ...(said.tilt !== undefined && { tilt: said.tilt }),
    ...(said.at && {
      at: {
        x: knownLength(said.at.x, unit),
        y: knownLength(said.at.y, unit),
        turn: said.at.turn,
      },
    }),
  };
}

/** What shows in one patch of a block, in the block's frame. */
export interface PatchLook {
  readonly patchId: string;
  readonly fabricId: string;
  readonly way: Way;
  readonly start: Length;
  readonly shown: readonly Shown[];
}

export interface BlockLookInput {
  readonly block: Block;
  readonly geometry: BlockGeometry;
  /** Fabric of every patch. */
  readonly fabricOf: Readonly<Record<string, string>>;
  /** Look of every fabric. */
  readonly looks: Readonly<Record<string, Look>>;
  /** Piece of every patch; patches without one are drawn in their fabric's first color. */
  readonly pieceOf: Readonly<Record<string, Piece>>;
  /** How wedges are cut; absent for blocks without them. */
  readonly wedge?: WedgeCut;
  readonly unit: Unit;
  /** Strips the pile of pieces comes from, by piece id: matters for free rounds. 1 when unknown. */
  readonly strips?: Readonly<Record<string, number>>;
  /** Blocks of this kind dealt before this one: free rounds differ from block to block. */
  readonly dealt?: number;
}

/**
 * The real fabric in every patch of a block. Wedges lie in the strip as the ruler cuts them; every
 * other piece lies in its own frame, on the strip it is cut from. Pieces are dealt sector by sector,
 * so equal input gives equal pictures.
 */
export function blockLook(input: BlockLookInput): PatchLook[] {
  const { patches } = input.geometry;
  const piles = new Map<string, string[]>();
  for (const patch of bySector(patches)) {
    const key = groupOf(patch, input);
    piles.set(key, [...(piles.get(key) ?? []), patch.id]);
  }
  return patches.map((patch) => {
    const pile = piles.get(groupOf(patch, input)) ?? [];
    return patchLook(patch, input, pile.indexOf(patch.id), pile.length);
  });
}

const bySector = (patches: readonly Patch[]): Patch[] =>
  patches
    .map((patch, i) => ({ patch, i }))
    .sort((p, q) => (p.patch.sector ?? -1) - (q.patch.sector ?? -1) || p.i - q.i)
    .map(({ patch }) => patch);

/** Patches dealt from one pile: wedges of one fabric, or copies of one piece. */
function groupOf(patch: Patch, input: BlockLookInput): string {
  const fabric = input.fabricOf[patch.id];
  if (isWedge(patch)) return `wedge of ${fabric}`;
  return input.pieceOf[patch.id]?.id ?? `${patch.role} of ${fabric}`;
}

const isWedge = (p: Patch): boolean =>
  (p.role === "wedge-even" || p.role === "wedge-odd") && p.polygon.length === 3;

interface OnFabric {
  /** Block frame -> piece's own frame, raw lower edge on y = 0, middle on x = 0. */
  readonly toPiece: Rigid;
  readonly strip: Length;
  readonly width: Length;
}

function patchLook(patch: Patch, input: BlockLookInput, rank: number, total: number): PatchLook {
  const fabricId = input.fabricOf[patch.id];
  const look = input.looks[fabricId];
  if (!look) throw new RangeError(`${patch.id}: a look of fabric ${fabricId} expected, got none`);
  const on = onFabric(patch, input);
  const place = placeOf(input.block, patch, input.unit);
  if (!on || look.kind === "plain")
    return {
      patchId: patch.id,
      fabricId,
      way: place.way,
      start: place.start,
      shown: shownIn(patch.polygon, plain(look), moving(0, 0)),
    };
  const pileId = input.pieceOf[patch.id]?.id ?? "";
  const plan: RoundPlan = { ...place, strip: on.strip, strips: input.strips?.[pileId] ?? 1 };
  const dealt = wedgeLay(plan, rank, look, total, input.dealt ?? 0);
  const lay: Lay = {
    ...dealt,
    strip: on.strip,
    along: place.round === "free" ? spread(look, on.width, rank + total * (input.dealt ?? 0)) : 0,
    ...(place.tilt !== undefined && { tilt: place.tilt }),
  };
  const inPiece = patchIn(patch.polygon, on);
  const motion =
    place.at && look.kind === "photo"
      ? layOnPhoto(inPiece, turnedWith(place.at, dealt.way))
      : layMotion(lay, look.kind === "bands" ? look.tilt : 0);
  const shown = shownIn(inPiece, look, motion);
  return {
    patchId: patch.id,
    fabricId,
    way: dealt.way,
    start: dealt.start,
    shown: movedShown(shown, undone(on.toPiece)),
  };
}

/** On a print, down is the same place, half a turn round. */
export const turnedWith = (at: AlikePlace, way: Way): AlikePlace =>
  way === "up" ? at : { ...at, turn: at.turn > 0 ? at.turn - 180 : at.turn + 180 };

const patchIn = (polygon: Polygon, on: OnFabric): Polygon =>
  movedShown([{ polygon, band: 0, color: "", fabricId: "" }], on.toPiece)[0].polygon;

const plain = (look: Look): Look => ({
  kind: "plain",
  fabricId: look.fabricId,
  color: look.kind === "bands" ? (look.bands[0]?.color ?? "#DDDDDD") : look.color,
});

/** Pieces follow one another along the strip; a photo begins again at its repeat or its edge. */
function spread(look: Look, width: Length, nth: number): Length {
  if (look.kind !== "photo") return nth * width;
  return phase(nth * width, look.repeat?.across ?? look.width);
}

function onFabric(patch: Patch, input: BlockLookInput): OnFabric | undefined {
  if (isWedge(patch) && input.wedge) {
    const [center, from, to] = patch.polygon;
    const rim = middle(from, to);
    const toward = Math.atan2(rim.y - center.y, rim.x - center.x);
    const a = Math.hypot(rim.x - center.x, rim.y - center.y);
    const toStrip = wedgeToStrip(toward, a, input.wedge.seam);
    return {
      toPiece: andThen(moving(-center.x, -center.y), toStrip),
      strip: stripOf(input.wedge),
      width: Math.hypot(from.x - to.x, from.y - to.y),
    };
  }
  const piece = input.pieceOf[patch.id];
  if (!piece) return undefined;
  const slack = tolerances(input.unit).congruent;
  const shape = {
    finished: patch.polygon,
    allowances: patch.polygon.map(() => 0),
    outside: patch.outside,
  };
  const motion = laidOn(piece, withoutStraightCorners(shape, slack).finished, slack);
  if (!motion) return undefined;
  const box = boundingBox(piece.cut);
  const frame = moving(-(box.left + box.right) / 2, -box.bottom);
  return {
    toPiece: andThen(undone(motion), frame),
    strip: box.top - box.bottom,
    width: box.right - box.left,
  };
}
