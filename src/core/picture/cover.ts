import {
  add,
  boundingBox,
  contains,
  edges,
  type HalfPlane,
  halfPlanes,
  intersect,
  leftOf,
  middle,
  norm,
  normalized,
  type Point,
  type Polygon,
  point,
  scale,
  subtract,
} from "../geometry/index.ts";
import type { Length, Unit } from "../measure/index.ts";
import type { Recipe } from "../recipe/types.ts";
import { all, boxOf, leftHanded, picture, tape } from "./compose.ts";
import type { Mark, Picture } from "./marks.ts";
import { fineStep, type Say, sayWithUnit } from "./words.ts";

export interface CoverPictureOptions {
  readonly unit: Unit;
  /** The seam allowance every stitch wants. */
  readonly seam: Length;
  readonly fabricId: string;
  readonly name?: string;
  readonly say?: Say;
  readonly small?: Length;
  /** Draw the spare as a tape with its length; default yes. */
  readonly tapes?: boolean;
  readonly leftHanded?: boolean;
}

/**
 * All fabric the needle asks for: the patch, and one allowance square to each seam over its whole
 * length. Corners are cut off there, since no stitch reaches beyond the end of its seam.
 */
export function neededFabric(patch: Polygon, seam: Length): Polygon {
  const out: Point[] = [];
  const list = edges(patch);
  list.forEach((e, i) => {
    const before = list[(i + list.length - 1) % list.length];
    out.push(add(e.from, outward(before, seam)), add(e.from, outward(e, seam)));
  });
  return out;
}

function outward(e: { readonly from: Point; readonly to: Point }, by: Length): Point {
  return scale(leftOf(normalized(subtract(e.to, e.from))), -by);
}

/** The common part of two convex polygons. */
export function commonPart(a: Polygon, b: Polygon): Polygon {
  const reach = Math.max(...[...a, ...b].flatMap((p) => [Math.abs(p.x), Math.abs(p.y)])) + 1;
  const planes: HalfPlane[] = [...halfPlanes(a), ...halfPlanes(b)];
  return intersect(planes, reach, 1e-9);
}

/**
 * The proof as a picture: the exact piece inside the fabric really cut. What is cut and not needed is
 * hatched; what is needed and not there is dotted; the tightest spare stands as a measured tape.
 */
export function coverPicture(recipe: Recipe, options: CoverPictureOptions): Picture {
  const needed = neededFabric(recipe.patch, options.seam);
  const box = boxOf([recipe.polygon, needed]);
  const size = Math.max(box.right - box.left, box.top - box.bottom);
  const small = options.small ?? size / 16;
  const marks = coverMarks(recipe, options);
  if (options.tapes !== false) marks.push(...spareMarks(recipe, options, small));
  const verdict = { proved: "covers", thin: "thin", blocked: "does not cover" }[recipe.verdict];
  const made = picture({
    title: `${options.name ?? "Piece"}: ${verdict}`,
    unit: options.unit,
    box,
    marks,
    small,
    edges: all(small * (options.tapes === false ? 0.3 : 2.2)),
  });
  return options.leftHanded ? leftHanded(made) : made;
}

/** The drawing without its measures, to be set into other pictures. */
export function coverMarks(
  recipe: Recipe,
  options: Pick<CoverPictureOptions, "seam" | "fabricId">,
): Mark[] {
  const needed = neededFabric(recipe.patch, options.seam);
  const there = commonPart(needed, recipe.polygon);
  const marks: Mark[] = [
    { kind: "shape", polygon: recipe.polygon, fill: { kind: "lost" } },
    {
      kind: "shape",
      polygon: there,
      fill: { kind: "fabric", fabricId: options.fabricId, faint: true },
    },
    { kind: "shape", polygon: recipe.polygon, line: "cut" },
  ];
  for (const e of edges(needed)) marks.push(...missing(e.from, e.to, recipe.polygon, "doubt"));
  for (const e of edges(recipe.patch)) {
    const inside = insidePart(e.from, e.to, recipe.polygon);
    if (inside) marks.push({ kind: "line", line: "seam", points: inside });
    marks.push(...missing(e.from, e.to, recipe.polygon, "doubt"));
  }
  return marks;
}

