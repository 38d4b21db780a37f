import type { AnswerBlock } from "../answer/types/answer.ts";
import type { LetteredPoint } from "../block/index.ts";
import { boundingBox } from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import { type BlockPictureOptions, blockMarks } from "./block.ts";
import { all, centered, picture } from "./compose.ts";
import type { Mark, Picture } from "./marks.ts";

/**
 * A block of one's own with the letters its seams are said in: corners and ends of seams, each letter
 * a little further out from the middle than its point, so that it stands clear of the lines.
 */
export function letteredPicture(
  block: AnswerBlock,
  points: readonly LetteredPoint[],
  options: BlockPictureOptions & { readonly small: Length },
): Picture {
  const { small } = options;
  const letters = points.flatMap(({ name, at }): Mark[] => {
    const far = Math.hypot(at.x, at.y);
    const out = far === 0 ? { x: 0.75, y: 0.75 } : { x: at.x / far, y: at.y / far };
    const place = { x: at.x + out.x * small * 0.8, y: at.y + out.y * small * 0.8 };
    return [{ kind: "dot", at, line: "rule" }, centered(place, name, small, { tone: "on-fabric" })];
  });
  return picture({
    title: options.title ?? `${block.name}, its points lettered`,
    unit: options.unit,
    box: boundingBox(block.outline),
    marks: [...blockMarks(block, { ...options, faint: true }), ...letters],
    small,
    edges: all(small * 1.5),
  });
}
