import { figureOutlines } from "../../../core/answer/look/figures.ts";
import type { Answer, AnswerBlock } from "../../../core/answer/types/answer.ts";
import type { MeetingShape } from "../../../core/answer/types/meeting.ts";
import type { Patch } from "../../../core/block/types.ts";
import {
  andThen,
  applyToPolygon,
  contains,
  type Point,
  type Polygon,
} from "../../../core/geometry/index.ts";
import { type Length, printWithUnit, stepOf } from "../../../core/measure/index.ts";
import type { Mark, Picture } from "../../../core/picture/marks.ts";
import { piecePicture } from "../../../core/picture/piece.ts";
import { placing } from "../../../core/picture/placing.ts";
import { placedPatches, placements } from "../../../core/quilt/placing.ts";
import type { PlacedBlock, QuiltGeometry, QuiltPatch } from "../../../core/quilt/types.ts";
import type { Answered } from "../answers.ts";
import type { Spot } from "../view.ts";

/** A patch at its place in the quilt. */
export interface Found extends Spot {
  readonly polygon: Polygon;
}

interface Whole {
  readonly blocks: readonly PlacedBlock[];
  readonly patches: readonly QuiltPatch[];
}

const known = new WeakMap<Answer, Whole>();

/** Where every block and every patch of the quilt itself lies; worked out once for an answer. */
function wholeOf({ brief, answer }: Answered): Whole {
  const there = known.get(answer);
  if (there) return there;
  const { quilt } = answer;
  const made: Whole =
    quilt && answer.blocks.length > 0
      ? { blocks: [...placements(brief, quilt)], patches: [...placedPatches(brief, quilt)] }
      : { blocks: [], patches: [] };
  known.set(answer, made);
  return made;
}

export const placedIn = (a: Answered): readonly PlacedBlock[] => wholeOf(a).blocks;
export const patchesIn = (a: Answered): readonly QuiltPatch[] => wholeOf(a).patches;

export const blockOf = (answer: Answer, id: string): AnswerBlock | undefined =>
  answer.blocks.find((b) => b.id === id);

/** How far a block reaches from its center. */
export const reachOf = (answer: Answer): number =>
  Math.max(0, ...answer.blocks.map((b) => Math.hypot(b.width, b.height) / 2));

/** The patch at a point of the quilt. */
export function spotAt(answered: Answered, at: Point): Found | null {
  const { answer } = answered;
  const reach = reachOf(answer);
  for (const placed of placedIn(answered)) {
    if (Math.abs(placed.at.x - at.x) > reach || Math.abs(placed.at.y - at.y) > reach) continue;
    const block = blockOf(answer, placed.blockId);
    for (const patch of block?.patches ?? []) {
      const polygon = applyToPolygon(placed.at, patch.polygon);
      if (contains(polygon, at)) return found(placed, patch, polygon);
    }
  }
  for (const extra of patchesIn(answered))
    if (contains(extra.polygon, at))
      return { placed: "quilt", block: "quilt", patch: extra.id, polygon: extra.polygon };
  return null;
}

const found = (placed: PlacedBlock, patch: Patch, polygon: Polygon): Found => ({
  placed: placed.id,
  block: placed.blockId,
  patch: patch.id,
  polygon,
});

/** The same patch with its place, when the quilt still has it. */
export function findSpot(answered: Answered, spot: Spot | null): Found | null {
  if (!spot) return null;
  const placed = placedIn(answered).find((p) => p.id === spot.placed && p.blockId === spot.block);
  const patch = blockOf(answered.answer, spot.block)?.patches.find((p) => p.id === spot.patch);
  if (placed && patch) return found(placed, patch, applyToPolygon(placed.at, patch.polygon));
  const extra = patchesIn(answered).find((x) => x.id === spot.patch);
  return extra ? { ...spot, polygon: extra.polygon } : null;
}

/** What a patch is, for the word that decides it. */
export function roleOf(answered: Answered, spot: Spot): string | undefined {
  return (
    blockOf(answered.answer, spot.block)?.patches.find((p) => p.id === spot.patch)?.role ??
    patchesIn(answered).find((x) => x.id === spot.patch)?.role
  );
}

/** Patches of each kind of block lit wherever the block lies. */
export function litPicture(
  answered: Answered,
  lit: ReadonlyMap<string, ReadonlySet<string>>,
  base: Picture,
): Picture | null {
  const { answer } = answered;
  if (lit.size === 0) return null;
  const stamps: Record<string, Mark[]> = {};
  for (const [id, patches] of lit)
    stamps[id] = (blockOf(answer, id)?.patches ?? [])
      .filter((p) => patches.has(p.id))
      .map((p): Mark => ({ kind: "shape", polygon: p.polygon, line: "lit" }));
  const marks = placedIn(answered)
    .filter((p) => lit.has(p.blockId))
    .map((p): Mark => ({ kind: "stamp", of: p.blockId, at: p.at }));
  return { ...base, stamps, marks };
}

/** A figure across blocks, lit along its outline wherever it lies. */
export function figurePicture(answered: Answered, shape: MeetingShape, base: Picture): Picture {
  const { brief, answer } = answered;
  return {
    ...base,
    stamps: {},
    marks: figureOutlines(brief, answer, placedIn(answered), shape).map(
      (points): Mark => ({ kind: "line", line: "lit", points }),
    ),
  };
}

/** One patch lit where it lies. */
export const spotPicture = (spot: Found, base: Picture): Picture => ({
  ...base,
  stamps: {},
  marks: [{ kind: "shape", polygon: spot.polygon, line: "lit" }],
});

/** The edge another quilt has, laid on this one at the upper left corner. */
export function edgePicture(
  other: Pick<QuiltGeometry, "width" | "height">,
  here: Pick<QuiltGeometry, "width" | "height">,
  base: Picture,
): Picture {
  const [left, top] = [-here.width / 2, here.height / 2];
  const [right, bottom] = [left + other.width, top - other.height];
  return {
    ...base,
    stamps: {},
    marks: [
      {
        kind: "shape",
        line: "ghost",
        polygon: [
          { x: left, y: bottom },
          { x: right, y: bottom },
          { x: right, y: top },
          { x: left, y: top },
        ],
      },
    ],
  };
}

/** The cut piece over its patch: raw edge, seam, the length of every edge. */
export function cutPicture(
  answered: Answered,
  spot: Found,
  base: Picture,
  small: Length,
): Picture | null {
  const { answer } = answered;
  const block = blockOf(answer, spot.block);
  const patch = block?.patches.find((p) => p.id === spot.patch);
  const piece = answer.pieces.find((p) => p.id === block?.pieceOf[spot.patch]);
  const placed = placedIn(answered).find((p) => p.id === spot.placed);
  if (!block || !patch || !piece || !placed) return null;
  const at = placing(piece.finished, patch.polygon, 1e-6 * Math.max(1, block.width));
  if (!at) return null;
  const step = stepOf(answered.brief.step, answered.brief.unit);
  const say = (x: Length): string => printWithUnit(x, step);
  const own = piecePicture(piece, { unit: answer.unit, fabric: true, small, say });
  // What it is called stands over the quilt; here only what runs along an edge.
  const marks = own.marks
    .filter((m) => m.kind !== "text" || m.turn !== undefined)
    .map((m): Mark => (m.kind === "text" ? { ...m, tone: "on-fabric" } : m));
  return {
    ...base,
    small,
    stamps: {},
    marks: [{ kind: "group", at: andThen(at, placed.at), marks }],
  };
}
