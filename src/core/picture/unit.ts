import type { AnswerBlock } from "../answer/types/answer.ts";
import type { Patch, SeamTree } from "../block/types.ts";
import {
  add,
  boundingBox,
  centroid,
  clip,
  dot,
  halfPlanes,
  leftHalfPlane,
  leftOf,
  normalized,
  offset,
  type Point,
  type Polygon,
  point,
  scale,
  subtract,
} from "../geometry/index.ts";
import type { Length, Unit } from "../measure/index.ts";
import type { Measure, SewnUnit } from "../sewing/types.ts";
import { type BlockPictureOptions, patchesOf, patchFill, seamsOf } from "./block.ts";
import { all, leftHanded, picture } from "./compose.ts";
import type { Mark, Picture } from "./marks.ts";

export interface UnitPictureOptions
  extends Pick<BlockPictureOptions, "pieces" | "looks" | "faint"> {
  readonly unit: Unit;
  readonly seam: Length;
  readonly letters?: (patch: Patch) => string | undefined;
  readonly small?: Length;
  /** Seams sewn in this step besides the unit's own (four corners are one step). */
  readonly steps?: readonly string[];
  /** The width to check, drawn as a measured line outside the unit. */
  readonly measure?: Measure;
  /** Distances from the center to each side, written on the square-up diagram. */
  readonly squareUp?: string;
  readonly title?: string;
  readonly leftHanded?: boolean;
}

type Node = Extract<SeamTree, { kind: "seam" }>;

const nodeOf = (tree: SeamTree, id: string): Node | undefined =>
  seamsOf(tree).find((n) => n.id === id);

/**
 * A sewn unit as it lies on the table, right side up, its raw edges on: the seam just sewn heavy,
 * earlier seams dashed, and an arrow that crosses the new seam to the side it is pressed to.
 */
export function unitPicture(
  block: AnswerBlock,
  unit: SewnUnit,
  options: UnitPictureOptions,
): Picture {
  const small = options.small ?? Math.max(block.width, block.height) / 14;
  const { raw, marks } = unitMarks(block, unit, { ...options, small });
  const made = picture({
    title: options.title ?? `Unit ${unit.letter}, stage ${unit.stage}`,
    unit: options.unit,
    box: boundingBox([...raw, ...marks.flatMap(measuredPoints)]),
    marks,
    small,
    edges: all(small * 0.25),
  });
  return options.leftHanded ? leftHanded(made) : made;
}

/** A measured line may stand far from the unit that it is nearest to: the picture holds all of it. */
const measuredPoints = (mark: Mark): readonly Point[] =>
  mark.kind === "line" && mark.line === "press" ? mark.points : [];

/** What `unitPicture` shows, in the block's frame, and the raw outline it fills. */
export function unitMarks(
  block: AnswerBlock,
  unit: SewnUnit,
  options: UnitPictureOptions & { readonly small: Length },
): { readonly raw: Polygon; readonly marks: Mark[] } {
  const node = nodeOf(block.tree, unit.id) ?? nodeOf(block.tree, unit.seamIds[0] ?? "");
  if (!node) throw new RangeError(`unit picture: block ${block.id} has no seam ${unit.id}`);
  const raw = offset(
    node.outline,
    node.outline.map(() => options.seam),
  );
  const { small } = options;
  // Squaring up alone sews nothing; four corners and the trim may be one step.
  const bare = options.squareUp !== undefined && options.steps?.length === 0;
  const isStep = (id: string): boolean => id === node.id || (options.steps ?? []).includes(id);
  const marks: Mark[] = [
    ...partMarks(block, node, raw, options, (s) => bare || !isStep(s.id)),
    ...seamsOf(node)
      .filter((s) => isStep(s.id) && !bare)
      .map(
        (s): Mark => ({ kind: "line", line: "step", points: toRaw(s.seam, node, raw), id: s.id }),
      ),
    ...patchesOf(node).flatMap((p): Mark[] => {
      const text = options.letters?.(p);
      const hidden = options.squareUp !== undefined && underRuler(p, raw, small);
      return text && !hidden ? [letterAt(centroid(p.polygon), text, small)] : [];
    }),
  ];
  const sewn = seamsOf(node).filter((s) => isStep(s.id) && !bare);
  const letters = patchesOf(node)
    .filter((p) => options.letters?.(p))
    .map((p) => centroid(p.polygon));
  for (const s of sewn) marks.push(...pressMarks(s, unit.press, small, letters));
  if (options.measure && !options.squareUp)
    marks.push(...measureMarks(raw, options.measure, small));
  if (options.squareUp) marks.push(...squareUpMarks(raw, options.squareUp, small));
  return { raw, marks };
}