/** The part of a segment inside a convex polygon. */
function insidePart(from: Point, to: Point, p: Polygon): [Point, Point] | undefined {
  let low = 0;
  let high = 1;
  const d = subtract(to, from);
  for (const h of halfPlanes(p)) {
    const room = h.c - (h.n.x * from.x + h.n.y * from.y);
    const speed = h.n.x * d.x + h.n.y * d.y;
    if (Math.abs(speed) < 1e-12) {
      if (room < -1e-9) return undefined;
    } else if (speed > 0) high = Math.min(high, room / speed);
    else low = Math.max(low, room / speed);
  }
  if (high - low < 1e-9) return undefined;
  return [add(from, scale(d, low)), add(from, scale(d, high))];
}

/** The parts of a segment outside a convex polygon, by more than can be seen. */
function missing(from: Point, to: Point, p: Polygon, line: "doubt"): Mark[] {
  const inside = insidePart(from, to, p);
  const seen = 1e-4 * norm(subtract(to, from));
  const parts: [Point, Point][] = inside
    ? [
        [from, inside[0]],
        [inside[1], to],
      ]
    : [[from, to]];
  return parts
    .filter(([a, b]) => norm(subtract(b, a)) > seen && !contains(p, middle(a, b), 1e-6))
    .map((points) => ({ kind: "line", line, points }));
}

/**
 * The spare where it is least, at a side that has any; a piece cut to its line has none and needs
 * none. Said in words below; drawn as a tape when it is wide enough to see.
 */
function spareMarks(recipe: Recipe, options: CoverPictureOptions, small: Length): Mark[] {
  const say = options.say ?? sayWithUnit(fineStep(options.unit));
  const box = boundingBox(recipe.polygon);
  const words: Mark = {
    kind: "text",
    at: point((box.left + box.right) / 2, box.bottom - 1.5 * small),
    text: spareWords(recipe, say),
    size: 1,
    anchor: "middle",
    weight: "bold",
    tone: "lit",
  };
  const seen = recipe.spareBySide.filter((s) => s.spare > 1e-6);
  if (recipe.spare <= 1e-6 || seen.length === 0) return [words];
  const least = seen.reduce((a, b) => (b.spare < a.spare - 1e-9 ? b : a));
  const edge = edges(recipe.patch)[least.index];
  const start = add(middle(edge.from, edge.to), outward(edge, options.seam));
  const end = add(start, outward(edge, least.spare));
  if (least.spare < 0.3 * small) return [words, { kind: "dot", at: start, line: "lit" }];
  return [
    words,
    ...tape(start, subtract(end, start), least.spare, options.unit, small),
    { kind: "line", line: "lit", points: [start, end] },
  ];
}

/** Spare of a piece with no more than a ten-thousandth of an inch is a piece cut to its line. */
const EXACT = 1e-4;

export function spareWords(recipe: Recipe, say: Say): string {
  if (recipe.verdict === "blocked")
    return recipe.reach < 0
      ? `${say(-recipe.reach)} short of the seam`
      : `${say(-recipe.spare)} of the allowance missing`;
  if (recipe.verdict === "thin") return `${say(-recipe.spare)} of the allowance missing`;
  const sides = recipe.spareBySide.map((s) => s.spare).filter((s) => s > EXACT);
  const corner = recipe.spare > EXACT && sides.length === 0;
  if (corner) return `to its line; ${say(recipe.spare)} to spare at the point`;
  return recipe.spare > EXACT
    ? `${say(recipe.spare)} to spare`
    : "cut to its line: no spare, none needed";
}
