import {
  add,
  angleOf,
  applyTo,
  centroid,
  IDENTITY,
  middle,
  norm,
  normalized,
  offset,
  type Point,
  type Polygon,
  type Rigid,
  scale,
  subtract,
} from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import { outlineOf, seamNodes } from "./tree.ts";
import type { SewnUnit } from "./types.ts";
import type { SewableBlock } from "./units.ts";

/** What the three pictures of a step need, in the block's frame; raw outlines, allowances on. */
export interface StepFrames {
  readonly unitId: string;
  readonly first: Polygon;
  readonly second: Polygon;
  /** Stitches from raw edge to raw edge. */
  readonly stitches: readonly [Point, Point];
  /** Right sides together: this part lies on top, wrong side up, after `turnOver`. */
  readonly over: "first" | "second";
  readonly turnOver: Rigid;
  /** The unit opened out, and one arrow for each way its allowance is pressed. */
  readonly outline: Polygon;
  readonly arrows: readonly { readonly from: Point; readonly to: Point }[];
}

/** The reflection in the line through a and b: what turning a part over on its neighbor does. */
export function foldOver(a: Point, b: Point): Rigid {
  const turn = 2 * angleOf(subtract(b, a)) - Math.PI;
  const turned = applyTo({ ...IDENTITY, mirrored: true, turn }, a);
  return { mirrored: true, turn, x: a.x - turned.x, y: a.y - turned.y };
}

/**
 * The frames of one step. The part on the right is turned over on the left one, its raw edge at the
 * right under the needle; for a left-handed maker, whose pictures are turned over, the left one.
 */
export function framesOf(
  block: SewableBlock,
  unit: SewnUnit,
  seam: Length,
  hand: "right" | "left" = "right",
): StepFrames {
  const node = seamNodes(block.tree).find((s) => s.id === unit.id);
  if (!node) throw new RangeError(`no unit ${JSON.stringify(unit.id)} in block ${block.id}`);
  const raw = (p: Polygon): Polygon =>
    offset(
      p,
      p.map(() => seam),
    );
  const { from, to } = node.seam;
  const along = scale(normalized(subtract(to, from)), seam);
  const onLeft = unit.lay.left === 0 ? "first" : "second";
  const onRight = onLeft === "first" ? "second" : "first";
  const parts = node.parts.map(outlineOf);
  return {
    unitId: unit.id,
    first: raw(parts[0]),
    second: raw(parts[1]),
    stitches: [subtract(from, along), add(to, along)],
    over: hand === "right" ? onRight : onLeft,
    turnOver: foldOver(from, to),
    outline: raw(node.outline),
    arrows: arrowsOf(unit, parts, 3 * seam),
  };
}

function arrowsOf(unit: SewnUnit, parts: readonly Polygon[], length: Length) {
  const { from, to } = unit.seam;
  const arrow = (at: Point, part: Polygon) => {
    const toward = subtract(centroid(part), at);
    const along = normalized(subtract(to, from));
    const across = subtract(toward, scale(along, toward.x * along.x + toward.y * along.y));
    const step = scale(normalized(across), length / 2);
    return { from: subtract(at, step), to: add(at, step) };
  };
  const mid = middle(from, to);
  if (unit.press === "first") return [arrow(mid, parts[0])];
  if (unit.press === "second") return [arrow(mid, parts[1])];
  if (unit.press === "open") return parts.map((p) => arrow(mid, p));
  return [from, to].map((end) => {
    const left = end.x * centroid(parts[0]).y - end.y * centroid(parts[0]).x > 0;
    const first = left === (unit.press === "anticlockwise");
    return arrow(scale(end, 1 / 2), parts[first ? 0 : 1]);
  });
}

/** Units that can be fed through the machine one after another without cutting the thread. */
export interface Chain {
  readonly stage: number;
  readonly unitId: string;
  readonly copies: number;
  /** All copies laid the same way round, or not all alike. */
  readonly alike: boolean;
  /** Sewn in a stack of its own: this is the same unit of the other hand. */
  readonly keepFrom?: string;
}

/** Chains in sewing order, one for each kind of unit made more than once; hands never mix. */
export function chainsOf(units: readonly SewnUnit[]): Chain[] {
  return units
    .filter((u) => u.inAll > 1)
    .map((u) => ({
      stage: u.stage,
      unitId: u.id,
      copies: u.inAll,
      alike: u.lay.alike,
      ...(u.mirrorId && { keepFrom: u.mirrorId }),
    }));
}

/**
 * Steps as a maker takes them: units of one stage that differ only in hand stand together, and a
 * piece added to one growing unit several times running (the four corners) is one step.
 */
export function stepsOf(units: readonly SewnUnit[]): SewnUnit[][] {
  const steps: SewnUnit[][] = [];
  for (const u of units) {
    const step = steps.at(-1);
    const last = step?.at(-1);
    const otherHand = last !== undefined && u.mirrorId === last.id;
    const grows =
      last !== undefined &&
      last.of[1] !== last.of[0] &&
      u.of.includes(last.id) &&
      u.copies === last.copies &&
      Math.abs(u.seam.length - last.seam.length) <= 1e-9 * norm(u.seam.to) &&
      sameEnding(u, last);
    if (step && (otherHand || grows)) step.push(u);
    else steps.push([u]);
  }
  return steps;
}

/** Both add a patch with the same name after its sector: `outer`, `bar-...`. */
const sameEnding = (a: SewnUnit, b: SewnUnit): boolean => {
  const kind = (u: SewnUnit) => u.of.map((id) => id.split("/").at(-1)?.split("-")[0]).at(1);
  return kind(a) === kind(b);
};