/** A part right side up: its patches grown to its raw edges, its outline, and those seams `drawn`. */
export function partMarks(
  block: AnswerBlock,
  part: SeamTree,
  raw: Polygon,
  options: Pick<UnitPictureOptions, "pieces" | "looks" | "faint">,
  drawn: (seam: Node) => boolean = () => true,
): Mark[] {
  const outline = part.kind === "patch" ? part.patch.polygon : part.outline;
  return [
    ...patchesOf(part).map((p) => rawPatch(block, p, outline, raw, options)),
    {
      kind: "shape",
      polygon: raw,
      line: "cut",
      id: part.kind === "patch" ? part.patch.id : part.id,
    },
    ...(part.kind === "patch" ? [] : seamsOf(part)).filter(drawn).map(
      (s): Mark => ({
        kind: "line",
        line: "seam",
        points: toRaw(s.seam, part as Node, raw),
      }),
    ),
  ];
}

/** A patch grown to the raw edge where it lies on the unit's outside. */
function rawPatch(
  block: AnswerBlock,
  patch: Patch,
  outline: Polygon,
  raw: Polygon,
  options: Pick<UnitPictureOptions, "pieces" | "looks" | "faint">,
): Mark {
  const outer = halfPlanes(outline);
  const planes = halfPlanes(patch.polygon).filter(
    (h) => !outer.some((o) => dot(o.n, h.n) > 1 - 1e-9 && Math.abs(o.c - h.c) < 1e-6),
  );
  const polygon = planes.reduce<Polygon>((p, h) => clip(p, h, 1e-9), raw);
  return { kind: "shape", id: patch.id, polygon, fill: patchFill(block, patch, options) };
}

/** A seam drawn to the raw edges where it ends on the unit's outside. */
function toRaw(
  seam: { readonly from: Point; readonly to: Point },
  node: Node,
  raw: Polygon,
): [Point, Point] {
  const u = normalized(subtract(seam.to, seam.from));
  return [
    reachOut(seam.from, scale(u, -1), node.outline, raw),
    reachOut(seam.to, u, node.outline, raw),
  ];
}

function reachOut(p: Point, u: Point, outline: Polygon, raw: Polygon): Point {
  const onOutside = halfPlanes(outline).some(
    (h) => Math.abs(h.c - dot(h.n, p)) < 1e-6 && dot(h.n, u) > 1e-6,
  );
  if (!onOutside) return p;
  let k = Number.POSITIVE_INFINITY;
  for (const h of halfPlanes(raw)) {
    const speed = dot(h.n, u);
    if (speed > 1e-9) k = Math.min(k, (h.c - dot(h.n, p)) / speed);
  }
  return add(p, scale(u, k));
}

/** Where the ruler's two lines run, and the measure is written, no letter stands. */
function underRuler(patch: Patch, raw: Polygon, small: Length): boolean {
  const at = centroid(patch.polygon);
  const c = centroid(raw);
  const [right, up] = [at.x - c.x, at.y - c.y];
  return (right > 0 && Math.abs(up) < 1.1 * small) || (up > 0 && Math.abs(right) < 0.9 * small);
}

/** A letter with its middle at c. */
export const letterAt = (c: Point, text: string, small: Length): Mark => ({
  kind: "text",
  at: point(c.x, c.y - 0.32 * small),
  text,
  size: 1,
  anchor: "middle",
  weight: "bold",
  tone: "on-fabric",
});

