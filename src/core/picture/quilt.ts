import type { Answer } from "../answer/types/answer.ts";
import type { PatchLook } from "../fabric/index.ts";
import { clip as clipped, IDENTITY } from "../geometry/index.ts";
import type { Length } from "../measure/index.ts";
import type { PlacedBlock, QuiltPatch } from "../quilt/types.ts";
import { type BlockPictureOptions, blockMarks } from "./block.ts";
import { all, dimension, leftHanded, picture, rectangle } from "./compose.ts";
import type { Mark, Picture } from "./marks.ts";

export interface QuiltPictureOptions extends Pick<BlockPictureOptions, "pieces" | "leftHanded"> {
  readonly small?: Length;
  /** What really shows in each kind of block, by its id. */
  readonly looks?: Readonly<Record<string, readonly PatchLook[]>>;
  /** Texts for the width below and the height at the left. */
  readonly dimensions?: { readonly width: string; readonly height: string };
  readonly title?: string;
  /** Patches of the quilt itself where they lie, one by one: sashing, borders, setting triangles. */
  readonly patches?: Iterable<QuiltPatch>;
}

/**
 * The whole finished top. Every kind of block is drawn once and stamped, so the picture grows with
 * the kinds of block and not with the patches. `placed` comes from the quilt's plan.
 */
export function quiltPicture(
  answer: Answer,
  placed: Iterable<PlacedBlock>,
  options: QuiltPictureOptions = {},
): Picture {
  const { quilt } = answer;
  if (!quilt) throw new RangeError("quilt picture: the answer has no quilt (its findings say why)");
  const small = options.small ?? Math.max(quilt.width, quilt.height) / 40;
  const pieces = options.pieces ?? answer.pieces;
  const stamps: Record<string, Mark[]> = {};
  for (const block of answer.blocks)
    stamps[block.id] = blockMarks(block, {
      pieces,
      ...(options.looks?.[block.id] ? { looks: options.looks[block.id] } : {}),
    });
  for (const half of quilt.halves) {
    const block = answer.blocks.find((b) => b.id === half.of);
    if (!block || stamps[half.id]) continue;
    const clip = half.keep.reduce((p, h) => clipped(p, h, 1e-9), block.outline);
    const whole = stamps[half.of].slice(0, -1);
    stamps[half.id] = [
      { kind: "group", at: IDENTITY, clip, marks: whole },
      { kind: "shape", polygon: clip, line: "outline" },
    ];
  }
  const extras: Mark[] = [];
  for (const p of options.patches ?? [])
    extras.push({
      kind: "shape",
      id: p.id,
      polygon: p.polygon,
      fill: { kind: "fabric", fabricId: p.fabricId },
      line: "sewn",
    });
  const blocks: Mark[] = [];
  for (const p of placed) blocks.push({ kind: "stamp", of: p.blockId, at: p.at, id: p.id });
  const box = {
    left: -quilt.width / 2,
    right: quilt.width / 2,
    bottom: -quilt.height / 2,
    top: quilt.height / 2,
  };
  const outline: Mark = {
    kind: "shape",
    polygon: rectangle(box.left, box.bottom, quilt.width, quilt.height),
    line: "outline",
  };
  const marks = [...extras, ...blocks, outline];
  const edges = { ...all(small * 0.1) };
  if (options.dimensions) {
    const off = small * 0.9;
    marks.push(
      ...dimension(
        { x: box.left, y: box.bottom - off },
        { x: box.right, y: box.bottom - off },
        options.dimensions.width,
        small,
      ),
      ...dimension(
        { x: box.left - off, y: box.bottom },
        { x: box.left - off, y: box.top },
        options.dimensions.height,
        small,
      ),
    );
    Object.assign(edges, { left: small * 1.6, bottom: small * 1.6 });
  }
  const title = options.title ?? `The finished top, ${quilt.rows} rows of ${quilt.columns} blocks`;
  const made = picture({ title, unit: answer.unit, box, marks, small, stamps, edges });
  return options.leftHanded ? leftHanded(made) : made;
}
