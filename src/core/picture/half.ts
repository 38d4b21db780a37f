import type { AnswerBlock } from "../answer/types/answer.ts";
import {
  add,
  angleOf,
  applyTo,
  dot,
  edges,
  leftOf,
  moving,
  normalized,
  offset,
  type Point,
  type Polygon,
  point,
  scale,
  subtract,
  turning,
} from "../geometry/index.ts";
import type { Length, Unit } from "../measure/index.ts";
import type { SewnUnit } from "../sewing/types.ts";
import { seamsOf } from "./block.ts";
import { boxOf, picture, rectangle, roughWidth } from "./compose.ts";
import type { Mark, Picture } from "./marks.ts";

export interface HalfPictureOptions {
  readonly unit: Unit;
  readonly seam: Length;
  readonly small: Length;
  /** The two ways side by side, instead of one above the other. */
  readonly beside?: boolean;
}

/** How far each arm of the long raw edge is drawn out of straight, in radians: far more than is sewn. */
const BENT = 0.13;

/**
 * A half laid against a straight edge, both ways it may be wrong: above, its ends touch and the light
 * is in the middle; below, it rocks on the middle and the light is at both ends. The lines are the
 * unit's own, fanned about the middle of its long raw edge as wedges too wide or too narrow fan it.
 */
export function halfPicture(
  block: AnswerBlock,
  unit: SewnUnit,
  { unit: measure, seam, small, beside = false }: HalfPictureOptions,
): Picture {
  const node = seamsOf(block.tree).find((s) => s.id === unit.id);
  const edge = unit.straightEdge?.edge;
  if (!node || edge === undefined)
    throw new RangeError(`half picture: ${unit.id} has no long raw edge`);
  const raw = offset(
    node.outline,
    node.outline.map(() => seam),
  );
  const { from, to } = edges(raw)[edge];
  const along = normalized(subtract(to, from));
  const into = leftOf(along);
  // The middle of the long raw edge lies below the center of the block, which is the origin.
  const middle = add(from, scale(along, dot(subtract(point(0, 0), from), along)));
  const level = (p: Point): Point =>
    point(dot(subtract(p, middle), along), dot(subtract(p, middle), into));
  const outline = [...raw.slice(0, edge + 1), middle, ...raw.slice(edge + 1)].map(level);
  const seams = seamsOf(node).map((s) => [level(s.seam.from), level(s.seam.to)]);
  const above = panel(outline, seams, BENT, small, "light in the middle");
  const below = panel(outline, seams, -BENT, small, "minus: at both ends");
  const by = beside
    ? moving(above.right - below.left + small, above.bottom - below.bottom)
    : moving(0, above.bottom - below.top - 0.8 * small);
  const box = {
    left: Math.min(above.left, below.left + by.x),
    right: Math.max(above.right, below.right + by.x),
    bottom: Math.min(above.bottom, below.bottom + by.y),
    top: Math.max(above.top, below.top + by.y),
  };
  return picture({
    title: "a half against a straight edge: light in the middle, or at both ends",
    unit: measure,
    box,
    marks: [...above.marks, { kind: "group", at: by, marks: below.marks }],
    small,
    edges: { left: 0.3 * small, right: 0.3 * small, top: 0.3 * small, bottom: 0.3 * small },
  });
}

/** Each point keeps its distance from the middle; its angle above the edge grows or shrinks in proportion. */
function fanned(p: Point, bent: number): Point {
  const angle = Math.PI / 2 + (Math.atan2(p.y, p.x) - Math.PI / 2) * (1 + (2 * bent) / Math.PI);
  const r = Math.hypot(p.x, p.y);
  return point(r * Math.cos(angle), r * Math.sin(angle));
}

/** The accent, the same in every theme: where light shows. */
const LIGHT = "#A3195B";

function panel(
  outline: Polygon,
  seams: readonly (readonly Point[])[],
  bent: number,
  small: Length,
  caption: string,
) {
  const bentEdge = outline.filter((p) => Math.abs(p.y) < 1e-9).map((p) => fanned(p, bent));
  const [a, , z] = [...bentEdge].sort((p, q) => p.x - q.x);
  // Both ends touch, though one arm may be the longer; in the middle it is held even.
  const even = turning(bent > 0 ? -angleOf(subtract(z, a)) : 0);
  const lie = (p: Point): Point => applyTo(even, fanned(p, bent));
  const shape = outline.map(lie);
  const box = boxOf([shape]);
  const ends = shape.filter((_, i) => Math.abs(outline[i].y) < 1e-9);
  const rest = Math.min(...ends.map((p) => p.y));
  const [left, right] = [box.left - 0.6 * small, box.right + 0.6 * small];
  const [first, mid, last] = [...ends].sort((a, b) => a.x - b.x);
  // In the middle the light is one triangle; at the ends it is one under each arm.
  const gaps: Polygon[] =
    bent > 0
      ? [[first, last, mid]]
      : [
          [point(first.x, rest), mid, first],
          [mid, point(last.x, rest), last],
        ];
  const light = gaps.map(
    (polygon): Mark => ({ kind: "shape", polygon, fill: { kind: "color", color: LIGHT } }),
  );
  const marks: Mark[] = [
    { kind: "shape", polygon: shape, fill: { kind: "paper" }, line: "cut" },
    ...seams.map((s): Mark => ({ kind: "line", line: "seam", points: s.map(lie) })),
    ...light,
    {
      kind: "shape",
      polygon: rectangle(left, rest - 0.7 * small, right - left, 0.7 * small),
      fill: { kind: "paper" },
      line: "lit",
    },
    {
      kind: "text",
      at: point((left + right) / 2, rest - 1.8 * small),
      text: caption,
      size: 1,
      anchor: "middle",
      tone: "soft",
    },
  ];
  const words = roughWidth(caption, small) / 2;
  const center = (left + right) / 2;
  const wide = { left: Math.min(left, center - words), right: Math.max(right, center + words) };
  return { ...wide, bottom: rest - 2.1 * small, top: box.top, marks };
}
