import type { AnswerBlock } from "../answer/types/answer.ts";
import type { SeamTree } from "../block/types.ts";
import {
  andThen,
  angleOf,
  applyTo,
  type Box,
  centroid,
  IDENTITY,
  moving,
  norm,
  type Point,
  type Polygon,
  point,
  type Rigid,
  subtract,
  turning,
} from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import { framesOf } from "../sewing/steps.ts";
import type { SewnUnit } from "../sewing/types.ts";
import { patchesOf, seamsOf } from "./block.ts";
import { boxOf, picture, roughWidth } from "./compose.ts";
import type { Mark, Picture } from "./marks.ts";
import { letterAt, partMarks, type UnitPictureOptions, unitMarks } from "./unit.ts";

export interface StepPictureOptions
  extends Omit<UnitPictureOptions, "measure" | "squareUp" | "leftHanded"> {
  /** The part on her stronger side is turned over; shapes are never mirrored, or a left would be a right. */
  readonly leftHanded?: boolean;
}

interface Panel {
  readonly box: Box;
  readonly marks: readonly Mark[];
  readonly caption: string;
}

/**
 * One step in three pictures: the parts laid right sides up, the seam upright and its end nearest the
 * center toward the maker; right sides together with the stitches, the upper part's wrong side white;
 * opened and pressed. `first` is the seam the first two show, `unit` what the step ends with.
 */
export function stepPicture(
  block: AnswerBlock,
  first: SewnUnit,
  unit: SewnUnit,
  options: StepPictureOptions,
): Picture {
  const small = options.small ?? Math.max(block.width, block.height) / 14;
  const own = { ...options, small };
  const panels = [laid(block, first, own), together(block, first, own), pressed(block, unit, own)];
  const high = Math.max(...panels.map((p) => p.box.top - p.box.bottom));
  const marks: Mark[] = [];
  let x = 0;
  for (const p of panels) {
    const wide = p.box.right - p.box.left;
    const words = roughWidth(p.caption, small);
    const room = Math.max(wide, words);
    const at = moving(x + (room - wide) / 2 - p.box.left, -p.box.bottom);
    marks.push(group(at, p.marks), {
      kind: "text",
      at: point(x + room / 2, -1.25 * small),
      text: p.caption,
      size: 1,
      anchor: "middle",
      tone: "soft",
    });
    x += room + 2 * small;
  }
  return picture({
    title: options.title ?? `Unit ${unit.letter}: laid, sewn, pressed`,
    unit: options.unit,
    box: { left: 0, right: x - 2 * small, bottom: -1.6 * small, top: high },
    marks,
    small,
    edges: { left: 0.2 * small, right: 0.2 * small, top: 0.2 * small },
  });
}

type Own = StepPictureOptions & { readonly small: Length };

const nodeFor = (block: AnswerBlock, unit: SewnUnit): Extract<SeamTree, { kind: "seam" }> => {
  const node = seamsOf(block.tree).find((s) => s.id === unit.id);
  if (!node) throw new RangeError(`step picture: block ${block.id} has no seam ${unit.id}`);
  return node;
};

/** The seam upright, its end nearest the block's center below. */
function upright(unit: SewnUnit): Rigid {
  const { from, to } = unit.seam;
  const [inner, outer] = norm(from) <= norm(to) + 1e-9 ? [from, to] : [to, from];
  return turning(Math.PI / 2 - angleOf(subtract(outer, inner)));
}

const moved = (p: Polygon, ...motions: readonly Rigid[]): Polygon =>
  p.map((v: Point) => motions.reduce((q, m) => applyTo(m, q), v));

const group = (at: Rigid, marks: readonly Mark[]): Mark => ({ kind: "group", at, marks });

/** Both parts right sides up, a little apart, an arrow from the one that is turned over. */
function laid(block: AnswerBlock, unit: SewnUnit, options: Own): Panel {
  const node = nodeFor(block, unit);
  const frames = framesOf(block, unit, options.seam, options.leftHanded ? "left" : "right");
  const up = upright(unit);
  const apart = 0.9 * options.small;
  const parts = ([0, 1] as const).map((i) => {
    const raw = i === 0 ? frames.first : frames.second;
    const at = andThen(up, moving(unit.lay.left === i ? -apart : apart, 0));
    return {
      raw: moved(raw, at),
      marks: [
        group(at, partMarks(block, node.parts[i], raw, options)),
        ...letters(node.parts[i], at, options),
      ],
    };
  });
  const [over, under] = frames.over === "first" ? parts : [parts[1], parts[0]];
  const [a, b] = [centroid(over.raw), centroid(under.raw)];
  const y = (a.y + b.y) / 2 + 1.1 * options.small;
  const arrow: Mark = {
    kind: "arrow",
    line: "rule",
    from: point(a.x * 0.75 + b.x * 0.25, y),
    to: point(a.x * 0.25 + b.x * 0.75, y),
  };
  return {
    box: boxOf(parts.map((p) => p.raw)),
    marks: [...parts.flatMap((p) => p.marks), arrow],
    caption: "laid",
  };
}

/** Right sides together: the one below right side up, the one above wrong side up, and the stitches. */
function together(block: AnswerBlock, unit: SewnUnit, options: Own): Panel {
  const node = nodeFor(block, unit);
  const frames = framesOf(block, unit, options.seam, options.leftHanded ? "left" : "right");
  const up = upright(unit);
  const firstOver = frames.over === "first";
  const below = firstOver ? frames.second : frames.first;
  const above = firstOver ? frames.first : frames.second;
  const upper = node.parts[firstOver ? 0 : 1];
  const turned = moved(above, frames.turnOver);
  const seams = (upper.kind === "patch" ? [] : seamsOf(upper)).map(
    (s): Mark => ({
      kind: "line",
      line: "seam",
      points: [applyTo(frames.turnOver, s.seam.from), applyTo(frames.turnOver, s.seam.to)],
    }),
  );
  return {
    box: boxOf([moved(below, up), moved(turned, up)]),
    marks: [
      group(up, [
        ...partMarks(block, node.parts[firstOver ? 1 : 0], below, options),
        { kind: "shape", polygon: turned, fill: { kind: "color", color: WRONG_SIDE }, line: "cut" },
        ...seams,
        { kind: "line", line: "step", points: frames.stitches },
      ]),
    ],
    caption: "sewn",
  };
}

/** The wrong side of any fabric, the same in every theme: paler than the palest right side. */
const WRONG_SIDE = "#f6f1e7";

/** Opened out and pressed; a whole block stands as it does in the quilt. */
function pressed(block: AnswerBlock, unit: SewnUnit, options: Own): Panel {
  const { raw, marks } = unitMarks(block, unit, { ...options, letters: undefined });
  const whole = block.tree.kind === "seam" && block.tree.id === unit.id;
  const up = whole ? IDENTITY : upright(unit);
  return {
    box: boxOf([moved(raw, up)]),
    marks: [group(up, marks), ...letters(nodeFor(block, unit), up, options)],
    caption: "pressed",
  };
}

/** Letters stand upright, however the part they are on is turned. */
const letters = (part: SeamTree, at: Rigid, options: Own): Mark[] =>
  patchesOf(part).flatMap((patch): Mark[] => {
    const text = options.letters?.(patch);
    const c = applyTo(at, centroid(patch.polygon));
    return text ? [letterAt(c, text, options.small)] : [];
  });
