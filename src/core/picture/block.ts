import type { AnswerBlock } from "../answer/types/answer.ts";
import type { Patch, SeamTree } from "../block/types.ts";
import type { PatchLook } from "../fabric/index.ts";
import { boundingBox, centroid, depth, halfPlanes } from "../geometry/index.ts";
import type { Length, Unit } from "../measure/index.ts";
import type { Piece } from "../piece/types.ts";
import { all, dimension, leftHanded, picture } from "./compose.ts";
import type { Fill, Mark, Picture } from "./marks.ts";
import { placing } from "./placing.ts";

export interface BlockPictureOptions {
  readonly unit: Unit;
  /** With them every patch shows the stretch of fabric it is cut from, the way up it is cut. */
  readonly pieces?: readonly Piece[];
  /** What really shows in each patch, from the fabric stage: bands, turned and dealt. */
  readonly looks?: readonly PatchLook[];
  readonly letters?: (patch: Patch) => string | undefined;
  /** Veiled, so that lines and letters stay on top. */
  readonly faint?: boolean;
  /** Texts for the width below and the height at the left. */
  readonly dimensions?: { readonly width: string; readonly height: string };
  readonly leftHanded?: boolean;
  readonly small?: Length;
  readonly title?: string;
}

/** Every seam of the tree, each once: two neighbors never draw their common seam twice. */
export function seamsOf(tree: SeamTree): Extract<SeamTree, { kind: "seam" }>[] {
  return tree.kind === "patch" ? [] : [tree, ...tree.parts.flatMap(seamsOf)];
}

export function patchesOf(tree: SeamTree): Patch[] {
  return tree.kind === "patch" ? [tree.patch] : tree.parts.flatMap(patchesOf);
}

/** Of the block's width: congruence is judged far below a thread. */
const SLACK = 1e-6;

/** The fabric of a patch as it lies there: as the looks tell, else in the frame of its piece. */
export function patchFill(
  block: AnswerBlock,
  patch: Patch,
  options: Pick<BlockPictureOptions, "pieces" | "looks" | "faint">,
): Fill {
  const fabricId = block.fabricOf[patch.id];
  const faint = options.faint ? { faint: true } : {};
  const look = options.looks?.find((l) => l.patchId === patch.id);
  if (look) return { kind: "fabric", fabricId, shown: look.shown, ...faint };
  const piece = options.pieces?.find((p) => p.id === block.pieceOf[patch.id]);
  const at = piece && placing(piece.finished, patch.polygon, SLACK * Math.max(1, block.width));
  return { kind: "fabric", fabricId, ...(at ? { at } : {}), ...faint };
}

/** The finished block's marks: patches, then seams, then the outline. No words. */
export function blockMarks(block: AnswerBlock, options: Omit<BlockPictureOptions, "unit">): Mark[] {
  const patches = block.patches.map(
    (patch): Mark => ({
      kind: "shape",
      id: patch.id,
      polygon: patch.polygon,
      fill: patchFill(block, patch, options),
    }),
  );
  const seams = seamsOf(block.tree).map(
    (s): Mark => ({ kind: "line", line: "sewn", points: [s.seam.from, s.seam.to], id: s.id }),
  );
  return [...patches, ...seams, { kind: "shape", polygon: block.outline, line: "outline" }];
}

/** One block, finished, right side up, as it will be seen. */
export function blockPicture(block: AnswerBlock, options: BlockPictureOptions): Picture {
  const box = boundingBox(block.outline);
  const small = options.small ?? Math.max(block.width, block.height) / 24;
  const marks = blockMarks(block, options);
  for (const patch of options.letters ? block.patches : []) {
    const text = options.letters?.(patch);
    if (text) marks.push(letterMark(patch, text, small));
  }
  const edges = { ...all(small * 0.15) };
  if (options.dimensions) {
    const off = small * 0.9;
    const { left, bottom, right, top } = box;
    marks.push(
      ...dimension(
        { x: left, y: bottom - off },
        { x: right, y: bottom - off },
        options.dimensions.width,
        small,
      ),
      ...dimension(
        { x: left - off, y: bottom },
        { x: left - off, y: top },
        options.dimensions.height,
        small,
      ),
    );
    Object.assign(edges, { left: small * 1.6, bottom: small * 1.6 });
  }
  const title = options.title ?? `${block.name}, finished block`;
  const made = picture({ title, unit: options.unit, box, marks, small, edges });
  return options.leftHanded ? leftHanded(made) : made;
}

const LARGEST = 1.2;
const SMALLEST = 0.5;

/** A letter at the middle of the patch, as far as a wedge has one; smaller where the patch is narrow. */
export function letterMark(patch: Pick<Patch, "polygon">, text: string, small: Length): Mark {
  const c = centroid(patch.polygon);
  // Half the width of the text is about 0.3 of its size a letter.
  const room = Math.min(...halfPlanes(patch.polygon).map((h) => depth(h, c)));
  const size = Math.max(SMALLEST, Math.min(LARGEST, (1.3 * room) / (0.32 * text.length * small)));
  return {
    kind: "text",
    at: { x: c.x, y: c.y - (size / 3) * small },
    text,
    size,
    anchor: "middle",
    weight: "bold",
    tone: "on-fabric",
  };
}