function pressMarks(
  node: Node,
  press: SewnUnit["press"],
  small: Length,
  letters: readonly Point[],
): Mark[] {
  const { from, to } = node.seam;
  const along = normalized(subtract(to, from));
  const first = node.parts[0];
  const side = leftHalfPlane(from, to);
  const inFirst = centroidOf(first);
  const firstIsLeft = side.c - dot(side.n, inFirst) > 0;
  const toLeft = leftOf(along);
  const reach = 0.95 * small;
  const at = (k: number): Point => add(from, scale(subtract(to, from), k));
  const arrow = (p: Point, d: Point): Mark => ({
    kind: "arrow",
    line: "press",
    from: subtract(p, scale(d, reach * 0.8)),
    to: add(p, scale(d, reach)),
  });
  // An arrow stands where no letter is near, nor the end of the seam.
  const clear = (least: number, most: number): number => {
    const [x0, x1] = [Math.ceil(least * 24), Math.floor(most * 24)];
    const places = Array.from({ length: x1 - x0 + 1 }, (_, i) => (x0 + i) / 24);
    const room = (k: number): number =>
      Math.min(
        ...letters.map((l) => Math.hypot(l.x - at(k).x, l.y - at(k).y)),
        Math.hypot(from.x - at(k).x, from.y - at(k).y) + 0.5 * small,
        Math.hypot(to.x - at(k).x, to.y - at(k).y) + 0.5 * small,
      );
    return places.reduce((best, k) => (room(k) > room(best) + 1e-6 ? k : best), places[0]);
  };
  if (press === "open") {
    const p = at(clear(0.15, 0.85));
    return [
      {
        kind: "arrow",
        line: "press",
        both: true,
        from: subtract(p, scale(toLeft, reach)),
        to: add(p, scale(toLeft, reach)),
      },
    ];
  }
  const right = scale(toLeft, -1);
  const long = Math.hypot(to.x - from.x, to.y - from.y) > 7 * small;
  if (press === "anticlockwise" || press === "clockwise") {
    // Seen from the center, each arm lies the same way round, so the two point opposite ways.
    const [near, far] = press === "anticlockwise" ? [right, toLeft] : [toLeft, right];
    return [arrow(at(clear(0.06, 0.3)), near), arrow(at(clear(0.7, 0.94)), far)];
  }
  const d = (press === "first") === firstIsLeft ? toLeft : right;
  return long
    ? [arrow(at(clear(0.06, 0.3)), d), arrow(at(clear(0.7, 0.94)), d)]
    : [arrow(at(clear(0.12, 0.88)), d)];
}

const centroidOf = (t: SeamTree): Point =>
  centroid(t.kind === "patch" ? t.patch.polygon : t.outline);

/**
 * The width to check: from one raw edge square across to the parallel edge or the far corner, or
 * along one edge; drawn on that side of the unit where it is nearest to both.
 */
function measureMarks(raw: Polygon, m: Measure, small: Length): Mark[] {
  const n = raw.length;
  const [edge, to] = m.kind === "across" ? levelPair(raw, m) : [m.edge, m.to];
  const a = raw[edge % n];
  const b = raw[(edge + 1) % n];
  const along = normalized(subtract(b, a));
  const into = leftOf(along);
  const off = 0.75 * small;
  if (m.kind === "along") {
    const away = scale(into, -off);
    return tickedLine(add(a, away), add(b, away), small);
  }
  const far = m.kind === "corner" ? raw[to % n] : raw[(to + 1) % n];
  const at = (p: Point): number => dot(subtract(p, a), along);
  const spread = raw.map(at);
  const [low, high] = [Math.min(...spread), Math.max(...spread)];
  const middleOfBoth = (at(b) / 2 + at(far)) / 2;
  const place = middleOfBoth - low < high - middleOfBoth ? low - off : high + off;
  const from = add(a, scale(along, place));
  return tickedLine(from, add(from, scale(into, m.unfinished)), small);
}

/** Of several pairs of parallel edges equally far apart, the one that lies most level or upright. */
function levelPair(raw: Polygon, m: Measure): readonly [number, number] {
  const planes = halfPlanes(raw);
  const slant = (i: number): number => Math.min(Math.abs(planes[i].n.x), Math.abs(planes[i].n.y));
  let best: readonly [number, number] = [m.edge % raw.length, m.to % raw.length];
  planes.forEach((h, i) => {
    const j = planes.findIndex(
      (o) => dot(o.n, h.n) < -1 + 1e-9 && Math.abs(o.c + h.c - m.unfinished) < 1e-6,
    );
    if (j >= 0 && slant(i) < slant(best[0]) - 1e-6) best = [i, j];
  });
  return best;
}

function tickedLine(a: Point, b: Point, small: Length): Mark[] {
  const tick = scale(leftOf(normalized(subtract(b, a))), 0.3 * small);
  const across = (p: Point): Mark => ({
    kind: "line",
    line: "press",
    points: [add(p, tick), subtract(p, tick)],
  });
  return [across(a), across(b), { kind: "line", line: "press", points: [a, b] }];
}

/** From the center to the right and the upper raw side, as the ruler is laid. */
function squareUpMarks(raw: Polygon, text: string, small: Length): Mark[] {
  const box = boundingBox(raw);
  const c = centroid(raw);
  return [
    { kind: "line", line: "press", points: [c, point(box.right, c.y)] },
    { kind: "line", line: "press", points: [c, point(c.x, box.top)] },
    {
      kind: "text",
      at: point((c.x + box.right) / 2, c.y - 0.32 * small),
      text,
      size: 1.1,
      anchor: "middle",
      weight: "bold",
      tone: "on-fabric",
    },
    { kind: "dot", at: c, line: "lit" },
  ];
}
